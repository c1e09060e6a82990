// Without a network, from disk, on paper, by keyboard, on a small screen, for every eye.

import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { planShoot } from '@evenfall/core';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Page, Request } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  EVENING,
  eveningWith,
  fragmentFor,
  openNumbers,
  planned,
  planOn,
  SIZES,
  type Site,
  smallTargets,
  textOf,
  unfold,
  violations,
} from './build.js';

/** Presses Tab until the element that has the focus satisfies; fails after a hundred. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let i = 0; i < 150; i++) {
    await page.keyboard.press('Tab');
    const text = await page.evaluate(() => {
      const at = document.activeElement as HTMLElement | null;
      const labels = (at as HTMLInputElement | null)?.labels;
      return at?.getAttribute('aria-label') ?? (labels?.[0] ?? at)?.textContent?.trim() ?? '';
    });
    if (name.test(text)) return;
  }
  throw new Error(`Tab never came to ${name}`);
}

/** Takes the ISO that the evening needs away, and gives it back by one press. */
async function cure(page: Page): Promise<void> {
  await page.getByLabel('Highest ISO').selectOption('100');
  await page.getByRole('heading', { name: 'Too dark for this kit' }).waitFor();
  await page.getByRole('button', { name: /^Raise the ISO/ }).click();
  await page.locator('.problem').waitFor({ state: 'detached' });
  await planned(page);
}

/** Prints until what draws the card has been loaded. */
async function printed(page: Page): Promise<Buffer> {
  let pdf: Buffer = Buffer.alloc(0);
  await expect
    .poll(async () => {
      pdf = await page.pdf({ preferCSSPageSize: true });
      return page.locator('#card svg').count();
    })
    .toBeGreaterThan(0);
  return pdf;
}

export function anywhere(site: () => Site): void {
  describe('without a network', () => {
    it('starts cold, plans, rehearses, and opens every part it has', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      await page.evaluate(() => navigator.serviceWorker.ready);
      const context = page.context();
      await page.close();
      await context.setOffline(true);
      const cold = await context.newPage();
      await cold.goto(site().url);
      await planned(cold);
      expect((await planOn(cold)).shoot.title).toBe(EVENING.title);
      await openNumbers(cold);
      await cold.getByLabel('Sample place').selectOption('Hobart');
      await planned(cold);
      // The zone table and the YAML parser, never asked for before.
      await cold.getByLabel('Latitude').fill('-45.87');
      await cold.getByLabel('Longitude').fill('170.5');
      await expect.poll(() => cold.getByLabel('Time zone').inputValue()).toBe('Pacific/Auckland');
      const [download] = await Promise.all([
        cold.waitForEvent('download'),
        cold.getByRole('button', { name: 'Shoot (YAML)' }).click(),
      ]);
      expect(download.suggestedFilename()).toMatch(/\.yaml$/);
      await planned(cold);
      await cure(cold);
      await cold.getByRole('button', { name: /^Rehearse/ }).click();
      await cold.locator('.field-next').waitFor();
      await context.close();
    });

    it('is one file that works from disk', async () => {
      const page = await site().open({ url: pathToFileURL(site().oneFile).href, path: fragmentFor(EVENING) });
      expect((await planOn(page)).shoot.title).toBe(EVENING.title);
      await openNumbers(page);
      await page.getByLabel('Latitude').fill('64.1');
      await page.getByLabel('Longitude').fill('-21.9');
      await expect.poll(() => page.getByLabel('Time zone').inputValue()).toBe('Atlantic/Reykjavik');
      await planned(page);
      expect((await planOn(page)).shoot.place.latitudeDeg).toBe(64.1);
      await cure(page);
      await page.getByRole('button', { name: /^Rehearse/ }).click();
      await page.locator('.field-next').waitFor();
      const policy = await page.locator('meta[http-equiv]').getAttribute('content');
      expect(policy).toMatch(/script-src 'sha256-/);
      expect(policy).not.toContain('unsafe');
      await page.context().close();
    });
  });

  describe('what is built in', () => {
    it('comes with its licences, as they ask', () => {
      const served = readFileSync(join(site().folder, 'licences.md'), 'utf8');
      const oneFile = readFileSync(site().oneFile, 'utf8');
      for (const name of ['lit-html', '@preact/signals-core', 'suncalc', 'valibot', 'yaml', 'd3-shape']) {
        expect(served).toContain(`## ${name} - `);
        expect(oneFile).toContain(`## ${name} - `);
      }
      // The end of the MIT licence's text, which is to stand in every copy.
      expect(served).toMatch(/OTHER DEALINGS IN THE\s+SOFTWARE/);
      expect(oneFile).toMatch(/OTHER DEALINGS IN THE\s+SOFTWARE/);
    });
  });

  describe('on paper', () => {
    it('prints the cue card on A6 pages', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      const { cues } = await planOn(page);
      const pdf = await printed(page);
      const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
      const pages = await page.locator('#card section').count();
      expect(document.numPages).toBe(pages);
      expect(pages).toBeGreaterThan(2);
      let text = '';
      for (let n = 1; n <= document.numPages; n++) {
        const sheet = await document.getPage(n);
        const [, , width, height] = sheet.view;
        // A6 by ISO 216: 105 × 148 mm, in points.
        expect(Math.abs(width! - (105 / 25.4) * 72)).toBeLessThan(1);
        expect(Math.abs(height! - (148 / 25.4) * 72)).toBeLessThan(1);
        for (const item of (await sheet.getTextContent()).items) text += 'str' in item ? `${item.str} ` : '';
      }
      for (const { at } of cues) expect(text).toContain(at.slice(11, 19));
      expect(text).toContain(EVENING.title);
      await page.context().close();
    });
  });

  describe('on paper, in a hurry', () => {
    it('prints what has just been changed, once it is planned', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      await page.evaluate(() => {
        globalThis.print = () => dispatchEvent(new Event('beforeprint'));
      });
      await page.evaluate(() => {
        const lowest = document.querySelector<HTMLSelectElement>('#c-camera-iso-lowest')!;
        lowest.selectedIndex = [...lowest.options].findIndex(({ text }) => text === '400');
        lowest.dispatchEvent(new Event('change'));
        [...document.querySelectorAll('button')]
          .find(({ textContent }) => textContent === 'Print the cue card')!
          .click();
      });
      await page.locator('#card svg').first().waitFor({ state: 'attached' });
      expect(await textOf(page.locator('#card section').first())).toContain('ISO 400');
      await page.context().close();
    });
  });

  describe('on paper, without a plan', () => {
    it('prints why there is none, not the card of an older plan', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      await printed(page);
      await page.getByLabel('Highest ISO').selectOption('100');
      await page.getByRole('heading', { name: 'Too dark for this kit' }).waitFor();
      await page.pdf();
      expect(await textOf(page.locator('#card'))).toMatch(/^From frame .* too dark for this kit/);
      // Beside the way to the field, and where things are kept and shared.
      const buttons = page.getByRole('button', { name: 'Print the cue card' });
      expect(await buttons.count()).toBe(2);
      for (const button of await buttons.all()) expect(await button.isDisabled()).toBe(true);
      await page.context().close();
    });
  });

  describe('by keyboard alone', () => {
    it('changes a kit, cures it, moves the cursor and rehearses', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      await page.keyboard.press('Tab');
      expect(await page.evaluate(() => document.activeElement?.className)).toBe('skip');
      await tabTo(page, /^Highest ISO/);
      await page.keyboard.press('Home');
      await page.keyboard.type('100');
      await page.getByRole('heading', { name: 'Too dark for this kit' }).waitFor();
      await tabTo(page, /^Apply: Raise the ISO/);
      await page.keyboard.press('Enter');
      await page.locator('.problem').waitFor({ state: 'detached' });
      await planned(page);
      await tabTo(page, /^Time$/);
      await page.keyboard.press('PageUp');
      expect(
        Number(await page.getByRole('slider', { name: 'Time' }).getAttribute('aria-valuenow')),
      ).toBeGreaterThan(1);
      await tabTo(page, /^Rehearse/);
      await page.keyboard.press('Enter');
      await page.locator('.field-next').waitFor();
      await tabTo(page, /^Pause$/);
      await page.keyboard.press('Space');
      for (let i = 0; i < 2; i++) {
        await tabTo(page, /^Skip ahead$/);
        await page.keyboard.press('Enter');
      }
      await tabTo(page, /^Done$/);
      const before = await textOf(page.locator('.field-next h2'));
      await page.keyboard.press('Enter');
      expect(await textOf(page.locator('.field-next h2'))).not.toBe(before);
      await page.context().close();
    });
  });

  describe('for every eye', () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      for (const size of ['phone', 'desk'] as const) {
        it(`has nothing that axe objects to, ${colorScheme}, ${size}`, async () => {
          const page = await site().open({ path: fragmentFor(EVENING), colorScheme, ...SIZES[size] });
          await unfold(page);
          await page.getByRole('button', { name: 'Add one at the cursor' }).click();
          await planned(page);
          expect(await violations(page)).toEqual([]);
          await page.getByLabel('Highest ISO').selectOption('100');
          await page.getByLabel('Latitude').fill('north');
          await page.getByLabel('Latitude').blur();
          await page.getByRole('heading', { name: 'Something typed cannot be right' }).waitFor();
          expect(await violations(page)).toEqual([]);
          await page.getByLabel('Latitude').fill('52.1');
          await page.getByRole('heading', { name: 'Too dark for this kit' }).waitFor();
          await planned(page);
          expect(await violations(page)).toEqual([]);
          await page.getByRole('button', { name: /^Raise the ISO/ }).click();
          await planned(page);
          await page.getByRole('button', { name: /^Rehearse/ }).click();
          await page.locator('.field-next').waitFor();
          await page.getByRole('button', { name: 'Pause' }).click();
          expect(await violations(page)).toEqual([]);
          await page.getByRole('button', { name: 'Enter EV' }).click();
          expect(await violations(page)).toEqual([]);
          await page.context().close();
        });
      }
    }

    it('has targets of 44 px and no sideways scrolling at 360 px', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone });
      await unfold(page);
      const design = await smallTargets(page);
      expect(design.count).toBeGreaterThan(40);
      expect(design.small).toEqual([]);
      expect(design.sideways).toBeLessThanOrEqual(0);
      await page.getByRole('button', { name: /^Rehearse/ }).click();
      await page.locator('.field-next').waitFor();
      const field = await smallTargets(page);
      expect(field.small).toEqual([]);
      expect(field.sideways).toBeLessThanOrEqual(0);
      await page.context().close();
    });
  });

  describe('every word', () => {
    for (const locale of ['en-GB', 'de-DE']) {
      for (const [name, width, height] of [
        ['upright', 360, 740],
        ['on its side', 740, 360],
      ] as const) {
        it(`has room on a phone ${name}, ${locale}`, async () => {
          const lens = { lens: { focalMm: 24 }, sensor: { widthMm: 36, heightMm: 24 } };
          const moves = [{ axis: 'pan', by: { deg: 40 }, gear: { topSpeedDegPerS: 3 } }];
          const file = { ...EVENING, camera: { ...EVENING.camera, ...lens }, moves };
          const page = await site().open({
            ...SIZES.phone,
            viewport: { width, height },
            locale,
            path: fragmentFor(file),
          });
          await page.locator('.move-lanes .part').first().waitFor({ state: 'attached' });
          await unfold(page);
          const texts = await page.evaluate(() =>
            [...document.querySelectorAll<HTMLElement>('button, dt, dd, label, summary, h2, h3, p, li')]
              .filter((e) => e.getClientRects().length > 0 && e.closest('.unseen') === null)
              .filter((e) => getComputedStyle(e).display !== 'inline')
              .map((e) => ({ text: e.textContent.trim(), over: e.scrollWidth - e.clientWidth })),
          );
          expect(texts.length).toBeGreaterThan(150);
          expect(texts.filter(({ over }) => over > 1)).toEqual([]);
          await page.context().close();
        });
      }
    }
  });

  describe('as it comes', () => {
    // web.dev, "Cumulative Layout Shift (CLS)": good is at most 0.1, by the sum of its largest session window. No window
    // is more than all of them together.
    const shifts = (page: Page) =>
      page.evaluate(
        () =>
          new Promise<number>((resolve) => {
            const seen = { sum: 0 };
            new PerformanceObserver((list) => {
              for (const entry of list.getEntries())
                seen.sum += (entry as unknown as { value: number }).value;
            }).observe({ type: 'layout-shift', buffered: true });
            setTimeout(() => resolve(seen.sum), 1500);
          }),
      );
    for (const size of ['phone', 'desk'] as const) {
      for (const locale of ['en-GB', 'de-DE']) {
        it(`moves nothing that stands already, ${size}, ${locale}`, async () => {
          const page = await site().open({ ...SIZES[size], locale });
          expect(await shifts(page)).toBeLessThan(0.05);
          await page.context().close();
        });
      }
    }
  });

  describe('in German', () => {
    it('speaks it from page to card, and remembers', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone });
      await page.getByLabel('Language').selectOption('Deutsch');
      await page.getByRole('heading', { name: 'Einsätze', exact: true }).waitFor();
      expect(await page.locator('html').getAttribute('lang')).toBe('de');
      await printed(page);
      expect(await textOf(page.locator('#card'))).toContain('Einsätze');
      await page.reload();
      await planned(page);
      await unfold(page);
      expect(await page.getByLabel('Länge', { exact: true }).inputValue()).toBe('4,3');
      await page.getByLabel('Breite').fill('95');
      await page.getByLabel('Breite').blur();
      await page.getByText('95 geht hier nicht; richtig: Grad von −90 bis 90').first().waitFor();
      await page.getByLabel('Breite').fill('52.1');
      await planned(page);
      await page.getByLabel('Höchste ISO').selectOption('100');
      await page.getByRole('heading', { name: 'Zu dunkel für diese Ausrüstung' }).waitFor();
      expect(await textOf(page.locator('.problem'))).toContain('um weniger als 0,05 Blenden');
      // As far as the library says it is.
      await page.getByLabel('Blende', { exact: true }).selectOption('f/11');
      const camera = { ...EVENING.camera, iso: { lowest: 100, highest: 100 }, aperture: '11' };
      const impossible = planShoot(eveningWith({ camera }));
      if (impossible.kind !== 'infeasible') throw new Error('f/11 at ISO 100 should not do');
      const [, stops = '?'] = /by ([\d.]+) stops/.exec(impossible.infeasible.text) ?? [];
      await page
        .locator('.problem')
        .getByText(`um höchstens ${stops.replace('.', ',')} Blenden`)
        .waitFor();
      expect(await textOf(page.locator('.remedies'))).toContain('Die höchste ISO von 100 auf');
      expect(await violations(page)).toEqual([]);
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
      ).toBeLessThanOrEqual(0);
      await page.context().close();
    });
  });

  describe('what plans apart from the page', () => {
    it('asks for nothing that needs a page, sooner or later', () => {
      const { folder } = site();
      const all = new Set<string>();
      const add = (name: string) => {
        if (all.has(name)) return;
        all.add(name);
        const text = readFileSync(join(folder, name), 'utf8');
        for (const [, path] of text.matchAll(/(?:from|import)\s*\(?\s*["'`]\.\/([^"'`]+\.js)["'`]/g)) {
          add(join(dirname(name), path as string));
        }
      };
      add('planner.js');
      // What is planned with at once, and what a shoot that cannot be, or moves, asks for later.
      expect(all.size).toBeGreaterThanOrEqual(8);
      const touching = [...all].filter((name) =>
        /\bdocument\./.test(readFileSync(join(folder, name), 'utf8')),
      );
      expect(touching).toEqual([]);
    });
  });

  describe('its size', () => {
    it('has asked for at most 120 kB when the first plan is drawn', async () => {
      const asked: Request[] = [];
      const page = await site().open({
        before: async (each) => {
          each.on('request', (request) => asked.push(request));
          await each.addInitScript(() => {
            const seen = new MutationObserver(() => {
              if (document.querySelector('.picture')?.getAttribute('aria-busy') !== 'false') return;
              Object.assign(globalThis, { firstPlanAtMs: performance.timeOrigin + performance.now() });
              seen.disconnect();
            });
            seen.observe(document, { subtree: true, childList: true, attributeFilter: ['aria-busy'] });
          });
        },
      });
      const atMs = await page.evaluate(
        () => (globalThis as unknown as { firstPlanAtMs: number }).firstPlanAtMs,
      );
      const before = asked.filter((request) => request.timing().startTime < atMs);
      const names = new Set(
        before.map((request) => new URL(request.url()).pathname.slice(1) || 'index.html'),
      );
      expect([...names].filter((name) => name.includes('planner'))).toHaveLength(1);
      const weight = (name: string) => gzipSync(readFileSync(join(site().folder, name)), { level: 9 }).length;
      expect([...names].map(weight).reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(120_000);
      await page.context().close();
    });

    it('plans the evening it opens with once, whatever comes after it', async () => {
      const page = await site().open({
        before: (each) =>
          each.addInitScript(() => {
            const seen = globalThis as unknown as { asked: number };
            seen.asked = 0;
            const post = Worker.prototype.postMessage as (this: Worker, message: unknown) => void;
            Worker.prototype.postMessage = function (message: unknown) {
              seen.asked++;
              post.call(this, message);
            };
          }),
      });
      // What is loaded in idle time comes in order, this last.
      await page.evaluate(() => navigator.serviceWorker.ready);
      expect(await page.evaluate(() => (globalThis as unknown as { asked: number }).asked)).toBe(1);
      await page.context().close();
    });

    it('asks for at most 120 kB before the first plan is drawn, without the zone table', () => {
      const { folder } = site();
      const weight = (name: string) => gzipSync(readFileSync(join(folder, name)), { level: 9 }).length;
      const html = readFileSync(join(folder, 'index.html'), 'utf8');
      // What the page and its worker name, and what those import in turn.
      const first = new Set(['index.html']);
      const add = (name: string) => {
        if (first.has(name)) return;
        first.add(name);
        const text = readFileSync(join(folder, name), 'utf8');
        for (const [, path] of text.matchAll(/(?:from|import)\s*["']\.\/([^"']+\.js)["']/g)) {
          add(join(dirname(name), path as string));
        }
      };
      for (const [, name] of html.matchAll(/(?:src|href)="\.\/([^"]+\.(?:js|css))"/g)) add(name as string);
      add('planner.js');
      expect(first.size).toBeGreaterThanOrEqual(4);
      const sum = [...first].map(weight).reduce((a, b) => a + b, 0);
      expect(sum).toBeLessThanOrEqual(120_000);
      expect([...first].map((name) => readFileSync(join(folder, name), 'utf8')).join('')).not.toContain(
        'tz-lookup',
      );
    });
  });
}
