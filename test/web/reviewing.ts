// Frames reviewed on the page: JPEG by FFmpeg, Exif by exiftool, what happened known from how they were made.

import { mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type PlanFrame, type PlanMade, type Review, reviewFrames, writePlan } from '@evenfall/core';
import Papa from 'papaparse';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { exifTime, photographed, type Shot } from '../cli/photographed.js';
import {
  EVENING,
  eveningWith,
  fragmentFor,
  libraryPlan,
  SIZES,
  type Site,
  smallTargets,
  textOf,
  violations,
} from './build.js';

const INTERVAL_S = 40;
const SHOOT = { ...EVENING, intervalS: INTERVAL_S };
const LATE = { cue: 2, frames: 2 };
const MISSED = 5;
const LOST = 11;
/** By how much the light is brighter than it was forecast, for the frames that are read for their levels. */
const BRIGHTER_EV = 0.5;

const plan = libraryPlan(eveningWith({ intervalS: INTERVAL_S }));
const nameOf = (frame: number) => `IMG_${String(1000 + frame)}.JPG`;

/** The setting of a frame with one cue two frames late and one never done. */
function settingAt(frame: number): PlanFrame {
  let setting = plan.frames[0]!;
  plan.cues.forEach((cue, i) => {
    const late = { [LATE.cue - 1]: LATE.frames, [MISSED - 1]: Number.POSITIVE_INFINITY }[i] ?? 0;
    if (frame >= cue.frame + late) setting = plan.frames[cue.frame]!;
  });
  return setting;
}

const shots = (of: PlanMade): Shot[] =>
  of.frames
    .filter(({ frame }) => frame !== LOST)
    .map(({ frame, at, sceneEv100 }) => ({
      name: nameOf(frame),
      time: exifTime(at),
      setting: settingAt(frame),
      sceneEv100: sceneEv100 + BRIGHTER_EV,
    }));

const dir = mkdtempSync(join(tmpdir(), 'evenfall-page-review-'));
const folder = join(dir, 'card', '100SHOOT');
const paths = () => readdirSync(folder).map((name) => join(folder, name));

const section = (page: Page) => page.locator('details.review');
/** A line of what happened. */
const fact = (page: Page, name: string) =>
  textOf(section(page).locator('.facts > div').filter({ hasText: name }).first().locator('dd'));

async function openReview(page: Page, title = 'After the shoot: how it went') {
  await page.getByText(title, { exact: true }).click();
  await page.locator('.review-in').waitFor();
}

const chooser = (page: Page, name = 'Choose frames') => section(page).getByLabel(name);

async function saved(page: Page, name: string): Promise<string> {
  const coming = page.waitForEvent('download');
  await section(page).getByRole('button', { name }).click();
  return readFileSync(await (await coming).path(), 'utf8');
}

/** The files put into a drop as a browser would: none of them has been chosen. */
async function drop(page: Page, files: readonly string[]): Promise<void> {
  const contents = files.map((path) => ({
    name: path.slice(path.lastIndexOf('/') + 1),
    text: readFileSync(path).toString('base64'),
  }));
  await page.evaluate((all) => {
    const dataTransfer = new DataTransfer();
    for (const { name, text } of all) {
      dataTransfer.items.add(new File([Uint8Array.from(atob(text), (c) => c.charCodeAt(0))], name));
    }
    document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  }, contents);
}

export function reviewing(site: () => Site): void {
  describe('after the shoot', () => {
    beforeAll(() => {
      mkdirSync(folder, { recursive: true });
      photographed(folder, shots(plan));
      writeFileSync(join(dir, 'note.jpg'), 'no picture');
      expect(plan.cues.length).toBeGreaterThan(MISSED);
    }, 600_000);

    it('frames are held against the plan: sentences, chart, tables, files to keep', async () => {
      const asked: string[] = [];
      const page = await site().open({
        path: fragmentFor(SHOOT),
        before: async (each) => each.on('request', (request) => asked.push(request.url())),
      });
      const reader = readdirSync(join(site().folder, 'assets')).find((name) =>
        readFileSync(join(site().folder, 'assets', name), 'utf8').includes('SubjectDistanceRange'),
      )!;
      await openReview(page);
      expect(asked.some((url) => url.endsWith(reader))).toBe(false);
      await chooser(page).setInputFiles(paths());
      const count = plan.frames.length;
      await expect.poll(() => fact(page, 'Frames')).toBe(`${count - 1} of ${count} planned, 1 missing`);
      expect(asked.some((url) => url.endsWith(reader))).toBe(true);
      expect(await fact(page, 'Cues')).toBe(`${plan.cues.length - 2} on time, 1 late or early, 1 never done`);
      const cues = section(page).getByRole('region', { name: 'Cues not on time' });
      expect(await cues.locator('tbody th').allTextContents()).toEqual([String(LATE.cue), String(MISSED)]);
      expect(await cues.locator('tbody td:last-child').allTextContents()).toEqual([
        `${LATE.frames * INTERVAL_S} s late`,
        'never',
      ]);
      expect(await textOf(section(page).locator('.notes'))).toContain(`Cue ${MISSED} was never done.`);
      const svg = section(page).locator('.review-chart svg');
      expect(await svg.locator('desc').textContent()).toContain('1 missing; 2 cues not on time');

      // The library says the same of frames that are written down here by hand.
      const taken = shots(plan).map(({ name, time, setting }) => ({
        file: name,
        at: time.replace(':', '-').replace(':', '-').replace(' ', 'T'),
        shutterS: setting.shutter.includes('/')
          ? 1 / Number(setting.shutter.slice(2))
          : Number(setting.shutter),
        iso: Number(setting.iso),
        fNumber: Number(setting.aperture),
      }));
      const wanted = reviewFrames(plan, taken);
      const review = JSON.parse(await saved(page, 'Review (JSON)')) as Review;
      expect(review.missingFrames).toEqual([LOST]);
      expect(review.cues).toEqual(wanted.cues.map((cue) => ({ ...cue })));
      const { data } = Papa.parse<Record<string, string>>(await saved(page, 'Offsets (table)'), {
        header: true,
        skipEmptyLines: true,
      });
      expect(data).toHaveLength(count - 1);
      data.forEach((row, i) => {
        expect(row.file).toBe(wanted.frames[i]!.file);
        expect(Math.abs(Number(row.offsetEv) - wanted.frames[i]!.offsetEv)).toBeLessThanOrEqual(0.001);
      });
      expect(await saved(page, 'Chart (SVG)')).toMatch(/^<svg/);
      await page.context().close();
    });

    it('a folder is read for its levels: the light as it was', async () => {
      const page = await site().open({ path: fragmentFor(SHOOT) });
      await openReview(page);
      await chooser(page, 'Choose a folder').setInputFiles(join(dir, 'card'));
      await expect.poll(() => fact(page, 'Light')).toBe('as forecast: no readings, no levels');
      const unread = JSON.parse(await saved(page, 'Review (JSON)')) as Review;
      expect(unread.frames[0]!.file).toBe(`100SHOOT/${nameOf(0)}`);
      await section(page).getByLabel('Read how bright each JPEG came out').check();
      await expect.poll(() => fact(page, 'Light')).toBe("as the frames' own levels have it");
      const { forecast } = JSON.parse(await saved(page, 'Review (JSON)')) as Review;
      // Grey is metered at 12 % here and at 18 % by default, which is part of what the levels say.
      const lensEv = Math.log2(0.12 / 0.18);
      expect(Math.abs(forecast!.spreadEv)).toBeLessThan(0.1);
      expect(forecast!.count).toBeGreaterThan(plan.frames.length / 2);
      expect(forecast!.offsetEv).toBeCloseTo(BRIGHTER_EV + lensEv, 0);
      await page.context().close();
    });

    it('files dropped anywhere, a plan file among them; what tells nothing is named', async () => {
      writeFileSync(join(dir, 'plan.json'), writePlan(plan));
      // Another evening stands on the page.
      const page = await site().open({ path: fragmentFor({ ...SHOOT, date: '2026-03-02' }) });
      await drop(page, [...paths(), join(dir, 'note.jpg'), join(dir, 'plan.json')]);
      await expect
        .poll(() => fact(page, 'Cues'))
        .toBe(`${plan.cues.length - 2} on time, 1 late or early, 1 never done`);
      expect(await textOf(section(page).getByRole('status'))).toBe('Held against plan.json.');
      await section(page).getByText('Passed over: 1 file').click();
      expect(await textOf(section(page).locator('.passed-over li'))).toBe(
        'note.jpg: not a picture that can be read',
      );
      // One that is no plan is said, and nothing is shown that was held against another.
      writeFileSync(join(dir, 'other.json'), '{}');
      await drop(page, [...paths(), join(dir, 'other.json')]);
      await expect
        .poll(() => textOf(section(page).getByRole('status')))
        .toBe('other.json is no plan that can be read.');
      await expect.poll(() => section(page).locator('.facts').count()).toBe(0);
      await page.context().close();
    });

    it('a shoot dropped alone is opened, and the page is not left', async () => {
      const page = await site().open({ path: fragmentFor(SHOOT) });
      writeFileSync(join(dir, 'shoot.json'), JSON.stringify({ ...SHOOT, title: 'Dropped quay' }));
      await drop(page, [join(dir, 'shoot.json')]);
      await expect.poll(() => textOf(page.locator('.headline h2'))).toBe('Dropped quay');
      await page.context().close();
    });

    for (const colorScheme of ['light', 'dark'] as const) {
      it(`can be read and pressed on a phone, in German, ${colorScheme}`, async () => {
        const page = await site().open({
          path: fragmentFor(SHOOT),
          ...SIZES.phone,
          locale: 'de-DE',
          colorScheme,
        });
        await openReview(page, 'Nach der Aufnahme: wie es lief');
        await chooser(page, 'Bilder wählen').setInputFiles([...paths(), join(dir, 'note.jpg')]);
        await expect.poll(() => fact(page, 'Einsätze')).toContain('1 nie ausgeführt');
        const text = await textOf(section(page));
        expect(text).toContain(`Einsatz ${MISSED} wurde nie ausgeführt.`);
        expect(text).not.toMatch(/\d\.\d|stops|missing|never/);
        expect(await violations(page)).toEqual([]);
        const { small, sideways } = await smallTargets(page);
        expect(small).toEqual([]);
        expect(sideways).toBeLessThanOrEqual(0);
        await page.context().close();
      });
    }

    it('works in the one file', async () => {
      const page = await site().open({
        url: pathToFileURL(site().oneFile).href,
        path: fragmentFor(SHOOT),
      });
      await openReview(page);
      await chooser(page).setInputFiles(paths());
      await expect.poll(() => fact(page, 'Cues')).toContain('1 never done');
      await section(page).getByLabel('Read how bright each JPEG came out').check();
      await expect.poll(() => fact(page, 'Light')).toContain('own levels');
      await page.context().close();
    });
  });
}
