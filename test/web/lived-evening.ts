// The field view by the real clock: an evening with slips, gaps, a late comer, a second tab.

import { pathToFileURL } from 'node:url';
import type { PlanMade } from '@evenfall/core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { EVENING, fragmentFor, planned, planOn, SIZES, type Site, textOf } from './build.js';

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const heading = (page: Page) => textOf(page.locator('.field-next h2'));

/** The page with the device's clock at a time of the evening; the clock goes on from there, or is put ahead. */
const at =
  (time: string) =>
  (page: Page): Promise<unknown> =>
    page.clock.install({ time });

async function goToField(page: Page): Promise<void> {
  await button(page, 'Go to the field').click();
  await page.locator('.field-next').waitFor();
}

/** Puts the device's clock ahead to so many seconds after an instant. */
async function clockTo(page: Page, rfc: string, plusS = 0): Promise<void> {
  const nowMs = await page.evaluate(() => Date.now());
  await page.clock.fastForward(Math.max(0, Date.parse(rfc) + plusS * 1000 - nowMs));
  await page.clock.runFor(500);
}

const kept = async (page: Page) =>
  JSON.parse((await page.evaluate(() => localStorage.getItem('evenfall.run'))) ?? 'null') as {
    mode: string;
    events: { kind: string }[];
  } | null;
const kinds = async (page: Page) => (await kept(page))?.events.map(({ kind }) => kind);

/** All marks of a planned frame, as the page writes them. */
function marksOf({ frames }: PlanMade, frame: number): string[] {
  const { shutter, iso, aperture, filters } = frames[frame]!;
  const seconds = shutter.includes('/') ? shutter : `${shutter} s`;
  return [seconds, `ISO ${iso}`, `f/${aperture}`, filters.join(' + ') || 'no filter'];
}

// Some minutes before the first frame, and the day before: sunset at 52.1° north on 12 September is near 20:00 there.
const BEFORE = '2026-09-12T19:00:00+02:00';
const EARLIER = '2026-09-10T12:00:00+02:00';

export function livedEvening(site: () => Site): void {
  describe('an evening by the real clock', () => {
    it('counts down to the start of the camera, takes "Ready" for that, and no press before it for a cue', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone, before: at(BEFORE) });
      const { cues, summary } = await planOn(page);
      await goToField(page);
      expect(await heading(page)).toBe(`Start the camera at ${summary.startAt.slice(11, 19)}`);
      const minutes = (Date.parse(summary.startAt) - Date.parse(BEFORE)) / 60_000;
      const [, m] = /^(\d+):\d\d to go/.exec(await textOf(page.locator('.field-count'))) ?? [];
      expect(Math.abs(Number(m) - minutes)).toBeLessThan(1.5);
      expect(await button(page, 'Done').count()).toBe(0);
      await button(page, 'Ready').click();
      await page.getByRole('heading', { name: 'Ready: the camera stands at' }).waitFor();
      expect(await page.getByRole('button', { name: /^Ready/ }).isDisabled()).toBe(true);
      await button(page, 'Undo').click();
      await page.getByRole('heading', { name: 'Set this, then start the camera' }).waitFor();
      await page.clock.runFor(1000);
      await button(page, 'Ready').dblclick();
      expect(await kinds(page)).toEqual(['ready']);
      await clockTo(page, summary.startAt, 2);
      expect(await heading(page)).toBe(`Next ${cues[0]!.at.slice(11, 19)}`);
      await page.context().close();
    });

    it('asks before a cue is done long before its time, and takes two taps for one', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone, before: at(BEFORE) });
      const { cues } = await planOn(page);
      const [first, second] = cues;
      await goToField(page);
      await clockTo(page, first!.at, -200);
      await button(page, 'Done').click();
      await page.getByText(`The next cue is due at ${first!.at.slice(11, 19)}`).waitFor();
      await button(page, 'No').click();
      expect(await kinds(page)).toEqual([]);
      await clockTo(page, first!.at, -5);
      await button(page, 'Done').dblclick();
      expect(await kinds(page)).toEqual(['done']);
      expect(await page.locator('dialog').count()).toBe(0);
      expect(await heading(page)).toBe(`Next ${second!.at.slice(11, 19)}`);
      // Who insists is believed.
      await page.clock.runFor(1000);
      await button(page, 'Done').click();
      await button(page, 'Yes, it is done').click();
      expect(await kinds(page)).toEqual(['done', 'done']);
      // A question that nobody answers gives way to the order once the cue is due.
      await page.clock.runFor(1000);
      const due = `2026-09-12T${(await heading(page)).slice('Next '.length)}+02:00`;
      await button(page, 'Done').click();
      await page.locator('dialog').waitFor();
      await clockTo(page, due, -5);
      expect(await page.locator('dialog').count()).toBe(1);
      await clockTo(page, due, 2);
      expect(await page.locator('dialog').count()).toBe(0);
      await page.context().close();
    });

    it('asks after missed cues for one whole setting, the plan’s own, and never for a filter off and on again', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone, before: at(BEFORE) });
      const plan = await planOn(page);
      const { cues, summary } = plan;
      await goToField(page);
      await clockTo(page, cues[1]!.at, -2);
      const filters: boolean[] = [];
      for (;;) {
        await page.clock.fastForward(60_000);
        await page.clock.runFor(500);
        const nowMs = await page.evaluate(() => Date.now());
        if (nowMs >= Date.parse(summary.endAt)) break;
        const told = cues.filter((cue) => Date.parse(cue.at) <= nowMs);
        expect(await heading(page)).toBe(`${told.length} cues behind: set this now`);
        const whole = await textOf(page.locator('.field-whole'));
        expect(whole).toBe(marksOf(plan, told.at(-1)!.frame).join(' '));
        filters.push(whole.includes('ND 6'));
        expect(await page.locator('.field-changes').count()).toBe(0);
      }
      expect(filters.length).toBeGreaterThan(40);
      // On, then off, as planned: one change.
      expect(filters.filter((on, i) => i > 0 && on !== filters[i - 1])).toHaveLength(1);
      // Past its end it asks for nothing more.
      await clockTo(page, summary.endAt, 3600);
      await page.getByRole('heading', { name: 'The shoot is over' }).waitFor();
      expect(await page.locator('.field-whole, .field-changes, .field-following').count()).toBe(0);
      expect(await button(page, 'Done').isDisabled()).toBe(true);
      expect(await button(page, 'Enter EV').isDisabled()).toBe(true);
      expect(await textOf(page.locator('.field-next'))).not.toMatch(/\d:\d\d/);
      await page.context().close();
    });

    it('tells who comes late what to set, as the plan has it then, and comes back to that from a reload', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone, before: at(BEFORE) });
      const plan = await planOn(page);
      const cue = plan.cues[9]!;
      await clockTo(page, cue.at, 15);
      await goToField(page);
      for (const reload of [false, true]) {
        if (reload) await page.reload();
        await page.getByRole('heading', { name: 'Set this now' }).waitFor();
        expect(await textOf(page.locator('.field-whole'))).toBe(marksOf(plan, cue.frame).join(' '));
      }
      await button(page, 'Done').click();
      expect(await heading(page)).toBe(`Next ${plan.cues[10]!.at.slice(11, 19)}`);
      expect(await textOf(page.locator('.field-setting'))).toBe(marksOf(plan, cue.frame).join(' · '));
      await page.context().close();
    });

    it('keeps a running evening from being replaced or ended by one press, and brings it back', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone, before: at(BEFORE) });
      const { cues } = await planOn(page);
      await goToField(page);
      await clockTo(page, cues[0]!.at);
      await button(page, 'Done').click();
      const evening = await kept(page);
      expect(evening!.events).toHaveLength(1);
      await button(page, 'Leave').click();
      const back = button(page, 'Back to the running shoot');
      await back.waitFor();
      expect(await textOf(page.locator('.readings .help'))).toContain('belongs in the field');
      expect(await page.locator('.to-field .primary').allTextContents()).toEqual([
        'Back to the running shoot',
      ]);
      for (const name of ['Go to the field', 'Rehearse at 60 times the speed', 'End the running shoot']) {
        await button(page, name).click();
        await page.getByText('A shoot is under way, with 1 press so far.').waitFor();
        await button(page, 'Keep it').click();
        expect(await page.locator('dialog').count()).toBe(0);
        expect(await kept(page)).toEqual(evening);
      }
      await button(page, 'End the running shoot').click();
      await button(page, 'End it').click();
      expect(await kept(page)).toBeNull();
      await button(page, 'Bring it back').click();
      expect(await kept(page)).toEqual(evening);
      await button(page, 'Rehearse at 60 times the speed').click();
      await button(page, 'Replace it').click();
      await page.locator('.field-next').waitFor();
      expect((await kept(page))!.mode).toBe('rehearsal');
      await button(page, 'Bring it back').click();
      expect(await kept(page)).toEqual(evening);
      expect(await heading(page)).toBe(`Next ${cues[1]!.at.slice(11, 19)}`);
      await page.context().close();
    });

    for (const [locale, starts, was] of [
      ['en-GB', 'starts Saturday 12 September', 'was on 12 September'],
      ['de-DE', 'beginnt Samstag, 12. September', 'war am 12. September'],
    ] as const) {
      it(`says the date of another day, large, at the desk and in the field, ${locale}`, async () => {
        const page = await site().open({
          path: fragmentFor(EVENING),
          ...SIZES.phone,
          locale,
          before: at(EARLIER),
        });
        const sizeOf = (selector: string) =>
          page.locator(selector).evaluate((line) => Number.parseFloat(getComputedStyle(line).fontSize));
        expect(await textOf(page.locator('.to-field .day'))).toBe(starts);
        expect(await sizeOf('.to-field .day')).toBeGreaterThanOrEqual(24);
        expect(await textOf(page.locator('.summary'))).toMatch(/12\.? Sep/);
        await page.getByRole('button', { name: /^(Go to the field|Nach draußen)$/ }).click();
        await page.locator('.field-next').waitFor();
        expect(await textOf(page.locator('.field-day'))).toBe(starts);
        expect(await sizeOf('.field-day')).toBeGreaterThanOrEqual(24);
        expect(await textOf(page.locator('.field-count'))).toMatch(/^2 (days|Tage)/);
        await clockTo(page, '2026-10-03T12:00:00+02:00');
        expect(await textOf(page.locator('.field-day'))).toBe(was);
        await page.getByRole('button', { name: /^(Leave|Verlassen)$/ }).click();
        await page.clock.runFor(30_000);
        expect(await textOf(page.locator('.to-field .day'))).toBe(was);
        await page.context().close();
      });
    }

    it('says no date on the day itself', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), before: at(BEFORE) });
      expect(await page.locator('.day').count()).toBe(0);
      await goToField(page);
      expect(await page.locator('.field-day').count()).toBe(0);
      await page.context().close();
    });

    it('says in the field that a reload loses the evening where nothing can be kept', async () => {
      const forbidden = (page: Page) =>
        page.addInitScript(() => {
          Object.defineProperty(globalThis, 'localStorage', {
            get() {
              throw new DOMException('The operation is insecure.', 'SecurityError');
            },
          });
        });
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone, before: forbidden });
      await goToField(page);
      await page.getByText('This browser keeps nothing: a reload loses the evening.').waitFor();
      expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThanOrEqual(740);
      await page.context().close();
      const usual = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone });
      await goToField(usual);
      expect(await usual.getByText('This browser keeps nothing').count()).toBe(0);
      await usual.context().close();
    });
  });

  describe('whatever it has to say', () => {
    for (const side of [false, true]) {
      it(`fits one screen of a phone in German${side ? ', on its side' : ''}`, async () => {
        const { width, height } = SIZES.phone.viewport;
        const viewport = side ? { width: height, height: width } : { width, height };
        const german = { ...SIZES.phone, viewport, locale: 'de-DE', path: fragmentFor(EVENING) };
        const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
        const field = async (page: Page) => {
          await press(page, 'Nach draußen');
          await page.locator('.field-next').waitFor();
        };
        const fits = async (page: Page, what: string) =>
          expect(await page.evaluate(() => document.documentElement.scrollHeight), what).toBeLessThanOrEqual(
            viewport.height,
          );
        const early = await site().open({ ...german, before: at(EARLIER) });
        await field(early);
        await fits(early, 'another day');
        await early.context().close();

        const page = await site().open({ ...german, before: at(BEFORE) });
        const { cues, summary } = await planOn(page);
        await field(page);
        await fits(page, 'before the start');
        await clockTo(page, cues[0]!.at, 20);
        await fits(page, 'late');
        await clockTo(page, cues[4]!.at, 5);
        await page.locator('.field.set').waitFor();
        await fits(page, 'cues behind');
        const other = await page.context().newPage();
        await other.clock.install({ time: Date.parse(cues[4]!.at) + 10_000 });
        await other.goto(site().url);
        await other.locator('.field .other-tab').waitFor();
        await other.locator('.field.set').waitFor();
        await fits(other, 'a second tab');
        await other.close();
        await press(page, 'Erledigt');
        await fits(page, 'caught up');
        await press(page, 'Verlassen');
        await press(page, 'Nach draußen');
        await press(page, 'Ersetzen');
        await page.getByRole('button', { name: 'Zurückholen' }).waitFor();
        await fits(page, 'replaced');
        await clockTo(page, summary.endAt, 60);
        await fits(page, 'over');
        await page.context().close();
      });
    }
  });

  describe('a second tab', () => {
    for (const oneFile of [false, true]) {
      it(`says so, shows the evening, and writes nothing until it takes over${oneFile ? ', from disk too' : ''}`, async () => {
        const url = oneFile ? pathToFileURL(site().oneFile).href : site().url;
        const page = await site().open({ url, path: fragmentFor(EVENING), ...SIZES.phone });
        await page.getByRole('button', { name: /^Rehearse/ }).click();
        await page.locator('.field-next').waitFor();
        await button(page, 'Pause').click();
        await button(page, 'Skip ahead').click();
        const other = await page.context().newPage();
        // What one tab has kept reaches the process of the next in the browser's own time: a person takes longer than that.
        const opened = async () => {
          await other.goto(url);
          return other
            .locator('.field-next')
            .waitFor({ timeout: 3000 })
            .then(
              () => true,
              () => false,
            );
        };
        await expect.poll(opened).toBe(true);
        await other.getByText('Evenfall is open in another tab. Nothing done here is kept.').waitFor();
        expect(await button(other, 'Done').isDisabled()).toBe(true);
        expect(await button(other, 'Enter EV').isDisabled()).toBe(true);
        // What the first does is seen in the second.
        await button(page, 'Skip ahead').click();
        await button(page, 'Done').click();
        await other.getByRole('button', { name: 'Undo done' }).waitFor();
        const before = await kept(page);
        expect(before!.events).toHaveLength(1);
        await button(other, 'Leave').click();
        await other.getByLabel('Title on the card').fill('Of another tab');
        await planned(other);
        expect(await button(other, 'Go to the field').isDisabled()).toBe(true);
        expect(await kept(page)).toEqual(before);
        const shoot = await page.evaluate(() => localStorage.getItem('evenfall.shoot'));
        expect(shoot).not.toContain('Of another tab');
        // A reload of the first does not make room for the second.
        await page.reload();
        await page.locator('.field-next').waitFor();
        expect(await page.getByText('open in another tab').count()).toBe(0);
        await other.getByRole('button', { name: 'Go on here' }).click();
        await page.getByText('Evenfall is open in another tab.').waitFor();
        expect(await button(page, 'Undo done').isDisabled()).toBe(true);
        await other.getByRole('button', { name: 'Back to the rehearsal' }).click();
        await button(other, 'Undo done').click();
        await expect.poll(() => kinds(page)).toEqual([]);
        await page.context().close();
      });
    }

    it('takes over from one that has died without a word', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      await page.evaluate(() => localStorage.setItem('evenfall.tab', 'gone'));
      const other = await page.context().newPage();
      await page.goto('about:blank');
      await other.goto(site().url);
      await planned(other);
      await expect.poll(() => other.evaluate(() => localStorage.getItem('evenfall.tab'))).not.toBe('gone');
      expect(await other.locator('.other-tab').count()).toBe(0);
      await other.getByLabel('Title on the card').fill('Kept');
      await expect.poll(() => other.evaluate(() => localStorage.getItem('evenfall.shoot'))).toContain('Kept');
      await page.context().close();
    });
  });
}
