// Choosing between fewer cues and less error: the page's table held against the library's answer.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type PlanChoice, planChoices, type Shoot } from '@evenfall/core';
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

const TITLE = 'Fewer cues, or closer to the light';

function choicesOf(shoot: Shoot): readonly PlanChoice[] {
  const found = planChoices(shoot);
  if (found.kind === 'infeasible') throw new Error(found.infeasible.text);
  const { choices } = found;
  expect(choices.length).toBeGreaterThan(3);
  return choices;
}

const section = (page: Page) => page.locator('details.choices');

async function openChoices(page: Page, title = TITLE) {
  await page.getByText(title, { exact: true }).click();
  await settled(page);
  return section(page);
}

const settled = (page: Page) => page.locator('.choices-in[aria-busy=false] table').waitFor();

/** The figures of every line, as they stand on the page. */
const lines = (page: Page) =>
  section(page)
    .locator('tbody')
    .evaluateAll((bodies) =>
      bodies.map((body) => [...body.querySelectorAll('.figures > *')].map((cell) => cell.textContent)),
    );

const linesOf = (choices: readonly PlanChoice[]) =>
  choices.map(({ cueCount, filterChanges, rmsErrorEv, worstErrorEv, highestIso }) => [
    String(cueCount),
    String(filterChanges),
    rmsErrorEv.toFixed(2),
    worstErrorEv.toFixed(2),
    String(highestIso),
  ]);

/** Which line is marked as in use. */
const inUse = (page: Page) =>
  section(page)
    .locator('tbody')
    .evaluateAll((bodies) => bodies.findIndex((body) => body.getAttribute('aria-current') === 'true'));

/** Scripts that the page itself has asked for; a worker's are its own. */
const scripts = (page: Page) =>
  page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name));

const planAfter = (shoot: Shoot, { apply }: PlanChoice) => rounded(libraryPlan({ ...shoot, ...apply }).cues);

export function choosing(site: () => Site): void {
  describe('choosing', () => {
    it('shows the curve between cues and error as the library has it, loaded when it is opened', async () => {
      const folder = join(site().folder, 'assets');
      const holding = (text: string) =>
        readdirSync(folder).filter((name) => readFileSync(join(folder, name), 'utf8').includes(text));
      const words = holding('Working out the choices');
      const code = holding('prices do not decide whether a ramp exists');
      expect([words.length, code.length]).toEqual([1, 1]);
      const page = await site().open({ path: fragmentFor(EVENING) });
      const has = async (name: string) => (await scripts(page)).some((url) => url.endsWith(name));
      expect(await has(words[0]!)).toBe(false);
      const part = await openChoices(page);
      expect(await has(words[0]!)).toBe(true);
      // What takes fifteen plans has never been in the page's own thread.
      expect(await has(code[0]!)).toBe(false);
      const wanted = choicesOf(eveningWith());
      expect(await lines(page)).toEqual(linesOf(wanted));
      expect(await inUse(page)).toBe(wanted.findIndex(({ names }) => names.includes('as-asked')));
      for (const [name, told] of [
        ['fewest-cues', 'fewest cues'],
        ['smoothest', 'closest to the light'],
        ['cleanest-iso', 'lowest ISO'],
      ] as const) {
        const at = wanted.findIndex(({ names }) => names.includes(name));
        expect(await textOf(part.locator('tbody').nth(at)), name).toContain(told);
      }
      await page.context().close();
    });

    it('takes a choice by one press, takes it back by one, and goes back to the default weights', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      const part = await openChoices(page);
      const shoot = eveningWith();
      const choices = choicesOf(shoot);
      const asked = choices.findIndex(({ names }) => names.includes('as-asked'));
      const press = part.locator('tbody').nth(0).getByRole('button');
      const home = part.getByRole('button', { name: 'Back to the default weights' });
      expect(await home.count()).toBe(0);
      await press.click();
      await planned(page);
      expect(rounded((await planOn(page)).cues)).toEqual(planAfter(shoot, choices[0]!));
      // The same table, another line in use; the focus stays where the press was.
      expect(await inUse(page)).toBe(0);
      expect(await lines(page)).toEqual(linesOf(choices));
      expect(await press.evaluate((button) => button === document.activeElement)).toBe(true);
      expect(await textOf(press)).toContain('In use');
      expect(await textOf(part.locator('tbody').nth(asked))).toContain('as before');
      await page.getByRole('button', { name: 'Undo' }).click();
      await planned(page);
      expect(rounded((await planOn(page)).cues)).toEqual(rounded(libraryPlan(shoot).cues));
      expect(await inUse(page)).toBe(asked);

      const last = choices.length - 1;
      await part.locator('tbody').nth(last).getByRole('button').click();
      await planned(page);
      expect(rounded((await planOn(page)).cues)).toEqual(planAfter(shoot, choices[last]!));
      await home.click();
      await planned(page);
      const plan = await planOn(page);
      expect(plan.shoot.weights).toBeUndefined();
      expect(rounded(plan.cues)).toEqual(rounded(libraryPlan(shoot).cues));
      expect(await home.count()).toBe(0);
      expect(await inUse(page)).toBe(asked);
      await page.context().close();
    });

    it('begins at the weights that a shoot brings', async () => {
      // Turning ISO is nothing to this crew.
      const weights = { isoCue: 0.2 };
      const page = await site().open({ path: fragmentFor({ ...EVENING, weights }) });
      const part = await openChoices(page);
      const wanted = choicesOf(eveningWith({ weights }));
      expect(linesOf(wanted)).not.toEqual(linesOf(choicesOf(eveningWith())));
      expect(await lines(page)).toEqual(linesOf(wanted));
      await part.getByRole('button', { name: 'Back to the default weights' }).click();
      await planned(page);
      await settled(page);
      await expect.poll(() => lines(page)).toEqual(linesOf(choicesOf(eveningWith())));
      // For other hands other weights: those of a person would bind a rig.
      await part.locator('tbody').nth(0).getByRole('button').click();
      await page.locator('.panel > summary', { hasText: 'Look and work' }).click();
      await page.getByLabel('a rig, every frame').check();
      await planned(page);
      expect((await planOn(page)).shoot.weights).toBeUndefined();
      await page.context().close();
    });

    it('asks again for what has been changed meanwhile, and shows nothing where there is no plan', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      const part = await openChoices(page);
      const interval = page.getByLabel('Interval', { exact: true });
      for (const intervalS of ['9', '12', '15']) await interval.fill(intervalS);
      // Nobody takes a choice of the shoot as it was.
      expect(await part.locator('tbody button:enabled').count()).toBe(0);
      await settled(page);
      expect(await lines(page)).toEqual(linesOf(choicesOf(eveningWith({ intervalS: 15 }))));
      await interval.fill('soon');
      expect(await part.locator('tbody button:enabled').count()).toBe(0);
      await interval.fill('15');
      await page.getByLabel('Highest ISO').selectOption('100');
      await page.getByRole('heading', { name: 'Too dark for this kit' }).waitFor();
      expect(await part.count()).toBe(0);
      await page.getByLabel('Highest ISO').selectOption('3200');
      await planned(page);
      await settled(page);
      expect(await lines(page)).toEqual(linesOf(choicesOf(eveningWith({ intervalS: 15 }))));
      await page.context().close();
    });

    for (const locale of ['en-GB', 'de-DE'] as const) {
      for (const colorScheme of ['light', 'dark'] as const) {
        it(`can be read and pressed on a phone, ${locale}, ${colorScheme}`, async () => {
          const page = await site().open({
            path: fragmentFor(EVENING),
            ...SIZES.phone,
            locale,
            colorScheme,
          });
          const part = await openChoices(
            page,
            locale === 'de-DE' ? 'Weniger Einsätze oder näher am Licht' : TITLE,
          );
          await part.locator('tbody').nth(1).getByRole('button').click();
          await planned(page);
          expect(await violations(page)).toEqual([]);
          const { small, sideways } = await smallTargets(page);
          expect(small).toEqual([]);
          expect(sideways).toBeLessThanOrEqual(0);
          if (locale === 'de-DE') {
            const text = await textOf(part);
            expect(text).toContain('wenigste Einsätze');
            expect(text).not.toMatch(/cues|choices|weights/);
            expect(text).toMatch(/\d,\d\d/);
            expect(text).not.toMatch(/\d\.\d\d/);
          }
          await page.context().close();
        });
      }
    }

    it('opens and takes by keyboard alone', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      await page.locator('details.choices > summary').focus();
      await page.keyboard.press('Enter');
      await settled(page);
      expect(await textOf(section(page).getByRole('status'))).toMatch(/^\d+ choices/);
      await page.keyboard.press('Tab');
      const [first] = choicesOf(eveningWith());
      const name = await page.evaluate(() => document.activeElement?.textContent?.replaceAll(/\s+/g, ' '));
      expect(name?.trim()).toBe(
        `Use this: ${first!.cueCount} cues, ${first!.rmsErrorEv.toFixed(2)} stops rms`,
      );
      await page.keyboard.press('Enter');
      await planned(page);
      expect((await planOn(page)).summary.cueCount).toBe(first!.cueCount);
      await page.context().close();
    });

    it('works in the one file, its worker inside', async () => {
      const page = await site().open({ url: pathToFileURL(site().oneFile).href, path: fragmentFor(EVENING) });
      const part = await openChoices(page);
      const choices = choicesOf(eveningWith());
      expect(await lines(page)).toEqual(linesOf(choices));
      await part.locator('tbody').nth(0).getByRole('button').click();
      await planned(page);
      expect((await planOn(page)).summary.cueCount).toBe(choices[0]!.cueCount);
      await page.context().close();
    });
  });
}
