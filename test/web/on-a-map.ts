// A place chosen on the small map, by pointer and by keys.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  EVENING,
  fragmentFor,
  planned,
  planOn,
  SIZES,
  type Site,
  smallTargets,
  violations,
} from './build.js';

async function openMap(page: Page) {
  await page.getByText('Choose on a map').click();
  const map = page.getByRole('application', { name: 'Map of the world' });
  await map.waitFor();
  return map;
}

const placeOn = async (page: Page) => (await planOn(page)).shoot.place;

export function onAMap(site: () => Site): void {
  describe('the map of places', () => {
    it('has land where there is land', async () => {
      const page = await site().open({ path: fragmentFor(EVENING) });
      const map = await openMap(page);
      const isLand = await map.locator('.land').evaluate((land) =>
        // Kansas, Alice Springs, Manaus, Novosibirsk, the south pole; Atlantic, Pacific, the Tasman and the Arabian Sea.
        [
          [39, -98],
          [-23.7, 133.9],
          [-3.1, -60],
          [55, 82.9],
          [-89, 20],
          [0, -30],
          [-40, -120],
          [-38, 160],
          [15, 65],
        ].map(([north, east]) => {
          const point = new DOMPoint(east, -north!);
          return (land as unknown as SVGGeometryElement).isPointInFill(point);
        }),
      );
      expect(isLand).toEqual([true, true, true, true, true, false, false, false, false]);
      await page.context().close();
    });

    it('takes a press for a place, with its zone, and the arrow keys', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone });
      const map = await openMap(page);
      const box = (await map.boundingBox())!;
      // Tokyo, 35.7° N and 139.7° E; a plate carrée has as many degrees to a pixel everywhere.
      await map.click({
        position: { x: ((180 + 139.7) / 360) * box.width, y: ((90 - 35.7) / 180) * box.height },
      });
      await expect.poll(async () => (await placeOn(page)).timeZone).toBe('Asia/Tokyo');
      const pressed = await placeOn(page);
      const aPixelDeg = 360 / box.width;
      expect(Math.abs(pressed.latitudeDeg - 35.7)).toBeLessThan(1.5 * aPixelDeg);
      expect(Math.abs(pressed.longitudeDeg - 139.7)).toBeLessThan(1.5 * aPixelDeg);
      await map.focus();
      await page.keyboard.press('ArrowUp');
      await page.keyboard.press('ArrowRight');
      await planned(page);
      const moved = await placeOn(page);
      expect(moved.latitudeDeg).toBeCloseTo(pressed.latitudeDeg + 5, 9);
      expect(moved.longitudeDeg).toBeCloseTo(pressed.longitudeDeg + 5, 9);
      // Four times as large, by the button and by the key, an arrow goes a degree.
      await page.getByRole('button', { name: 'Larger' }).click();
      await map.focus();
      await page.keyboard.press('+');
      await page.keyboard.press('ArrowLeft');
      await planned(page);
      expect((await placeOn(page)).longitudeDeg).toBeCloseTo(moved.longitudeDeg - 1, 9);
      expect(await page.getByRole('status').filter({ hasText: '° N' }).textContent()).toContain(
        `${(await placeOn(page)).longitudeDeg.toFixed(2)}° E`,
      );
      // Over the edge of the map, and on at the other.
      for (let i = 0; i < 2; i++) await page.getByRole('button', { name: 'Smaller' }).click();
      await map.focus();
      for (let i = 0; i < 8; i++) await page.keyboard.press('ArrowRight');
      await planned(page);
      expect((await placeOn(page)).longitudeDeg).toBeCloseTo(moved.longitudeDeg - 1 + 40 - 360, 9);
      await page.context().close();
    });

    it('is not the only way: coordinates are shown as they were read, and taken by a press', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone });
      await page.getByLabel('City, or coordinates').fill('53°21′N 6°16′W');
      // By hand: 21/60 is 0.35, 16/60 is 0.27.
      await page.getByRole('button', { name: '53.35° N, 6.27° W' }).click();
      await expect.poll(async () => (await placeOn(page)).timeZone).toBe('Europe/Dublin');
      const { latitudeDeg, longitudeDeg } = await placeOn(page);
      expect([latitudeDeg, longitudeDeg]).toEqual([expect.closeTo(53.35, 3), expect.closeTo(-6.267, 3)]);
      await page.context().close();
    });

    it('is taken as coordinates that are pasted, and by the name a city has elsewhere, told by its zone', async () => {
      const page = await site().open({ ...SIZES.phone, permissions: ['clipboard-read', 'clipboard-write'] });
      const city = page.getByLabel('City, or coordinates');
      await page.evaluate(() => navigator.clipboard.writeText('48.2082, 16.3738'));
      await city.focus();
      await page.keyboard.press('ControlOrMeta+V');
      await page.getByText('48.21° N, 16.37° E · Europe/Vienna').waitFor();
      await expect.poll(() => placeOn(page)).toMatchObject({ latitudeDeg: 48.2082, longitudeDeg: 16.3738 });
      // The field is ready for the next place.
      expect(await city.inputValue()).toBe('');
      for (const [typed, name, told] of [
        ['krak', 'Kraków', '50.06° N, 19.96° E · Europe/Warsaw'],
        ['Strass', 'Straßburg', '48.58° N, 7.75° E · Europe/Paris'],
        ['münch', 'München', '48.13° N, 11.57° E · Europe/Berlin'],
      ] as const) {
        await city.focus();
        await page.keyboard.type(typed);
        await page.locator('.found button').first().waitFor();
        await page.keyboard.press('Enter');
        await page.getByText(told).waitFor();
        expect(await city.inputValue()).toBe(name);
        expect(await page.locator('.headline h2').textContent()).toBe(name);
        await city.blur();
      }
      await page.context().close();
    });

    it('is there without a network, and for everybody', async () => {
      const page = await site().open({ path: fragmentFor(EVENING), ...SIZES.phone });
      await page.evaluate(() => navigator.serviceWorker.ready);
      await page.context().setOffline(true);
      await openMap(page);
      expect(await violations(page)).toEqual([]);
      const { small, sideways } = await smallTargets(page);
      expect(small).toEqual([]);
      expect(sideways).toBeLessThanOrEqual(0);
      await page.context().close();
    });
  });
}
