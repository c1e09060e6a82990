// The days to choose from: the page's strip held against the library's answer.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Evening, planEvenings, type Shoot, shootOnDate } from '@evenfall/core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  EVENING,
  eveningWith,
  fragmentFor,
  libraryPlan,
  planned,
  planOn,
  rounded,
  SIZES,
  type Site,
  smallTargets,
  textOf,
  violations,
} from './build.js';

const COUNT = 30;
const section = (page: Page) => page.locator('details.days');
const tiles = (page: Page) => page.locator('.strip [role=option]');
const settled = (page: Page) => page.locator('.days-in[aria-busy=false]').waitFor();

/** The device's calendar stands years before the shoot, so the strip begins on the shoot's own date. */
const past = (page: Page) => page.clock.setFixedTime(new Date('2020-01-01T12:00:00Z'));

async function openDays(page: Page, title = 'When to go') {
  await page.getByText(title, { exact: true }).click();
  await settled(page);
  expect(await tiles(page).count()).toBe(COUNT);
}

/** What each tile shows at its foot, and all that it says. */
const shown = (page: Page) =>
  tiles(page).evaluateAll((all) =>
    all.map((tile) => ['.foot', '.unseen'].map((part) => tile.querySelector(part)?.textContent?.trim())),
  );

const selected = (page: Page) =>
  tiles(page).evaluateAll((all) => all.flatMap((tile, i) => (tile.ariaSelected === 'true' ? [i] : [])));

/** The sentence of an evening, put together here by hand. */
function told(evening: Evening): string {
  const { date, horizonAt, light } = evening;
  const day = new Intl.DateTimeFormat('en-GB', {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    timeZone: 'UTC',
  }).format(Date.parse(date));
  const { steepest, moonLitFraction, moonWaxing, moonAltitudeDeg, rampStops } = light!;
  const percent = Math.round(100 * moonLitFraction);
  const phase =
    new Map([
      [0, 'new moon'],
      [100, 'full moon'],
    ]).get(percent) ?? `moon ${percent} % lit and ${moonWaxing ? 'waxing' : 'waning'}`;
  const up = Math.round(moonAltitudeDeg) < 0 ? 'down' : `${Math.abs(Math.round(moonAltitudeDeg))}° up`;
  const head = `${day}: sunset ${horizonAt!.slice(11, 16)}, steepest at ${steepest!.at.slice(11, 16)} with ${Math.abs(steepest!.evPerMin).toFixed(2)} EV a minute, ${phase}, ${up} at the end, ${rampStops.toFixed(1)} stops to follow`;
  if (evening.kind === 'infeasible') return `${head}. ${evening.infeasible.text}`;
  const { plan } = evening;
  return `${head}, ${plan.cueCount} cues, off by ${plan.worstErrorEv.toFixed(2)} stops at worst, ${plan.reserveDarkEv.toFixed(1)} stops in reserve if darker and ${plan.reserveBrightEv.toFixed(1)} if brighter, as on ${share(plan.eveningsHeldShare)} evenings in 100.`;
}

const share = (held: number) => (held > 0.99 ? '> 99' : String(Math.round(100 * held)));

const expected = (shoot: Shoot, fromDate = shoot.date) =>
  planEvenings(shoot, { fromDate, days: COUNT }).evenings.map((evening) => [
    evening.kind === 'ok' ? share(evening.plan.eveningsHeldShare) : 'no',
    told(evening),
  ]);

const SMALL = { ...EVENING, camera: { ...EVENING.camera, iso: { lowest: 100, highest: 100 } } };

export function days(site: () => Site): void {
  describe('days to choose from', () => {
    it('each as the library has it, loaded when opened and planned by the worker', async () => {
      const folder = join(site().folder, 'assets');
      const holding = (text: string) =>
        readdirSync(folder).filter((name) => readFileSync(join(folder, name), 'utf8').includes(text));
      const words = holding('Planning each of them');
      const code = holding('evenfall-evenings/1').filter((name) => /evenings/.test(name));
      expect([words.length, code.length]).toEqual([1, 1]);
      // The page's own thread plans none of them: only the worker names what does.
      const naming = ['../planner.js', ...readdirSync(folder).filter((name) => name.endsWith('.js'))].filter(
        (name) => readFileSync(join(folder, name), 'utf8').includes(code[0]!),
      );
      expect(naming).toEqual(['../planner.js']);
      const asked: string[] = [];
      const page = await site().open({
        path: fragmentFor(EVENING),
        before: (each) => {
          each.on('request', (request) => asked.push(request.url()));
          return past(each);
        },
      });
      const has = (name: string) => asked.some((url) => url.endsWith(name));
      expect(has(words[0]!)).toBe(false);
      await openDays(page);
      expect(has(words[0]!)).toBe(true);
      expect(await shown(page)).toEqual(expected(eveningWith()));
      expect(await selected(page)).toEqual([0]);
      expect(await textOf(section(page).getByRole('status'))).toBe('30 of 30 can be done.');
      await page.context().close();
    });

    it('says which cannot be done, and why', async () => {
      const page = await site().open({ path: fragmentFor(SMALL), before: past });
      await openDays(page);
      const wanted = expected(eveningWith({ camera: SMALL.camera }));
      const none = wanted.filter(([foot]) => foot === 'no').length;
      expect([none > 0, none < COUNT]).toEqual([true, true]);
      expect(await shown(page)).toEqual(wanted);
      expect(await textOf(section(page).getByRole('status'))).toBe(`${COUNT - none} of 30 can be done.`);
      await page.context().close();
    });

    it('takes a date by one press, keeps the strip, and takes it back', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), before: past });
      await openDays(page);
      await tiles(page).nth(9).click();
      await planned(page);
      const shoot = shootOnDate(eveningWith(), '2026-09-21');
      expect(rounded((await planOn(page)).cues)).toEqual(rounded(libraryPlan(shoot).cues));
      await expect.poll(() => page.getByLabel('Date').inputValue()).toBe('2026-09-21');
      expect(await selected(page)).toEqual([9]);
      // Nothing was worked out again: the strip is still the whole answer.
      expect(await page.locator('.days-in').getAttribute('aria-busy')).toBe('false');
      expect(await shown(page)).toEqual(expected(eveningWith()));
      await page.getByRole('button', { name: 'Undo' }).click();
      await planned(page);
      expect((await planOn(page)).shoot.date).toBe('2026-09-12');
      expect(await selected(page)).toEqual([0]);
      await page.context().close();
    });

    it('is worked out again for another kit, and turned to later days', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), before: past });
      await openDays(page);
      for (const intervalS of ['20', '30', '40']) {
        await page.getByLabel('Interval', { exact: true }).fill(intervalS);
      }
      const slower = eveningWith({ intervalS: 40 });
      await expect.poll(() => shown(page)).toEqual(expected(slower));
      await page.getByRole('button', { name: '30 days later' }).click();
      await expect.poll(() => shown(page)).toEqual(expected(slower, '2026-10-12'));
      expect(await selected(page)).toEqual([]);
      // A date typed elsewhere comes back into view.
      await page.getByLabel('Date').fill('2026-12-24');
      await expect.poll(() => shown(page)).toEqual(expected(slower, '2026-12-24'));
      expect(await selected(page)).toEqual([0]);
      await page.context().close();
    });

    it('begins today where the shoot is near', async () => {
      const page = await site().open({
        path: fragmentFor({ ...EVENING, intervalS: 40 }),
        before: (each) => each.clock.setFixedTime(new Date('2026-09-08T10:00:00Z')),
      });
      await openDays(page);
      expect(await shown(page)).toEqual(expected(eveningWith({ intervalS: 40 }), '2026-09-08'));
      expect(await selected(page)).toEqual([4]);
      await page.context().close();
    });

    it('is one stop for the tabulator, its days by the arrows', async () => {
      const page = await site().open({ path: fragmentFor({ ...EVENING, intervalS: 40 }), before: past });
      await page.locator('details.days > summary').focus();
      await page.keyboard.press('Enter');
      await settled(page);
      await page.keyboard.press('Tab');
      const at = () => tiles(page).evaluateAll((all) => all.indexOf(document.activeElement as HTMLElement));
      expect(await at()).toBe(0);
      for (const [key, index] of [
        ['ArrowRight', 1],
        ['ArrowDown', 8],
        ['ArrowLeft', 7],
        ['End', 29],
        ['ArrowRight', 29],
        ['PageUp', 22],
        ['Home', 0],
        ['ArrowLeft', 0],
      ] as const) {
        await page.keyboard.press(key);
        expect(await at(), key).toBe(index);
      }
      await page.keyboard.press('PageDown');
      // What is in focus is told in full, on the screen as to a voice.
      const [, label] = (await shown(page))[7]!;
      expect(await textOf(page.locator('.told'))).toBe(label);
      await page.keyboard.press('Enter');
      await planned(page);
      expect((await planOn(page)).shoot.date).toBe('2026-09-19');
      expect(await at()).toBe(7);
      await page.keyboard.press('Tab');
      expect(await page.evaluate(() => document.activeElement?.textContent?.trim())).toBe('30 days earlier');
      await page.context().close();
    });

    for (const locale of ['en-GB', 'de-DE'] as const) {
      for (const colorScheme of ['light', 'dark'] as const) {
        it(`can be read and pressed on a phone, ${locale}, ${colorScheme}`, async () => {
          const page = await site().open({
            path: fragmentFor(SMALL),
            before: past,
            ...SIZES.phone,
            locale,
            colorScheme,
          });
          await openDays(page, locale === 'de-DE' ? 'Welcher Abend' : 'When to go');
          expect(await violations(page)).toEqual([]);
          const { small, sideways } = await smallTargets(page);
          expect(small).toEqual([]);
          expect(sideways).toBeLessThanOrEqual(0);
          if (locale === 'de-DE') {
            const all = (await shown(page)).flat().join(' ');
            expect(all).toMatch(/Samstag, 12\. September: Sonnenuntergang \d\d:\d\d/);
            expect(all).toContain('zu dunkel');
            expect(all).not.toMatch(/\d\.\d|moon|sunset|stops|too dark/);
          }
          await page.context().close();
        });
      }
    }

    it('works in the one file, its worker inside', async () => {
      const page = await site().open({
        url: pathToFileURL(site().oneFile).href,
        path: fragmentFor({ ...EVENING, intervalS: 40 }),
        before: past,
      });
      await openDays(page);
      expect(await shown(page)).toEqual(expected(eveningWith({ intervalS: 40 })));
      await page.context().close();
    });
  });
}
