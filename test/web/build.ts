// The page built once, served on loopback and opened in a real browser; everything the tests share.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AddressInfo } from 'node:net';
import { type Plan, type PlanMade, planShoot, readShoot, type Shoot } from '@evenfall/core';
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Locator,
  type Page,
} from 'playwright-core';
import { chromiumPath, FLAGS } from '../../packages/tools/browser.mjs';
import { buildPage, ONE_FILE, PAGE } from '../../packages/tools/build-page.mjs';
import { serve } from '../../packages/tools/serve.mjs';

export interface Site {
  readonly url: string;
  readonly folder: string;
  readonly oneFile: string;
  /** Opens the page in a browser that has never seen it. */
  open(options?: OpenOptions): Promise<Page>;
  /** Requests that went to any other host, and everything the browsers complained about. */
  readonly strangers: readonly string[];
  readonly complaints: readonly string[];
  close(): Promise<void>;
}

interface OpenOptions extends BrowserContextOptions {
  readonly path?: string; // after the address: "#shoot=…"
  readonly url?: string;
  readonly mayComplain?: boolean; // what the browser complains of is part of the test
  readonly before?: (page: Page) => Promise<unknown>; // done before the page is opened
}

/** Only what never comes is given up: a slow machine fails no test. */
const PATIENCE_MS = 300_000;

const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true } as const;
const DESK = { viewport: { width: 1280, height: 900 } } as const;
export const SIZES = { phone: PHONE, desk: DESK };

/** Builds, serves and starts a browser. */
export async function startSite(): Promise<Site> {
  buildPage();
  const server = await serve(PAGE);
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  const browser: Browser = await chromium.launch({ executablePath: chromiumPath(), args: FLAGS });
  const strangers: string[] = [];
  const complaints: string[] = [];

  function listen(context: BrowserContext, own: string): void {
    context.on('request', (request) => {
      const asked = request.url();
      if (!asked.startsWith(own) && !asked.startsWith(url) && !/^(data|blob|file):/.test(asked))
        strangers.push(asked);
    });
    context.on('console', (message) => {
      // Said by what drives the browser, where a test asks for a page without a worker.
      if (message.text() === 'Service Worker registration blocked by Playwright') return;
      if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
    });
    context.on('weberror', (error) => complaints.push(String(error.error().stack)));
  }

  return {
    url,
    folder: PAGE,
    oneFile: ONE_FILE,
    strangers,
    complaints,
    async open({ path = '', url: address = url, before, mayComplain = false, ...options } = {}) {
      const context = await browser.newContext({ ...DESK, ...options });
      if (!mayComplain) listen(context, address);
      const page = await context.newPage();
      page.setDefaultTimeout(PATIENCE_MS);
      await before?.(page);
      await page.goto(address + path);
      await planned(page);
      return page;
    },
    async close() {
      await browser.close();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

/** Waits until the page has answered the shoot as it stands. */
export async function planned(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector('.picture')?.getAttribute('aria-busy') === 'false');
}

/** Opens the place in numbers. */
export const openNumbers = (page: Page) => page.getByText('Coordinates and time zone').click();

/** Opens everything that is folded. */
export async function unfold(page: Page): Promise<void> {
  const closed = page.locator('details:not([open]) > summary');
  while ((await closed.count()) > 0) await closed.first().click();
}

/** Text as a person reads it, blanks run together. */
export async function textOf(locator: Locator): Promise<string> {
  return ((await locator.textContent()) ?? '').replaceAll(/\s+/g, ' ').trim();
}

interface Shown {
  readonly evenfall: {
    plan(): PlanMade;
    drawn(): Record<string, { readonly x: number; readonly y: number; readonly label?: string }[]>;
  };
}

/** The plan on the page. */
export const planOn = (page: Page): Promise<PlanMade> =>
  page.evaluate(() => (globalThis as unknown as Shown).evenfall.plan());

/** What its chart has drawn. */
export const drawnOn = (page: Page) => page.evaluate(() => (globalThis as unknown as Shown).evenfall.drawn());

/** A short dusk with a filter to take off: what most tests start from. */
export const EVENING = {
  format: 'evenfall-shoot/1',
  title: 'A quay of no name',
  place: { latitudeDeg: 52.1, longitudeDeg: 4.3, timeZone: 'Europe/Amsterdam' },
  date: '2026-09-12',
  span: { fromSunAltitudeDeg: 3, toSunAltitudeDeg: -9 },
  intervalS: 10,
  camera: {
    shutter: { shortest: '1/4000', longest: '8' },
    iso: { lowest: 100, highest: 3200 },
    aperture: '5.6',
    frameMB: 30,
    cardGB: 64,
    batteryFrames: 400,
  },
  filters: [{ name: 'ND 6', stops: 6 }],
};

/** Its file, checked, with changes. */
export function eveningWith(change: object = {}): Shoot {
  const read = readShoot({ ...EVENING, ...change });
  if (read.kind === 'wrong') throw new Error(read.errors.map(({ message }) => message).join('\n'));
  return read.shoot;
}

/** What the library says of it, worked out here and not on the page. */
export function libraryPlan(shoot: Shoot): PlanMade {
  const plan: Plan = planShoot(shoot);
  if (plan.kind !== 'ok') throw new Error(plan.infeasible.text);
  return plan;
}

/** A copy with numbers to nine digits: engines differ in the last bit of a logarithm. */
export function rounded<T>(value: T): T {
  return JSON.parse(
    JSON.stringify(value, (_, v) => (typeof v === 'number' ? Number(v.toPrecision(9)) + 0 : v)),
  );
}

/** A link's fragment made here by hand, so that reading it is tested against something else than its writer. */
export function fragmentFor(value: unknown): string {
  return `#shoot=${Buffer.from(JSON.stringify(value)).toString('base64url')}`;
}

const axePath = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/** What axe finds, one line each; its script goes in past the page's own policy. */
export async function violations(page: Page): Promise<string[]> {
  await page.evaluate(readFileSync(axePath, 'utf8'));
  const found = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: { run(): Promise<{ violations: Violation[] }> } };
    return (await axe.run()).violations;
  });
  return found.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.html} ${node.failureSummary ?? ''}`),
  );
}

/** Controls that are smaller than a finger, how many were looked at, and how far the page scrolls sideways. */
export const smallTargets = (page: Page) =>
  page.evaluate(() => {
    const all = document.querySelectorAll<HTMLElement>(
      'button, select, input, summary, a[href], label.button, [role=slider]',
    );
    const seen = [...all].filter((e) => e.getClientRects().length > 0 && !e.matches('.skip, .unseen'));
    const small = seen
      .map((e) => (e.matches('[type=checkbox], [type=radio]') ? (e.closest('label') as HTMLElement) : e))
      .filter((e) => e.getBoundingClientRect().height < 43.5 || e.getBoundingClientRect().width < 43.5)
      .map((e) => e.outerHTML.slice(0, 120));
    return { count: seen.length, small, sideways: document.documentElement.scrollWidth - innerWidth };
  });
