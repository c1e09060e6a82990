// A camera that moves: said by the controls, drawn on the chart, found too fast or short of time, and cured.

import { pathToFileURL } from 'node:url';
import { planShoot, readShoot, type Shoot } from '@evenfall/core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  drawnOn,
  fragmentFor,
  libraryPlan,
  planned,
  planOn,
  rounded,
  SIZES,
  type Site,
  smallTargets,
  textOf,
  unfold,
  violations,
} from './build.js';

/** Two hours of dusk that make a clip of 12 s: 289 frames, one every 25 s. */
const DUSK = {
  format: 'evenfall-shoot/1',
  title: 'A mole of no name',
  place: { latitudeDeg: 38.72, longitudeDeg: -9.14, timeZone: 'Europe/Lisbon' },
  date: '2026-10-14',
  span: { startAt: '2026-10-14T18:00:00+01:00', endAt: '2026-10-14T20:00:00+01:00' },
  intervalS: 25,
  camera: {
    shutter: { shortest: '1/4000', longest: '4' },
    iso: { lowest: 100, highest: 6400 },
    aperture: '4',
    frameMB: 30,
    cardGB: 64,
    batteryFrames: 1200,
  },
};
const LENS = { lens: { focalMm: 50 }, sensor: { widthMm: 36, heightMm: 24 } };

const PAN = {
  ...DUSK,
  camera: { ...DUSK.camera, ...LENS },
  moves: [{ axis: 'pan', by: { deg: 60 }, gear: { topSpeedDegPerS: 3 } }],
};

/** A 30 m track, and a motor that takes most of the interval where the easing is fastest. */
const SLIDE = {
  ...DUSK,
  span: { fromSunAltitudeDeg: 6, toSunAltitudeDeg: -12 },
  intervalS: 6,
  camera: { ...DUSK.camera, lens: { focalMm: 24 }, sensor: { widthMm: 36, heightMm: 24 } },
  moves: [
    {
      axis: 'slide',
      by: { trackM: 30, carriageM: 0.3 },
      nearestM: 6,
      gear: { topSpeedMPerS: 0.014 },
    },
  ],
};

function shootOf(file: object): Shoot {
  const read = readShoot(file);
  if (read.kind === 'wrong') throw new Error(read.errors.map(({ message }) => message).join('\n'));
  return read.shoot;
}

/** A panel, open. */
async function openPanel(page: Page, name: string) {
  const panel = page.locator('details.panel').filter({ has: page.locator('> summary', { hasText: name }) });
  if (!(await panel.evaluate((details) => (details as HTMLDetailsElement).open)))
    await panel.locator('> summary').click();
  return panel;
}

/** That of moves. */
async function openMoves(page: Page, name = 'Camera move') {
  const panel = await openPanel(page, name);
  await panel.locator('.buttons').first().waitFor();
  return panel;
}

async function lensOf(page: Page, focalMm: string): Promise<void> {
  await (await openPanel(page, 'Kit')).getByLabel('Focal length').fill(focalMm);
}

async function panCanBeAdded(page: Page): Promise<void> {
  const panel = await openMoves(page);
  await lensOf(page, '50');
  await panel.getByRole('button', { name: 'Add a pan' }).click();
  await panel.getByLabel('Turn to the right').fill('60');
  await section(page, 'Too fast to watch')
    .getByRole('button', { name: /^Shoot \d+ frames/ })
    .waitFor();
  expect(rounded((await planOn(page)).move)).toEqual(rounded(libraryPlan(shootOf(PAN)).move));
}

const section = (page: Page, title: string) =>
  page.locator('.problem').filter({ has: page.getByRole('heading', { name: title }) });

export function moving(site: () => Site): void {
  describe('a camera that moves', () => {
    it('pans between two points pressed on the frame, is found too fast, and is cured by the advice', async () => {
      const page = await site().open({ path: fragmentFor(DUSK) });
      const panel = await openMoves(page);
      await lensOf(page, '50');
      await panel.getByRole('button', { name: 'Add a pan' }).click();
      await panel.getByLabel('How far').selectOption('two points of the picture');
      await panel.locator('.points summary').click();
      await panel.getByLabel('Lens of that picture').fill('24');
      const frame = panel.locator('.points-frame');
      await frame.scrollIntoViewIfNeeded();
      const box = (await frame.boundingBox())!;
      // Half a picture's width at 30° is tan 30° of the focal length: 24 mm · 0.57735 / 36 mm = 0.3849 of the width.
      for (const x of [0.5 - 0.3849, 0.5 + 0.3849]) {
        await page.mouse.click(box.x + x * box.width, box.y + box.height / 3);
      }
      // Pressed a third of the way down.
      const up = Number(await panel.getByLabel('Start, from the bottom').inputValue());
      expect(Math.abs(up - 66.7)).toBeLessThan(1);
      await planned(page);
      const pressed = await planOn(page);
      const [travel] = pressed.move!.travels;
      // A pixel of the drawn frame is a third of a degree.
      expect(Math.abs(travel!.length - 60)).toBeLessThan(0.7);
      // The same angle from vectors: level, 24 mm ahead, the points off the axis as the controls say them.
      const shares = await Promise.all(
        ['Start, from the left', 'End, from the left'].map(async (name) =>
          Number(await panel.getByLabel(name).inputValue()),
        ),
      );
      const [from, to] = shares.map((percent) => ((percent - 50) / 100) * 36) as [number, number];
      const cosine = (from * to + 24 * 24) / (Math.hypot(from, 24) * Math.hypot(to, 24));
      const turnDeg = (Math.acos(cosine) * 180) / Math.PI;
      expect(travel!.length).toBeCloseTo(turnDeg, 6);
      expect(await textOf(panel)).toContain(`That is ${Number(turnDeg.toFixed(1))}° right.`);

      const fast = section(page, 'Too fast to watch');
      const advice = fast.getByRole('button', { name: /^Shoot \d+ frames in the same time/ });
      await advice.waitFor();
      expect(await textOf(page.locator('.summary'))).toContain('too fast');
      const told = await textOf(advice);
      const intervalS = Number(/an interval of ([\d.]+) s/.exec(told)?.[1]);
      // The same advice stands beside the interval, what shortens the move beside the move.
      expect(await textOf(page.locator('.controls .cure').filter({ hasText: told }))).toContain('Apply');
      await panel.locator('.cure').filter({ hasText: 'Shorten the move' }).waitFor();
      await advice.click();
      await fast.waitFor({ state: 'detached' });
      await planned(page);
      const cured = await planOn(page);
      const wanted = libraryPlan(shootOf({ ...DUSK, ...cured.shoot, intervalS }));
      expect(rounded(cured.move)).toEqual(rounded(wanted.move));
      expect(cured.shoot.intervalS).toBe(intervalS);
      expect(cured.move!.fastest!.crossingS).toBeGreaterThanOrEqual(7);
      // By the curve's theory: smoothstep is 1.5 times as fast as its mean; 36 mm behind 50 mm are 39.598°.
      const meanDegPerS = (travel!.length / (cured.summary.frameCount - 1)) * 24;
      expect(cured.move!.fastest!.crossingS).toBeCloseTo(39.598 / (1.5 * meanDegPerS), 2);
      await page.getByRole('button', { name: 'Undo' }).click();
      await planned(page);
      expect((await planOn(page)).shoot.intervalS).toBe(25);
      await page.context().close();
    });

    it('takes a press on a mark for a press, and draws which way the move goes', async () => {
      const page = await site().open({ path: fragmentFor(DUSK), ...SIZES.phone });
      const panel = await openMoves(page);
      await lensOf(page, '24');
      await panel.getByRole('button', { name: 'Add a pan' }).click();
      await panel.getByLabel('How far').selectOption('two points of the picture');
      const frame = panel.locator('.points-frame');
      const tap = async (x: number) => {
        await frame.scrollIntoViewIfNeeded();
        const box = (await frame.boundingBox())!;
        await page.touchscreen.tap(box.x + x * box.width, box.y + box.height / 2);
      };
      const fromLeft = async () =>
        Promise.all(
          ['Start, from the left', 'End, from the left'].map(async (name) =>
            Number(await panel.getByLabel(name).inputValue()),
          ),
        );
      /** The direction in which the arrow's head points, from its first corner and the middle of the other two. */
      const points = () =>
        frame.locator('.way-head').evaluate((head) => {
          const corners = (head.getAttribute('points') ?? '')
            .split(' ')
            .map((pair) => Number(pair.split(',')[0]));
          return Math.sign(corners[0]! - (corners[1]! + corners[2]!) / 2);
        });
      for (const [from, to, way] of [
        [0.25, 0.7, 'right'],
        // Both presses land beside marks that are there.
        [0.72, 0.23, 'left'],
        [0.24, 0.71, 'right'],
      ] as const) {
        await tap(from);
        await tap(to);
        const [start, end] = await fromLeft();
        expect(Math.abs(start! - 100 * from)).toBeLessThan(1);
        expect(Math.abs(end! - 100 * to)).toBeLessThan(1);
        await panel.getByText(new RegExp(`That is [\\d.]+° ${way}\\.`)).waitFor();
        expect(await points()).toBe(way === 'right' ? 1 : -1);
      }
      await page.context().close();
    });

    it('slides with too little time at night, says which to shorten, and is cured beside the control', async () => {
      const page = await site().open({ path: fragmentFor(SLIDE) });
      await page.getByRole('heading', { name: 'Too dark for this kit' }).waitFor();
      expect(await textOf(page.locator('.problem'))).toMatch(
        /the longest step of the move takes [\d.]+ s, its rest 1 s and writing 1 s\. That keeps the shutter short\./,
      );
      const panel = await openMoves(page);
      const beside = page.locator('.controls .cure');
      for (const text of ['Raise the interval', 'Use a card or a format', 'Shorten the move: slide']) {
        await beside.filter({ hasText: text }).first().waitFor();
      }
      const rest = panel.locator('div.control').filter({ has: page.getByLabel('Rest after a step') });
      const settleS = Number(/settle for ([\d.]+) s/.exec(await textOf(rest))?.[1]);
      await rest.getByRole('button', { name: /^Apply/ }).click();
      await page.getByRole('heading', { name: 'Too dark for this kit' }).waitFor({ state: 'detached' });
      await planned(page);
      const plan = await planOn(page);
      const [move] = SLIDE.moves;
      const gear = { ...move!.gear, settleS };
      const wanted = libraryPlan(shootOf({ ...SLIDE, moves: [{ ...move, gear }] }));
      expect(rounded(plan.frames)).toEqual(rounded(wanted.frames));
      expect(plan.frames.length).toBeGreaterThan(100);
      for (const f of plan.frames) {
        const held = f.shutterS + f.darkS! + f.writeS! + f.moveS! + f.settleS!;
        expect(held, `frame ${f.frame}`).toBeLessThanOrEqual(plan.shoot.intervalS + 1e-9);
      }
      await page.context().close();
    });

    it('gives no advice that leaves no plan', async () => {
      // At 8 s the slide is a little too fast; more frames in the same time leave the night too short a shutter.
      const shoot = shootOf({ ...SLIDE, intervalS: 8 });
      const finding = libraryPlan(shoot).move!.findings.find(({ kind }) => kind === 'too-fast')!;
      const more = finding.remedies.find(({ change }) => change === 'more-frames')!;
      expect(planShoot({ ...shoot, ...more.apply })).toHaveProperty('infeasible');
      const page = await site().open({ path: fragmentFor(shoot) });
      const fast = section(page, 'Too fast to watch');
      await fast.getByRole('button', { name: /^Shorten the move/ }).waitFor();
      expect(await fast.getByRole('button', { name: /in the same time/ }).count()).toBe(0);
      await page.context().close();
    });

    it('draws lanes that say what the plan says, and tells them under the cursor and in the table', async () => {
      const moves = [
        { axis: 'pan', by: { deg: -20 }, mode: 'continuous', ease: 'quintic' },
        { axis: 'tilt', by: { deg: 5 }, gear: { topSpeedDegPerS: 2, settleS: 0.5 } },
      ];
      const sensor = { ...LENS.sensor, widthPx: 6000 };
      const bracket = { frames: 3, stepEv: 1 };
      const shutter = { shortest: '1/8000', longest: '4' };
      const file = {
        ...PAN,
        camera: {
          ...PAN.camera,
          shutter,
          iso: { lowest: 100, highest: 12800 },
          sensor,
          darkFrame: true,
          bracket,
        },
        moves,
      };
      const wanted = libraryPlan(shootOf(file));
      const page = await site().open({ path: fragmentFor(file) });
      await page.locator('.chart.with-moves').waitFor();
      await expect.poll(async () => Object.keys(await drawnOn(page))).toContain('settleS');
      const drawn = await drawnOn(page);
      const byTime = new Map(wanted.frames.map((frame) => [Date.parse(frame.at), frame]));
      const parts = ['shutterS', 'bracketS', 'darkS', 'writeS', 'moveS', 'settleS'] as const;
      const upTo = (count: number) => (f: (typeof wanted.frames)[number]) =>
        parts.slice(0, count).reduce((sum, part) => sum + f[part]!, 0);
      const lanes: Record<string, (f: (typeof wanted.frames)[number]) => number> = {
        pan: (f) => f.panDeg!,
        tilt: (f) => f.tiltDeg!,
        speed: (f) => f.widthsPerS!,
        ...Object.fromEntries(parts.map((part, i) => [part, upTo(i + 1)])),
        comfort: () => 1 / 7,
      };
      for (const [name, value] of Object.entries(lanes)) {
        const points = drawn[name] ?? [];
        expect(points.length, name).toBeGreaterThan(name === 'comfort' ? 1 : 100);
        for (const { x, y } of points) expect(y, `${name} at ${x}`).toBeCloseTo(value(byTime.get(x)!), 9);
        expect(points[0]?.x, name).toBe(Date.parse(wanted.summary.startAt));
      }
      // What is left of the interval above the topmost line is the slack.
      for (const { x, y } of drawn.settleS!) {
        expect(25 - y).toBeCloseTo(byTime.get(x)!.slackS!, 9);
      }
      const slider = page.getByRole('slider', { name: 'Time' });
      await slider.focus();
      await page.keyboard.press('End');
      const last = wanted.frames.at(-1)!;
      const under = await textOf(page.locator('.under-cursor dl'));
      expect(under).toContain('pan20° left');
      expect(under).toContain('tilt5° up');
      expect(under).toContain(`to spare${Number(last.slackS!.toPrecision(3))} s`);
      expect(under).toContain('px');
      expect(await slider.getAttribute('aria-valuetext')).toContain('pan 20° left, tilt 5° up');
      await page.getByText('The chart as a table').click();
      await page.locator('.table tbody tr').first().waitFor();
      const head = (await page.locator('.table thead th').allTextContents()).map((text) => text.trim());
      const cells = await page.locator('.table tbody tr').last().locator('td').allTextContents();
      expect(cells[head.indexOf('pan') - 1]).toBe('20° left');
      expect(cells[head.indexOf('to spare') - 1]).toBe(`${Number(last.slackS!.toPrecision(3))} s`);
      await page.context().close();
    });

    it('has a control for every key, and keeps, shares and takes back what they say', async () => {
      // Turned away from the sunset the picture is darker: a stop more of ISO than DUSK has.
      const camera = { ...DUSK.camera, iso: { lowest: 100, highest: 12800 } };
      const page = await site().open({ path: fragmentFor({ ...DUSK, camera }) });
      const panel = await openMoves(page);
      await lensOf(page, '35');
      await page.getByLabel('Sensor', { exact: true }).selectOption('23.5 × 15.6 mm (crop 1.5)');
      for (const axis of ['pan', 'tilt', 'slide']) {
        await panel.getByRole('button', { name: `Add a ${axis}` }).click();
      }
      await unfold(page);
      await page.getByLabel('The camera stands upright').click();
      await page.getByLabel('Height used').fill('23');
      await page.getByLabel('Pixels across').fill('4000');
      const part = (name: string) => panel.getByRole('group', { name, exact: true });
      const [pan, tilt, slide] = [part('Pan'), part('Tilt'), part('Slide')];
      await pan.getByLabel('How far').selectOption('two compass bearings');
      await pan.getByLabel('From bearing').fill('350');
      await pan.getByLabel('To bearing').fill('40');
      await pan.getByLabel('Way round').selectOption('clockwise (right)');
      await pan.getByLabel('Start and end').selectOption('on a slope (trapezoid)');
      await pan.getByLabel('Each slope takes').fill('20');
      await pan.getByLabel('Top speed').fill('4');
      await pan.getByLabel('Rest after a step').fill('0.7');
      await pan.getByLabel('Every step takes').fill('2');
      await pan.getByLabel('Acceleration').fill('8');
      await pan.getByLabel('Smallest step').fill('0.01');
      await tilt.getByLabel('How far').selectOption('size and distance');
      await tilt.getByLabel('Size of what it crosses').fill('-30');
      await tilt.getByLabel('Distance to its middle').fill('120');
      await tilt.getByLabel('Start and end').selectOption('very softly (quintic)');
      await slide.getByLabel('How far').selectOption('what the track leaves');
      await slide.getByLabel('Track').fill('1.5');
      await slide.getByLabel('Carriage').fill('0.2');
      await slide.getByLabel('Margin at each end').fill('0.05');
      await slide.getByLabel('Travels').selectOption('along the view');
      await slide.getByLabel('Nearest thing').fill('3');
      await slide.getByLabel('Start and end').selectOption('at once (linear)');
      await slide.getByLabel('it moves on').check();
      await slide.getByLabel('Top speed').fill('0.03');
      await slide.getByLabel('Acceleration').fill('0.1');
      await slide.getByLabel('Smallest step').fill('0.0001');
      await page.getByLabel('Left in the cold').fill('80');
      await page.getByLabel('Long-exposure noise reduction is on').check();
      await page.getByLabel('Gap the camera needs').fill('1.5');
      const moves = [
        {
          axis: 'pan',
          by: { fromBearingDeg: 350, toBearingDeg: 40, way: 'clockwise' },
          mode: 'stopped',
          ease: { trapezoid: 0.2 },
          gear: {
            settleS: 0.7,
            topSpeedDegPerS: 4,
            moveS: 2,
            accelerationDegPerS2: 8,
            smallestStepDeg: 0.01,
          },
        },
        {
          axis: 'tilt',
          by: { sizeM: -30, distanceM: 120 },
          mode: 'stopped',
          ease: 'quintic',
          gear: { settleS: 1, topSpeedDegPerS: 3 },
        },
        {
          axis: 'slide',
          by: { trackM: 1.5, carriageM: 0.2, marginM: 0.05 },
          mode: 'continuous',
          ease: 'linear',
          gear: { settleS: 1, topSpeedMPerS: 0.03, accelerationMPerS2: 0.1, smallestStepM: 0.0001 },
          toward: 'forward',
          nearestM: 3,
        },
      ];
      // The plan that the page shows may still be of the control before.
      await expect.poll(async () => (await planOn(page)).shoot.moves).toEqual(moves);
      await planned(page);
      const { shoot } = await planOn(page);
      const sensor = { widthMm: 15.6, heightMm: 23, widthPx: 4000 };
      const said = { lens: { focalMm: 35 }, sensor, coldFactor: 0.8, darkFrame: true, gapS: 1.5 };
      expect(shoot.camera).toMatchObject(said);
      expect(rounded(await planOn(page))).toEqual(
        rounded(libraryPlan(shootOf({ ...DUSK, camera: { ...camera, ...said }, moves }))),
      );
      // Points with all they may say.
      await tilt.getByLabel('How far').selectOption('two points of the picture');
      await unfold(page);
      await tilt.getByLabel('Start, from the left').fill('40');
      await tilt.getByLabel('Start, from the bottom').fill('30');
      await tilt.getByLabel('End, from the left').fill('45,5');
      await tilt.getByLabel('End, from the bottom').fill('90');
      await tilt.getByLabel('Lens of that picture').fill('20');
      await tilt.getByLabel('That camera looked up by').fill('10');
      await planned(page);
      const by = {
        fromPoint: { fromLeft: 0.4, fromBottom: 0.3 },
        toPoint: { fromLeft: 0.455, fromBottom: 0.9 },
        focalMm: 20,
        cameraTiltDeg: 10,
      };
      expect((await planOn(page)).shoot.moves[1]).toEqual({ ...moves[1], by });
      await slide.getByRole('button', { name: 'Remove the slide' }).click();
      await expect.poll(async () => (await planOn(page)).shoot.moves.length).toBe(2);
      await page.getByRole('button', { name: 'Undo' }).click();
      await planned(page);
      await page.reload();
      await planned(page);
      const kept = (await planOn(page)).shoot;
      expect(kept.moves).toEqual([moves[0], { ...moves[1], by }, moves[2]]);
      const other = await site().open({ path: fragmentFor(kept) });
      expect(rounded((await planOn(other)).move)).toEqual(rounded((await planOn(page)).move));
      await Promise.all([other.context().close(), page.context().close()]);
    });

    it('stays wrong, and says so, while a number is missing or the lens is not known', async () => {
      const page = await site().open({ path: fragmentFor(DUSK) });
      const panel = await openMoves(page);
      await panel.getByRole('button', { name: 'Add a pan' }).click();
      const turn = panel.getByLabel('Turn to the right');
      await turn.fill('');
      await turn.blur();
      await expect.poll(() => turn.getAttribute('aria-invalid')).toBe('true');
      expect(await turn.inputValue()).toBe('');
      await turn.fill('15');
      await panel.getByLabel('Top speed').fill('');
      await panel.getByLabel('Top speed').blur();
      await panel.getByText('A move that stops needs this, or the time of a step.').waitFor();
      await panel.getByLabel('Top speed').fill('3');
      await panel.getByLabel('How far').selectOption('two points of the picture');
      await panel.getByText('Needs focal length and sensor, under “Kit”.').waitFor();
      await lensOf(page, '35');
      await panel.getByText('Needs focal length and sensor, under “Kit”.').waitFor({ state: 'detached' });
      await planned(page);
      expect((await planOn(page)).move?.travels).toHaveLength(1);
      await page.context().close();
    });

    it('folds the long cautions, and leaves none out', async () => {
      const page = await site().open({ path: fragmentFor({ ...PAN, ...SLIDE, intervalS: 8 }) });
      const notes = page.locator('.move-notes');
      const safety = notes.locator('.safety');
      const brief = await textOf(safety.locator('p'));
      for (const word of ['hands', 'tether', 'over people', 'paths', 'wind', 'rules', 'ends', 'riggers']) {
        expect(brief).toContain(word);
      }
      expect(await safety.locator('li').first().isVisible()).toBe(false);
      await safety.locator('summary').click();
      const full = await safety.locator('li').allTextContents();
      const plan = await planOn(page);
      expect(full).toHaveLength(8);
      for (const text of full) expect(plan.notes.map((note) => note.text)).toContain(text.trim());
      // Every other note is still told, in the list or with the move.
      const shown = await textOf(page.locator('.design'));
      const findings = plan.move!.findings.map(({ text }) => text);
      for (const { text } of plan.notes) {
        expect(shown).toContain(findings.find((finding) => text.startsWith(finding)) ?? text);
      }
      expect(await page.locator('.notes:not(.move-notes) li').count()).toBeLessThan(plan.notes.length - 8);
      await page.context().close();
    });

    it('tells the longest shutters for stars beside the longest of the kit', async () => {
      const file = { ...PAN, camera: { ...PAN.camera, sensor: { ...LENS.sensor, widthPx: 6000 } } };
      const page = await site().open({ path: fragmentFor(file) });
      const note = (await planOn(page)).notes.find(({ text }) => text.startsWith('Stars stay points'))!;
      // By hand: the 500 rule at 50 mm on 36 × 24 mm is 10 s.
      expect(note.text).toContain('10 s by the 500 rule');
      const kit = page.locator('details.panel').filter({ has: page.getByLabel('Longest shutter') });
      await expect.poll(() => textOf(kit)).toContain(note.text);
      await page.context().close();
    });
  });

  describe('from the clip to the interval', () => {
    it('finds interval, frames and the shutter that fits, and takes the interval over', async () => {
      const page = await site().open({ path: fragmentFor({ ...DUSK, intervalS: 6 }) });
      await page.getByText('By the length of the clip').click();
      await page.getByLabel('The clip should last').fill('12');
      // By hand: 12 · 24 = 288 frames, 7200 / 287 = 25.09 s, in whole seconds 25: 289 frames. 25 - 1 s hold "20",
      // which is 20.2 s, and not "25", which is 25.4 s.
      const found = page.locator('#clip-found');
      await expect
        .poll(() => textOf(found))
        .toBe(
          'In 2 h of light: 289 frames, one every 25 s, a clip of 12 s. That leaves time for a shutter of 20 s.',
        );
      await page.getByRole('button', { name: 'Use an interval of 25 s' }).click();
      await planned(page);
      expect((await planOn(page)).summary.frameCount).toBe(289);
      // test/data/move/intervals_by_subject.csv: 5 to 7 s.
      await page.getByLabel('Which interval suits').selectOption('a city into the night');
      await page.getByText('5–7 s, by one published source').waitFor();
      await page.context().close();
    });

    it('lets a span by the clock go along to another day', async () => {
      const page = await site().open({ path: fragmentFor(DUSK) });
      await page.getByLabel('Date').fill('2026-10-26');
      await planned(page);
      // Summer time has ended.
      expect((await planOn(page)).shoot.span).toEqual({
        startAt: '2026-10-26T18:00:00+00:00',
        endAt: '2026-10-26T20:00:00+00:00',
      });
      await page.context().close();
    });
  });

  describe('card and battery', () => {
    it('say in the figures at what clock time they give out', async () => {
      const camera = { ...DUSK.camera, cardGB: 4.5, batteryFrames: 240, coldFactor: 0.5 };
      const page = await site().open({ path: fragmentFor({ ...DUSK, camera }) });
      const figures = await textOf(page.locator('.summary'));
      // By hand: 150 frames of 30 MB fill 4.5 GB, frame 151 is 150 · 25 s = 62.5 min in; half of 240 frames is 50 min.
      expect(figures).toContain('too small, full at 19:02');
      expect(figures).toContain('289 of 120 too small, spent at 18:50');
      await page.context().close();
    });
  });

  describe('a camera that moves, where there is no network', () => {
    it('is planned from a cold start, its part never asked for before', async () => {
      const page = await site().open({ path: fragmentFor(DUSK) });
      await page.evaluate(() => navigator.serviceWorker.ready);
      const context = page.context();
      await page.close();
      await context.setOffline(true);
      const cold = await context.newPage();
      await cold.goto(site().url);
      await planned(cold);
      await panCanBeAdded(cold);
      await context.close();
    });

    it('is planned in the one file from disk', async () => {
      const page = await site().open({ url: pathToFileURL(site().oneFile).href, path: fragmentFor(DUSK) });
      await panCanBeAdded(page);
      await page.context().close();
    });
  });

  describe('a camera that moves, for everybody', () => {
    const CLOSE = {
      ...PAN,
      camera: { ...PAN.camera, sensor: { ...LENS.sensor, widthPx: 6000 } },
      moves: [
        {
          axis: 'pan',
          by: { fromPoint: { fromLeft: 0.1 }, toPoint: { fromLeft: 0.9 }, focalMm: 24 },
          gear: { topSpeedDegPerS: 3 },
        },
        { axis: 'slide', by: { m: 1 }, ease: { trapezoid: 0.2 }, mode: 'continuous', nearestM: 8 },
      ],
    };
    for (const colorScheme of ['light', 'dark'] as const) {
      for (const size of ['phone', 'desk'] as const) {
        it(`has nothing that axe objects to, ${colorScheme}, ${size}`, async () => {
          const page = await site().open({ path: fragmentFor(CLOSE), colorScheme, ...SIZES[size] });
          await openMoves(page);
          await unfold(page);
          await section(page, 'Too fast to watch').getByRole('button').first().waitFor();
          expect(await violations(page)).toEqual([]);
          if (size === 'phone') {
            const { count, small, sideways } = await smallTargets(page);
            expect(count).toBeGreaterThan(70);
            expect(small).toEqual([]);
            expect(sideways).toBeLessThanOrEqual(0);
          }
          await page.context().close();
        });
      }
    }

    it('is said by keyboard alone', async () => {
      const page = await site().open({ path: fragmentFor(PAN) });
      const panel = await openMoves(page);
      await panel.getByLabel('How far').focus();
      await page.keyboard.type('two p');
      await panel.getByLabel('Start, from the left').focus();
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.type('10');
      await page.keyboard.press('Tab');
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.type('90');
      await planned(page);
      // Right of the middle by 0.4 · 36 mm behind 50 mm, and left by the same.
      const wanted = (2 * Math.atan((0.4 * 36) / 50) * 180) / Math.PI;
      expect((await planOn(page)).move!.travels[0]!.length).toBeCloseTo(wanted, 9);
      await page.context().close();
    });

    it('speaks German', async () => {
      const page = await site().open({ path: fragmentFor(CLOSE), ...SIZES.phone });
      await page.getByLabel('Language').selectOption('Deutsch');
      const panel = await openMoves(page, 'Kamerabewegung');
      await unfold(page);
      const fast = section(page, 'Zu schnell zum Ansehen');
      await fast.getByRole('button').first().waitFor();
      const told = [await textOf(fast), await textOf(panel), await textOf(page.locator('.move-notes'))];
      for (const text of told) expect(text).not.toMatch(/\b(the|and|of|with|frames?|move|shoot)\b/i);
      expect(await violations(page)).toEqual([]);
      expect((await smallTargets(page)).sideways).toBeLessThanOrEqual(0);
      await page.context().close();
    });

    it('tells in German why a move leaves no time, and what would', async () => {
      const page = await site().open({ path: fragmentFor(SLIDE) });
      await page.getByLabel('Language').selectOption('Deutsch');
      const problem = page.locator('.problem').first();
      await expect.poll(() => textOf(problem)).toContain('Das hält die Belichtung kurz.');
      const text = await textOf(problem);
      expect(text).toMatch(/der längste Schritt der Bewegung 3,\d+ s, seine Ruhe 1 s, das Schreiben 1 s/);
      expect(text).toMatch(/Das Intervall von 6 auf \d+ s verlängern\./);
      expect(text).toMatch(/Die Bewegung kürzen: Fahrt [\d,]+ m statt 29,7 m\./);
      expect(text).toMatch(/nach einer Bewegung [\d,]+ s Ruhe lassen/);
      await page.context().close();
    });
  });
}
