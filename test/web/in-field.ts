// The field view: a rehearsal as it goes, and everything that may interrupt it.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { EVENING, fragmentFor, planOn, SIZES, type Site, textOf, violations } from './build.js';

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const nextClock = async (page: Page) =>
  /\d\d:\d\d:\d\d/.exec(await textOf(page.locator('.field-next h2')))?.[0];
const setting = (page: Page) => textOf(page.locator('.field-setting'));

/** Of a marked shutter: "1/60", "0.3". */
const seconds = (mark: string) =>
  mark
    .split('/')
    .map(Number)
    .reduce((over, under) => over / under);

async function rehearse(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Rehearse/ }).click();
  await page.locator('.field-next').waitFor();
}

/** A rehearsal that stands at its first frame. */
async function begun(page: Page): Promise<void> {
  await rehearse(page);
  await button(page, 'Pause').click();
  await button(page, 'Skip ahead').click();
}

/**
 * The light a screen gives, averaged over its pixels, as a share of a white one's: relative luminance, as
 * IEC 61966-2-1 (sRGB) has it.
 */
async function lightOf(page: Page): Promise<number> {
  const png = (await page.screenshot()).toString('base64');
  return page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const context = new OffscreenCanvas(image.width, image.height).getContext('2d')!;
    context.drawImage(image, 0, 0);
    const { data } = context.getImageData(0, 0, image.width, image.height);
    const linear = (byte: number) => {
      const v = byte / 255;
      return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
    };
    let sum = 0;
    for (let i = 0; i < data.length; i += 4) {
      sum += 0.2126 * linear(data[i]!) + 0.7152 * linear(data[i + 1]!) + 0.0722 * linear(data[i + 2]!);
    }
    return sum / (data.length / 4);
  }, png);
}

export function inField(site: () => Site): void {
  describe('the field', () => {
    it('rehearses with a missed cue and a reading, and comes back from a reload where it was', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone });
      const { cues, frames } = await planOn(page);
      const [first, second, third] = cues;
      if (!first || !second || !third) throw new Error('too few cues to rehearse');
      await rehearse(page);
      await button(page, 'Pause').click();
      expect(await setting(page)).toContain(frames[0]!.shutter);
      expect(await nextClock(page)).toBe(frames[0]!.at.slice(11, 19));
      await button(page, 'Skip ahead').click();
      expect(await nextClock(page)).toBe(first.at.slice(11, 19));
      expect(await page.locator('.field-following li').count()).toBe(2);

      // The first is done in time.
      await button(page, 'Skip ahead').click();
      await button(page, 'Done').click();
      expect(await setting(page)).toContain(frames[first.frame]!.shutter);
      expect(await nextClock(page)).toBe(second.at.slice(11, 19));

      // The second is missed: the clock runs past it.
      await button(page, 'Skip ahead').click();
      await button(page, 'Go on').click();
      await page.locator('.field.late').waitFor();
      await button(page, 'Pause').click();
      expect(await textOf(page.locator('.field-next h2'))).toMatch(/^Late/);
      expect(await nextClock(page)).toBe(second.at.slice(11, 19));

      // The page dies and comes back: same cue, same camera, same clock.
      const clockBefore = await textOf(page.locator('.field-clock'));
      await page.reload();
      await page.locator('.field.late').waitFor();
      expect(await textOf(page.locator('.field-clock'))).toBe(clockBefore);
      expect(await nextClock(page)).toBe(second.at.slice(11, 19));
      expect(await setting(page)).toContain(frames[first.frame]!.shutter);
      await button(page, 'Done').click();

      // A reading half a stop darker than forecast brings the rest forward.
      await button(page, 'Enter EV').click();
      const entry = page.getByLabel('EV at ISO 100');
      const forecast = Number((await entry.inputValue()).replace('−', '-'));
      await entry.fill((forecast - 0.5).toFixed(1));
      await page.getByLabel('Readings of the same light differ by').selectOption({ label: '±0.30 stop' });
      await button(page, 'Use it').click();
      await page.getByText(/what is left is planned again/).waitFor();
      // What is said of it lies over nothing.
      const said = (await page.locator('.message-box').boundingBox())!;
      for (const other of await page.locator('.field-clock, .field button:not(.message-box *)').all()) {
        const box = (await other.boundingBox())!;
        const apart = box.y + box.height <= said.y + 0.5 || said.y + said.height <= box.y + 0.5;
        expect(apart, await textOf(other)).toBe(true);
      }
      const after = (await nextClock(page))!;
      expect(after < third.at.slice(11, 19), `${after} before ${third.at}`).toBe(true);
      const kept = await page.evaluate(() => localStorage.getItem('evenfall.run'));
      const { events, meterEv } = JSON.parse(kept ?? '{}') as { events: { kind: string }[]; meterEv: number };
      expect(events.map(({ kind }) => kind)).toEqual(['done', 'done', 'reading']);
      expect(meterEv).toBe(0.3);
      const stands = await setting(page);

      // Readings survive a reload too, and so does turning the phone.
      await page.reload();
      await page.locator('.field-next').waitFor();
      expect(await nextClock(page)).toBe(after);
      expect(await setting(page)).toBe(stands);
      await page.setViewportSize({ width: 740, height: 360 });
      expect(await nextClock(page)).toBe(after);
      await page.context().close();
    });

    it('plans on without a cue that is given up, in steps of a hand, and takes that back', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone });
      const { cues, shoot } = await planOn(page);
      await begun(page);
      for (let i = 0; i < 6; i++) {
        await button(page, 'Skip ahead').click();
        await button(page, 'Done').click();
      }
      const stands = await setting(page);
      const first = cues[6]!;
      expect(await nextClock(page)).toBe(first.at.slice(11, 19));
      await button(page, 'Skip ahead').click();
      await button(page, 'Go on').click();
      await button(page, 'Not done: plan on from what the camera stands at').click();
      await button(page, 'Pause').click();
      // Told again, from the same setting, by at most one largest step.
      expect(await setting(page)).toBe(stands);
      expect((await nextClock(page))! > first.at.slice(11, 19)).toBe(true);
      const told = (await page.locator('.field-changes .from-to').allTextContents()).map((text) =>
        text.replaceAll(/\s+/g, ' ').trim(),
      );
      expect(told).toHaveLength(1);
      const [, from, to] = /^(\S+(?: s)?) → ?to (\S+)/.exec(told[0]!) ?? [];
      expect(stands.startsWith(from!)).toBe(true);
      // Marks are rounded by up to a fifth of a third of a stop.
      const stops = Math.log2(seconds(to!) / seconds(from!.replace(' s', '')));
      expect(stops).toBeGreaterThan(0);
      expect(stops).toBeLessThan(shoot.limits.largestStepEv + 0.07);
      await button(page, 'Undo').click();
      expect(await nextClock(page)).toBe(first.at.slice(11, 19));
      await page.context().close();
    });

    it('plans on without a filter that fell off, keeps that over a reload, and takes it back', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone });
      await begun(page);
      for (let i = 0; i < 2; i++) {
        await button(page, 'Skip ahead').click();
        await button(page, 'Done').click();
      }
      const stands = await setting(page);
      expect(stands).toContain('ND 6');
      await button(page, 'Kit').click();
      await page.getByLabel('ND 6').uncheck();
      await page.getByLabel('ISO at most').selectOption('800');
      expect(await violations(page)).toEqual([]);
      await button(page, 'Plan on').click();
      await page.getByText('What is left is planned again with this kit.').waitFor();
      await page.locator('.field-whole').getByText('no filter').waitFor();
      const whole = await textOf(page.locator('.field-whole'));
      await page.reload();
      await page.locator('.field-whole').waitFor();
      expect(await textOf(page.locator('.field-whole'))).toBe(whole);
      expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThanOrEqual(740);
      await button(page, 'Undo kit').click();
      expect(await page.locator('.field-whole').count()).toBe(0);
      expect(await setting(page)).toBe(stands);
      await page.context().close();
    });

    it('doubts a torch across the meter, takes it from who insists, and forgets it when it is taken back', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone });
      await begun(page);
      const meter = async (offEv: number) => {
        await button(page, 'Enter EV').click();
        const entry = page.getByLabel('EV at ISO 100');
        await entry.fill((Number((await entry.inputValue()).replace('−', '-')) + offEv).toFixed(1));
        await button(page, 'Use it').click();
      };
      for (let i = 0; i < 2; i++) {
        await button(page, 'Skip ahead').click();
        await button(page, 'Done').click();
      }
      // The light of minutes ago says little of the light now: a torch shows against a reading of just before.
      await meter(-0.2);
      await page.getByText(/what is left is planned again/).waitFor();
      const before = [await nextClock(page), await setting(page)];
      await meter(2.5);
      const doubt = page.getByText(/stops brighter than expected: not used/);
      await doubt.waitFor();
      expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThanOrEqual(740);
      // Said until something else happens, on a page that comes back too.
      await page.reload();
      await doubt.waitFor();
      await button(page, 'Use it anyway').click();
      await page.getByText(/what is left is planned again/).waitFor();
      expect(await doubt.count()).toBe(0);
      // Brighter by 2.5 stops at dusk: back to a shorter time, at once.
      const order = await textOf(page.locator('.field-changes li').first());
      const [, from, to] = /^Shutter (\S+)(?: s)? → ?to (\S+)/.exec(order) ?? [];
      expect(seconds(to!)).toBeLessThan(seconds(from!));
      await button(page, 'Undo reading').click();
      expect([await nextClock(page), await setting(page)]).toEqual(before);
      // What is refused is what is taken back, not the good one before it.
      const told = async () => textOf(page.locator('.field-following'));
      const good = await told();
      await meter(9);
      await page.locator('.doubt .message-box').waitFor();
      expect([await nextClock(page), await setting(page)]).toEqual(before);
      await button(page, 'Undo reading').click();
      expect(await page.locator('.doubt .message-box').count()).toBe(0);
      expect(await told()).toBe(good);
      const kept = await page.evaluate(() => localStorage.getItem('evenfall.run'));
      expect(JSON.parse(kept!).events.map(({ kind }: { kind: string }) => kind)).toEqual([
        'done',
        'done',
        'reading',
      ]);
      await page.context().close();
    });

    it('takes a message away after twelve seconds', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      await rehearse(page);
      await button(page, 'Pause').click();
      await page.clock.install();
      await button(page, 'Enter EV').click();
      // From here its time goes by as it is told to, however long the machine takes.
      await page.clock.pauseAt((await page.evaluate(() => Date.now())) + 5000);
      await button(page, 'Use it').click();
      const said = page.getByText(/what is left is planned again/);
      await said.waitFor();
      await page.clock.runFor(11_500);
      expect(await said.count()).toBe(1);
      await page.clock.runFor(1000);
      expect(await said.count()).toBe(0);
      await page.context().close();
    });

    it('tells how many cues behind and the whole setting to catch up with, and goes on from there', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      const { cues, frames } = await planOn(page);
      await begun(page);
      // To where cues come thick.
      for (let i = 0; i < 8; i++) {
        await button(page, 'Skip ahead').click();
        await button(page, 'Done').click();
      }
      await button(page, 'Go on').click();
      await page.locator('.field.set').waitFor();
      await button(page, 'Pause').click();
      const behind = Number(
        /^(\d+) cues behind: set this now/.exec(await textOf(page.locator('.field-next h2')))?.[1],
      );
      expect(behind).toBeGreaterThanOrEqual(2);
      const { shutter, iso, filters } = frames[cues[7 + behind]!.frame]!;
      const whole = await textOf(page.locator('.field-whole'));
      for (const mark of [shutter, `ISO ${iso}`, filters[0] ?? 'no filter']) expect(whole).toContain(mark);
      await button(page, 'Done').click();
      expect(await page.locator('.field.set').count()).toBe(0);
      expect(await setting(page)).toContain(shutter);
      await button(page, 'Undo done').click();
      expect(await textOf(page.locator('.field-whole'))).toBe(whole);
      await page.context().close();
    });

    for (const locale of ['en-GB', 'de-DE'] as const) {
      it(`tells that a cue is late by shape and size, and stays dim, ${locale}`, async () => {
        const page = await site().open({
          path: fragmentFor(EVENING),
          ...SIZES.phone,
          colorScheme: 'dark',
          locale,
        });
        const press = (english: string, german: string) =>
          button(page, locale === 'de-DE' ? german : english).click();
        await page.getByRole('button', { name: /^(Rehearse|Proben)/ }).click();
        await page.locator('.field-next').waitFor();
        await press('Pause', 'Halt');
        await press('Skip ahead', 'Vorspulen');
        const look = () =>
          page.locator('.field-next').evaluate((box) => {
            const heading = box.querySelector('h2') as HTMLElement;
            const { borderTopStyle, borderTopWidth } = getComputedStyle(box);
            return {
              edge: borderTopStyle,
              edgePx: Number.parseFloat(borderTopWidth),
              headingPx: Number.parseFloat(getComputedStyle(heading).fontSize),
              heading: heading.textContent?.trim(),
            };
          });
        const [waiting, dim] = [await look(), await lightOf(page)];
        // The light of black is none, the text's is some.
        expect(dim).toBeGreaterThan(0.001);
        await press('Skip ahead', 'Vorspulen');
        await press('Go on', 'Weiter');
        await page.locator('.field.late').waitFor();
        await press('Pause', 'Halt');
        const late = await look();
        expect(late.heading).toMatch(locale === 'de-DE' ? /^Überfällig/ : /^Late/);
        expect([waiting.edge, late.edge]).toEqual(['solid', 'dashed']);
        expect(late.edgePx).toBeGreaterThanOrEqual(4 * waiting.edgePx);
        expect(late.headingPx).toBeGreaterThanOrEqual(1.2 * waiting.headingPx);
        // Filled with red the screen was almost five times as bright as a moment before.
        expect((await lightOf(page)) / dim).toBeLessThan(1.5);
        expect(await violations(page)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThanOrEqual(740);
        await page.context().close();
      });
    }

    it('turns the shutter a camera proposes into an EV', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      const { frames } = await planOn(page);
      await rehearse(page);
      await button(page, 'Enter EV').click();
      await page.getByLabel('The camera meters').selectOption('1/60');
      const { fNumber, isoExact, filterStops } = frames[0]!;
      // APEX by hand; the dial's 1/60 is 1/64 s.
      const ev = Math.log2(fNumber ** 2 * 64) - Math.log2(isoExact / 100) + filterStops;
      expect(Number(await page.getByLabel('EV at ISO 100').inputValue())).toBeCloseTo(ev, 1);
      await button(page, 'Cancel').click();
      expect(await page.locator('dialog').count()).toBe(0);
      await page.context().close();
    });

    it('comes back black from its first moment, and gives the page its colours back', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      const paper = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
      const light = await paper();
      await rehearse(page);
      expect(await paper()).toBe('rgb(0, 0, 0)');
      await page.evaluate(async () => {
        // As on a first visit: nothing in keeping, the script slow to come.
        for (const worker of await navigator.serviceWorker.getRegistrations()) await worker.unregister();
        for (const name of await caches.keys()) await caches.delete(name);
      });
      let release = () => {};
      const held = new Promise<void>((resolve) => {
        release = resolve;
      });
      await page.route(/assets\/page.*\.js$/, async (route) => {
        await held;
        await route.continue();
      });
      await page.reload({ waitUntil: 'commit' });
      await page.locator('noscript').waitFor({ state: 'attached' });
      await expect.poll(paper).toBe('rgb(0, 0, 0)');
      expect(await page.locator('.field').count()).toBe(0);
      release();
      await page.locator('.field-next').waitFor();
      // Eyes that come out of the dark keep a dark page, until it is opened again.
      await button(page, 'Leave').click();
      expect(await paper()).toBe('rgb(18, 19, 21)');
      await page.reload();
      await expect.poll(paper).toBe(light);
      expect(light).toBe('rgb(246, 245, 242)');
      await page.context().close();
    });

    it('fits one screen of a phone', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone });
      await rehearse(page);
      const height = await page.evaluate(() => document.documentElement.scrollHeight);
      expect(height).toBeLessThanOrEqual(SIZES.phone.viewport.height);
      await page.context().close();
    });

    it('fits one screen of a phone with a filter to take off, early and late, in German', async () => {
      const camera = { ...EVENING.camera, batteryFrames: 100 }; // falls short, which is said
      const page = await site().open({
        path: fragmentFor({ ...EVENING, camera }),
        ...SIZES.phone,
        locale: 'de-DE',
      });
      await page.getByRole('button', { name: /^Proben/ }).click();
      await page.locator('.field-next').waitFor();
      await button(page, 'Halt').click();
      await button(page, 'Vorspulen').click();
      const lens = page.locator('.field-changes .filter');
      while ((await lens.count()) === 0) {
        await button(page, 'Vorspulen').click();
        if ((await lens.count()) === 0) await button(page, 'Erledigt').click();
      }
      const tall = () => page.evaluate(() => document.documentElement.scrollHeight);
      expect(await tall()).toBeLessThanOrEqual(SIZES.phone.viewport.height);
      await button(page, 'Weiter').click();
      await page.locator('.field.late').waitFor();
      await button(page, 'Halt').click();
      expect(await tall()).toBeLessThanOrEqual(SIZES.phone.viewport.height);
      await page.context().close();
    });

    it('fits one screen of a phone on its side, what is said and the meter too', async () => {
      const side = { width: SIZES.phone.viewport.height, height: SIZES.phone.viewport.width };
      // A battery that falls short, German words: as much as there may be to say.
      const camera = { ...EVENING.camera, batteryFrames: 100 };
      const page = await site().open({
        path: fragmentFor({ ...EVENING, camera }),
        ...SIZES.phone,
        viewport: side,
        locale: 'de-DE',
      });
      await page.getByRole('button', { name: /^Proben/ }).click();
      await page.locator('.field-next').waitFor();
      await button(page, 'Halt').click();
      for (let i = 0; i < 2; i++) await button(page, 'Vorspulen').click();
      await button(page, 'Erledigt').click();
      const tall = () => page.evaluate(() => document.documentElement.scrollHeight);
      const entry = page.locator('.ev-entry input');
      const forecast = async () => Number((await entry.inputValue()).replace(',', '.').replace('−', '-'));
      for (const offEv of [2.5, -9]) {
        await button(page, 'EV eingeben').click();
        await entry.fill(((await forecast()) + offEv).toFixed(1));
        const use = (await button(page, 'Verwenden').boundingBox())!;
        expect(use.y + use.height).toBeLessThanOrEqual(side.height);
        await button(page, 'Verwenden').click();
        await page.locator('.field .message-box').first().waitFor();
        expect(await tall()).toBeLessThanOrEqual(side.height);
      }
      await page.context().close();
    });
  });
}
