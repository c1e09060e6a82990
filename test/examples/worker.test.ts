// The page of docs/examples that plans in a worker: bundled, served as a strict host would, in a real browser.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { planShoot, readShoot } from '@evenfall/core';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { chromiumPath, FLAGS } from '../../packages/tools/browser.mjs';
import { serve } from '../../packages/tools/serve.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));

let folder = '';
let server: Server;
let browser: Browser;
let page: Page;
const complaints: string[] = [];
const strangers: string[] = [];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'evenfall-worker-'));
  // Any bundler would do. In a process of its own: inside a test runner this one takes the build for another kind.
  const build = [
    'build',
    'docs/examples/worker',
    '--base',
    './',
    '--outDir',
    folder,
    '--emptyOutDir',
    '--logLevel',
    'warn',
  ];
  const { status, stderr } = spawnSync(
    process.execPath,
    [join(root, 'node_modules/vite/bin/vite.js'), ...build],
    {
      cwd: root,
      encoding: 'utf8',
      env: { ...process.env, NODE_ENV: 'production' },
    },
  );
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  server = await serve(folder);
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  browser = await chromium.launch({ executablePath: chromiumPath(), args: FLAGS });
  page = await browser.newPage();
  page.setDefaultTimeout(300_000);
  page.on('request', (request) => {
    if (!/^data:/.test(request.url()) && !request.url().startsWith(url)) strangers.push(request.url());
  });
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(String(error)));
  await page.goto(url);
});
afterAll(async () => {
  await browser?.close();
  server?.close();
  rmSync(folder, { recursive: true, force: true });
});

const lines = async () => {
  await page.locator('output[aria-busy=false]').waitFor();
  return page.locator('output p').allTextContents();
};

function planned(intervalS: number) {
  const read = readShoot({
    format: 'evenfall-shoot/1',
    place: { latitudeDeg: 57.05, longitudeDeg: 9.92, timeZone: 'Europe/Copenhagen' },
    date: '2026-09-12',
    intervalS,
    camera: {
      shutter: { shortest: '1/4000', longest: '30' },
      iso: { lowest: 100, highest: 6400 },
      aperture: '4',
    },
  });
  const plan = planShoot((read as Extract<typeof read, { kind: 'ok' }>).shoot);
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  return plan;
}

test('the first plan is the one the library makes, made in a worker', async () => {
  const [head, ...cues] = await lines();
  const { summary, cues: wanted } = planned(8);
  expect(head).toBe(
    `${summary.frameCount} frames from ${summary.startAt.slice(11, 19)} to ${summary.endAt.slice(11, 19)}, ${summary.cueCount} cues`,
  );
  expect(cues).toHaveLength(wanted.length);
  expect(cues[0]).toContain(`${wanted[0]!.changes[0]!.from} → ${wanted[0]!.changes[0]!.to}`);
  expect(page.workers()).toHaveLength(1);
});

test('after quick changes the last alone is shown', async () => {
  await page.evaluate(() => {
    const field = document.querySelector<HTMLInputElement>('[name=interval]')!;
    for (const value of ['0.5', '4', '5', '6', '10']) {
      field.value = value;
      field.dispatchEvent(new Event('input', { bubbles: true }));
    }
  });
  expect((await lines())[0]).toMatch(new RegExp(`^${planned(10).summary.frameCount} frames`));
});

test('a kit that cannot do it is told why, and what would cure it', async () => {
  await page.getByLabel('Highest ISO').fill('100');
  const [why, ...remedies] = await lines();
  expect(why).toMatch(/too dark for this kit/);
  expect(remedies.length).toBeGreaterThan(1);
});

test('what cannot be right is said in a line, and is no markup', async () => {
  await page.getByLabel('Date').fill('<img src=x onerror=alert(1)>');
  await page.getByLabel('Latitude').fill('');
  const said = (await lines()).join('\n');
  expect(said).toMatch(/^place\.latitudeDeg: /m);
  expect(said).toMatch(/^date: /m);
  expect(await page.locator('output img').count()).toBe(0);
});

test('no other host was asked for anything, and the browser did not complain', () => {
  expect(strangers).toEqual([]);
  expect(complaints).toEqual([]);
});
