// Several exposures in every interval: the page's control against the library's plan.

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

// Four seconds are 21 with 1 s and 16 s beside them: an interval that holds them.
const SHOOT = { ...EVENING, intervalS: 30 };
const count = (page: Page) => page.getByLabel('Exposures in every interval');

const planWith = (bracket: object) =>
  libraryPlan(eveningWith({ intervalS: 30, camera: { ...EVENING.camera, bracket } }));

async function shows(page: Page, bracket: object): Promise<void> {
  await planned(page);
  const shown = await planOn(page);
  expect(shown.shoot.camera.bracket).toEqual(bracket);
  const wanted = planWith(bracket);
  expect(rounded(shown.cues)).toEqual(rounded(wanted.cues));
  const note = wanted.notes.find(({ kind }) => kind === 'bracket')!;
  expect(await textOf(page.locator('.notes').first())).toContain(note.text.slice(0, 40));
}

export function bracketing(site: () => Site): void {
  describe('a bracket', () => {
    it('is set by its control, counted, kept with the shoot and taken back', async () => {
      const page = await site().open({ path: fragmentFor(SHOOT) });
      expect(await page.getByLabel('Apart by').count()).toBe(0);
      await count(page).selectOption('3, for merging later');
      await shows(page, { frames: 3, stepEv: 2, betweenS: 0 });
      await page.getByLabel('Apart by').selectOption('1 1/3 stops');
      await page.getByLabel('Pause between two').fill('0,3');
      await shows(page, { frames: 3, stepEv: 4 / 3, betweenS: 0.3 });
      const frames = page.locator('.summary .figure').filter({ hasText: 'Frames' });
      const plan = await planOn(page);
      expect(await textOf(frames.locator('dd'))).toBe(`${plan.frames.length}, 3 exposures each`);
      // Three exposures of 30 MB a frame: by hand.
      const card = page.locator('.summary .figure').filter({ hasText: 'Card' });
      expect(await textOf(card.locator('dd'))).toContain(((plan.frames.length * 90) / 1000).toFixed(1));

      await page.reload();
      await shows(page, { frames: 3, stepEv: 4 / 3, betweenS: 0.3 });
      // Another dial has other clicks: four thirds are nearest to a stop and a half.
      await page.getByLabel('Dial steps').selectOption('halves of a stop');
      await planned(page);
      expect((await planOn(page)).shoot.camera.bracket?.stepEv).toBe(1.5);
      await page.getByRole('button', { name: 'Step back' }).click();
      await shows(page, { frames: 3, stepEv: 4 / 3, betweenS: 0.3 });
      await count(page).selectOption('one');
      await planned(page);
      expect((await planOn(page)).shoot.camera.bracket).toBeUndefined();
      await page.keyboard.press('Control+z');
      await shows(page, { frames: 3, stepEv: 4 / 3, betweenS: 0.3 });
      await page.context().close();
    });

    it('that is wider than the shutter says so where it stands', async () => {
      const page = await site().open({ path: fragmentFor(SHOOT) });
      await count(page).selectOption('9, for merging later');
      await planned(page);
      const fault =
        'a bracket 16 stops wide does not fit between the shortest and the longest shutter, 15 stops apart';
      const group = page.getByRole('group', { name: 'Bracket' });
      expect(await textOf(group)).toContain(fault);
      await page.getByRole('link', { name: new RegExp(fault) }).click();
      expect(await group.evaluate((element) => element === document.activeElement)).toBe(true);
      await page.context().close();
    });

    it('where none fits, fewer exposures are offered beside it, and cure it', async () => {
      const page = await site().open({ path: fragmentFor({ ...SHOOT, intervalS: 6 }) });
      await count(page).selectOption('7, for merging later');
      await planned(page);
      const group = page.getByRole('group', { name: 'Bracket' });
      await group.getByRole('button').filter({ hasText: 'exposures' }).first().click();
      await planned(page);
      expect((await planOn(page)).shoot.camera.bracket?.frames ?? 1).toBeLessThan(7);
      expect(await page.locator('.problem').count()).toBe(0);
      await page.context().close();
    });

    it('is told in the field, its exposures drawn as long as they take together', async () => {
      const camera = { ...EVENING.camera, bracket: { frames: 3, stepEv: 2, betweenS: 0.5 } };
      const page = await site().open({ path: fragmentFor({ ...SHOOT, camera }), ...SIZES.phone });
      await page.getByRole('button', { name: /Rehearse/ }).click();
      const field = page.locator('main.field');
      expect(await textOf(field.locator('.field-bracket'))).toBe(
        '3 exposures each, 2 stops apart; this is the middle one',
      );
      const [first] = (await planOn(page)).frames;
      // t/4, t and 4t with two pauses, of 30 s.
      const share = (100 * (5.25 * first!.shutterS + 1)) / 30;
      const style = await field.locator('.interval-exposing').getAttribute('style');
      expect(Number(/width:\s*([\d.]+)%/.exec(style ?? '')?.[1])).toBeCloseTo(share, 3);
      await page.context().close();
    });

    it('can be set on a phone, in German', async () => {
      const page = await site().open({ path: fragmentFor(SHOOT), ...SIZES.phone, locale: 'de-DE' });
      await page.getByText('Intervall und Clip', { exact: true }).click();
      await page.getByLabel('Belichtungen in jedem Intervall').selectOption('5, um sie später zu verrechnen');
      await page.getByLabel('Auseinander um').selectOption('1/3 Blende');
      await planned(page);
      expect((await planOn(page)).shoot.camera.bracket).toEqual({ frames: 5, stepEv: 1 / 3, betweenS: 0 });
      expect(await violations(page)).toEqual([]);
      const { small, sideways } = await smallTargets(page);
      expect(small).toEqual([]);
      expect(sideways).toBeLessThanOrEqual(0);
      await page.context().close();
    });
  });
}
