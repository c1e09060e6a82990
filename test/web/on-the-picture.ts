// What is set on the picture and said beside it; motion for those who want less of it; a zone that is doubted.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  EVENING,
  fragmentFor,
  libraryPlan,
  planned,
  planOn,
  rounded,
  SIZES,
  type Site,
  textOf,
} from './build.js';

const handle = (page: Page, name: string) => page.getByRole('slider', { name });

async function drag(page: Page, name: string, dx: number, dy: number): Promise<void> {
  const box = (await handle(page, name).boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx, y + dy, { steps: 4 });
  await page.mouse.up();
  await planned(page);
}

const undo = (page: Page) => page.getByRole('button', { name: 'Step back' }).click();

/** Relative luminance of "rgb(…)" (IEC 61966-2-1), and the contrast of two (WCAG 2.2, 1.4.3). */
function contrast(a: string, b: string): number {
  const [first = 0, second = 0] = [a, b]
    .map((colour) => {
      const [r = 0, g = 0, blue = 0] = (colour.match(/[\d.]+/g) ?? []).slice(0, 3).map((part) => {
        const v = Number(part) / 255;
        return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * r + 0.7152 * g + 0.0722 * blue;
    })
    .sort((x, y) => y - x);
  return (first + 0.05) / (second + 0.05);
}

export function onThePicture(site: () => Site): void {
  describe('on the picture', () => {
    it('interval and tolerance are dragged and stepped, as their controls do', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      // Twelve pixels are a step: 0.5 s, and 0.05 stop.
      await drag(page, 'Interval of the shoot', 49, 0);
      expect((await planOn(page)).shoot.intervalS).toBe(12);
      await expect.poll(() => page.getByLabel('Interval', { exact: true }).inputValue()).toBe('12');
      await handle(page, 'Interval of the shoot').focus();
      await page.keyboard.press('ArrowLeft');
      await planned(page);
      expect((await planOn(page)).shoot.intervalS).toBe(11.5);
      const { toleranceEv } = (await planOn(page)).shoot.limits;
      await drag(page, 'Room about the target', 0, -25);
      expect((await planOn(page)).shoot.limits.toleranceEv).toBeCloseTo(toleranceEv + 0.1, 9);
      await handle(page, 'Room about the target').focus();
      await page.keyboard.press('ArrowUp');
      await planned(page);
      const now = await planOn(page);
      expect(now.shoot.limits.toleranceEv).toBeCloseTo(toleranceEv + 0.15, 9);
      expect(rounded(now.cues)).toEqual(rounded(libraryPlan(now.shoot).cues));
      await undo(page);
      await planned(page);
      expect((await planOn(page)).shoot.limits.toleranceEv).toBeLessThan(toleranceEv + 0.15);
      await page.context().close();
    });

    it('the skyline is set where the sun goes behind it', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      const before = await planOn(page);
      const sunset = before.events.find(({ name }) => name === 'sunset')!;
      const { frames } = before;
      // To where the sun stands two degrees higher, which its own altitudes say.
      const at = frames.findIndex(({ at }) => at >= sunset.at);
      const higher = frames.findLastIndex(
        ({ sunAltitudeDeg }, i) => i < at && sunAltitudeDeg >= frames[at]!.sunAltitudeDeg + 2,
      );
      const picture = (await page.locator('.chart canvas.sky').boundingBox())!;
      const all = Date.parse(before.summary.endAt) - Date.parse(before.summary.startAt);
      const px = ((Date.parse(frames[higher]!.at) - Date.parse(sunset.at)) / all) * picture.width;
      await drag(page, 'Height of the skyline', px, 0);
      expect((await planOn(page)).shoot.scene.skylineDeg).toBe(2);
      // The moment moves to where the hand left it.
      const behind = (await planOn(page)).events.find(({ name }) => name === 'sun-behind-skyline')!;
      expect(Math.abs(Date.parse(behind.at) - Date.parse(frames[higher]!.at))).toBeLessThan(5 * 60_000);
      await handle(page, 'Height of the skyline').focus();
      await page.keyboard.press('ArrowUp');
      await planned(page);
      expect((await planOn(page)).shoot.scene.skylineDeg).toBe(2.5);
      expect(await handle(page, 'Height of the skyline').getAttribute('aria-valuetext')).toBe('2.5°');
      await page.keyboard.press('ArrowDown');
      for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowDown');
      await planned(page);
      expect((await planOn(page)).shoot.scene.skylineDeg).toBeUndefined();
      await page.context().close();
    });

    it('a skyline by bearing is set at the bearing nearest to the sun', async () => {
      // By hand: cos A = sin δ / cos φ, with δ = 4.0° on 12 September (Astronomical Almanac) and φ = 52.1°: A is 83.5°
      // west of north, 276.5°. That is nearer to 300° than to 240°, and 103° from 20°.
      const skylineDeg = [
        { azimuthDeg: 240, altitudeDeg: 1 },
        { azimuthDeg: 300, altitudeDeg: 2 },
        { azimuthDeg: 20, altitudeDeg: 8 },
      ];
      const page = await site().open({ path: fragmentFor({ ...EVENING, scene: { skylineDeg } }) });
      const name = 'Height of the skyline toward 300°';
      const behind = async () =>
        (await planOn(page)).events.find(({ name }) => name === 'sun-behind-skyline')!.at;
      const before = await planOn(page);
      await handle(page, name).focus();
      await page.keyboard.press('ArrowUp');
      await planned(page);
      const heights = async () => {
        const given = (await planOn(page)).shoot.scene.skylineDeg;
        return Array.isArray(given) ? given.map(({ altitudeDeg }) => altitudeDeg) : given;
      };
      expect(await heights()).toEqual([1, 2.5, 8]);
      expect(await handle(page, name).getAttribute('aria-valuetext')).toBe('2.5°');
      const up = await behind();
      expect(Date.parse(up)).toBeLessThan(
        Date.parse(before.events.find(({ name }) => name === 'sun-behind-skyline')!.at),
      );
      // To where the sun stands a degree lower, which its own altitudes say.
      const { frames, summary } = before;
      const at = frames.findIndex(({ at }) => at >= up);
      const lower = frames.findIndex(
        ({ sunAltitudeDeg }) => sunAltitudeDeg <= frames[at]!.sunAltitudeDeg - 1,
      );
      const picture = (await page.locator('.chart canvas.sky').boundingBox())!;
      const all = Date.parse(summary.endAt) - Date.parse(summary.startAt);
      await drag(page, name, ((Date.parse(frames[lower]!.at) - Date.parse(up)) / all) * picture.width, 0);
      expect(await heights()).toEqual([1, 1.5, 8]);
      expect(Date.parse(await behind())).toBeGreaterThan(Date.parse(up));
      await page.context().close();
    });

    it('its words are explained beside it, without a hover', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      await page.getByText('What these words mean').click();
      const said = await page.locator('.meanings li b').allTextContents();
      expect(said).toEqual(['scene', 'likely range', 'target', 'settings', 'cue', 'error', 'reserve']);
      for (const text of await page.locator('.meanings li').allTextContents()) {
        expect(text.replaceAll(/\s+/g, ' ').trim()).toMatch(/^[a-z ]+: .{20,140}\.$/);
      }
      expect(await textOf(page.locator('.cues .help'))).toMatch(/^A cue is one change/);
      expect(await textOf(page.locator('.to-field'))).toContain('Reserve.');
      await page.context().close();
    });

    it('notes of tonight come before what always holds, each once', async () => {
      const page = await site().open({
        path: fragmentFor({ ...EVENING, camera: { ...EVENING.camera, cardGB: 8 } }),
      });
      const notes = (await planOn(page)).notes;
      const standing = notes.filter(({ kind }) => kind === 'sun').map(({ text }) => text);
      expect(standing.length).toBeGreaterThan(0);
      const shown = (await page.locator('.notes li').allTextContents()).map((text) =>
        text
          .replaceAll(/\s+/g, ' ')
          .trim()
          .replace(/^(?:Warning|Take care|Note)\. /, ''),
      );
      expect(shown).toEqual([
        ...notes.filter(({ kind }) => kind !== 'sun').map(({ text }) => text),
        ...standing,
      ]);
      const headings = await page.locator('.notes h3').allTextContents();
      expect(headings).toEqual(['Always']);
      await page.context().close();
    });
  });

  describe('everything, as a file', () => {
    it('takes what has no control, and gives it back', async () => {
      const rare = {
        place: { ...EVENING.place, elevationM: 12 },
        filters: [
          { name: 'dense', density: 0.9 },
          { name: 'times', factor: 64 },
        ],
        scene: {
          reflectance: 0.3,
          cloud: { eighths: 3 },
          night: { groundLx: 0.02 },
          lamps: { ev100: 4, share: 0.2 },
        },
        look: [
          { sunAltitudeDeg: -9, offsetEv: -1 },
          { sunAltitudeDeg: 0, offsetEv: 0 },
        ],
        weights: { iso: 0.7, blur: 0.2 },
      };
      const page = await site().open({ path: fragmentFor(EVENING) });
      await page.getByText('Everything, as a file', { exact: true }).click();
      const text = page.getByRole('textbox', { name: 'Everything, as a file' });
      await text.waitFor();
      const before = await text.inputValue();
      // YAML 1.2 takes JSON as it is.
      await text.fill(JSON.stringify({ ...EVENING, ...rare }));
      await page.getByRole('button', { name: 'Take it', exact: true }).click();
      await page.getByText('The shoot is as the file says.').waitFor();
      const kept = await page.evaluate(() => localStorage.getItem('evenfall.shoot'));
      expect(JSON.parse(kept ?? '{}')).toMatchObject(rare);
      expect(await text.inputValue()).toContain('density: 0.9');
      await undo(page);
      await planned(page);
      expect(await text.inputValue()).toBe(before);
      await page.context().close();
    });
  });

  describe('who asks for less motion', () => {
    /** Frames shown in three seconds of the clip, which has 25 each second. */
    async function shownIn(page: Page): Promise<number> {
      await page.getByRole('button', { name: 'Play the clip' }).click();
      return page.evaluate(async () => {
        const mark = document.querySelector<HTMLElement>('.clip-row [style*="translateX"]')!;
        const seen = new Set<string>();
        const endMs = performance.now() + 3000;
        while (performance.now() < endMs) {
          seen.add(mark.style.transform);
          await new Promise((next) => requestAnimationFrame(next));
        }
        return seen.size;
      });
    }

    it('gets a still of the clip each second', async () => {
      const calm = await site().open({ path: fragmentFor(EVENING), reducedMotion: 'reduce' });
      // A still at the start, and one after each whole second.
      expect(await shownIn(calm)).toBeLessThanOrEqual(5);
      await calm.context().close();
      const page = await site().open({ path: fragmentFor(EVENING) });
      expect(await shownIn(page)).toBeGreaterThan(5);
      await page.context().close();
    });
  });

  describe('a time zone', () => {
    it('that does not fit the place is doubted, and the fitting one is a press away', async () => {
      const place = { ...EVENING.place, timeZone: 'Asia/Tokyo' };
      const page = await site().open({ path: fragmentFor({ ...EVENING, place }) });
      const doubt = page.locator('#panel-place [role=status]').filter({ hasText: 'Is that meant?' });
      await doubt.waitFor();
      // Summer time of the Netherlands and the time of Japan (the tz database).
      expect(await textOf(doubt)).toContain('Europe/Amsterdam (UTC+02:00)');
      expect(await textOf(doubt)).toContain('Asia/Tokyo (UTC+09:00)');
      await page.getByRole('button', { name: /^No, Europe\/Amsterdam/ }).click();
      await planned(page);
      expect((await planOn(page)).shoot.place.timeZone).toBe('Europe/Amsterdam');
      await expect.poll(() => doubt.count()).toBe(0);
      await page.context().close();
    });
  });

  describe('in the dark', () => {
    it('what cannot be pressed can still be read: 4.5 to 1', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone });
      await page.getByRole('button', { name: /Rehearse/ }).click();
      await page.locator('.field-next').waitFor();
      const disabled = await page.locator('.field button:disabled').evaluateAll((all) =>
        all.map((button) => {
          const { color, backgroundColor, opacity } = getComputedStyle(button);
          return { text: button.textContent?.trim(), color, backgroundColor, opacity };
        }),
      );
      expect(disabled.map(({ text }) => text)).toContain('Undo');
      for (const { text, color, backgroundColor, opacity } of disabled) {
        expect(opacity, text).toBe('1');
        expect(contrast(color, backgroundColor), text).toBeGreaterThanOrEqual(4.5);
      }
      await page.context().close();
    });
  });
}
