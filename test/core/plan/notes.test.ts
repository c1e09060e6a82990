// What a plan says beside its numbers, by hand.

import { type PlanMade, planShoot } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { shootFrom } from '../shoots.js';

function made(keys: Record<string, unknown>): PlanMade {
  const plan = planShoot(shootFrom({ intervalS: 20, ...keys }));
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  return plan;
}

const camera = (more: object = {}) => ({
  camera: {
    shutter: { shortest: '1/4000', longest: '15' },
    iso: { lowest: 100, highest: 6400 },
    aperture: '2.8',
    ...more,
  },
});
const startingWith = (plan: PlanMade, words: string) =>
  plan.notes.filter(({ text }) => text.startsWith(words));

describe('a shutter that the interval does not hold', () => {
  const notes = (keys: Record<string, unknown>) =>
    startingWith(made(keys), 'A shutter of').map(({ level, text }) => `${level}: ${text}`);
  const long = { shutter: { shortest: '1/4000', longest: '30' } };
  const rest = 'The plan stays below it.';

  // "30" is 32 s, "8" is 8 s; a gap of 1 s where no other is given.
  test('is told by its mark, its true time, and what is left for it', () => {
    expect(notes({ intervalS: 20, ...camera(long) })).toEqual([
      `info: A shutter of 30 s (in fact 32 s) does not fit: an interval of 20 s leaves 19 s. ${rest}`,
    ]);
    const eight = { shutter: { shortest: '1/4000', longest: '8' } };
    expect(notes({ intervalS: 8.5, ...camera(eight) })).toEqual([
      `info: A shutter of 8 s does not fit: an interval of 8.5 s leaves 7.5 s. ${rest}`,
    ]);
  });

  test('is none where it just fits', () => {
    expect(notes({ intervalS: 33, ...camera(long) })).toEqual([]);
    expect(notes({ intervalS: 32.9, ...camera(long) })).toHaveLength(1);
  });

  test('has half the time where a dark frame takes as long', () => {
    expect(notes({ intervalS: 20, ...camera({ ...long, darkFrame: true }) })).toEqual([
      `info: A shutter of 30 s (in fact 32 s) does not fit: an interval of 20 s leaves 9.5 s, each dark frame counted. ${rest}`,
    ]);
  });

  test('has the time that a move and its rest leave', () => {
    const moves = [{ axis: 'pan', by: { deg: 20 }, gear: { settleS: 1.5, moveS: 2 } }];
    expect(notes({ intervalS: 20, ...camera(long), moves })).toEqual([
      `info: A shutter of 30 s (in fact 32 s) does not fit: an interval of 20 s leaves 15.5 s, beside the move and its rest. ${rest}`,
    ]);
  });
});

describe('the tightest interval', () => {
  const kit = camera({ shutter: { shortest: '1/4000', longest: '30' }, iso: { lowest: 100, highest: 800 } });
  const notes = (keys: Record<string, unknown>) => {
    const plan = made({ ...kit, ...keys });
    // "30" is 32 s, and the plan takes it.
    expect(Math.max(...plan.frames.map(({ shutterS }) => shutterS))).toBe(32);
    const first = plan.frames.findIndex(({ shutterS }) => shutterS === 32);
    return plan.notes
      .filter(({ kind }) => kind === 'tight-interval')
      .map((note) => {
        expect(note).toMatchObject({ level: 'caution', frame: first, at: plan.frames[first]!.at });
        return note.text.replace(/frame \d+ \(\d\d:\d\d\)/, 'frame');
      });
  };
  const told = (spare: string, intervalS: number) =>
    `The interval of frame has ${spare} of its ${intervalS} s to spare: a camera or a trigger that is a little slower loses frames. Lengthen the interval, or shorten the longest shutter.`;

  // By hand: less 32 s and a gap of 1 s; a twentieth of 34.7 s is 1.735 s, of 34.8 s 1.74 s.
  test('with less than a twentieth to spare is a caution, in milliseconds below a second', () => {
    expect(notes({ intervalS: 33 })).toEqual([told('0 ms', 33)]);
    expect(notes({ intervalS: 33.0013 })).toEqual([told('1.3 ms', 33.0013)]);
    expect(notes({ intervalS: 34.7 })).toEqual([told('1.7 s', 34.7)]);
    expect(notes({ intervalS: 34.8 })).toEqual([]);
  });

  test('stands before what is said of the sun on every evening', () => {
    const kinds = made({ ...kit, intervalS: 33 }).notes.map(({ kind }) => kind);
    expect(kinds).toContain('sun');
    expect(kinds.indexOf('tight-interval')).toBeLessThan(kinds.indexOf('sun'));
  });

  test('counts the step of a move', () => {
    const moves = [{ axis: 'pan', by: { deg: 20 }, gear: { settleS: 1.5, moveS: 2 } }];
    const plan = made({ ...kit, intervalS: 36.6, moves });
    const { slackS, frame } = plan.move!.tightest;
    expect(slackS).toBeCloseTo(0.1, 9);
    expect(plan.notes).toContainEqual(
      expect.objectContaining({ kind: 'tight-interval', frame, spareS: slackS }),
    );
  });
});

describe('the moon', () => {
  // The rising and the setting are what the plan's own events say; from and to the second they count.
  const place = { latitudeDeg: 40, longitudeDeg: -3.7, timeZone: 'Europe/Madrid' };
  const on = (date: string, startAt: string, endAt: string) =>
    made({
      place,
      date,
      span: { startAt, endAt },
      ...camera({ aperture: { widest: '1.4', narrowest: '8' } }),
    });
  const shifted = (at: string, seconds: number) =>
    new Date(Date.parse(at) + seconds * 1000).toISOString().replace('.000Z', 'Z');

  test.each([
    // A day past full moon it rises an hour after sunset; two days past new it sets two hours after.
    ['moonrise', 'rises', '2026-12-25'],
    ['moonset', 'sets', '2026-12-11'],
  ])('%s is told from the first frame to the last, and not before or after', (name, word, date) => {
    const evening = on(date, `${date}T17:30:00+01:00`, `${date}T21:30:00+01:00`);
    const event = evening.events.find((e) => e.name === name && e.at.startsWith(date))!;
    const note = {
      level: 'info',
      kind: name,
      at: event.at,
      text: `The moon ${word} at ${event.at.slice(11, 16)}, during the shoot.`,
    };
    const told = (fromS: number, toS: number) =>
      startingWith(on(date, shifted(event.at, fromS), shifted(event.at, toS)), 'The moon');
    expect(told(0, 600)).toEqual([note]);
    expect(told(-600, 0)).toEqual([note]);
    expect(told(1, 601)).toEqual([]);
    expect(told(-601, -1)).toEqual([]);
  });
});

describe('looking at the sun', () => {
  // The sun's upper edge is still seen at a true altitude of -0.83°: below -1° there is none.
  test('is warned of as long as there is one to look at', () => {
    const told = (fromSunAltitudeDeg: number) =>
      startingWith(made({ span: { fromSunAltitudeDeg, toSunAltitudeDeg: -9 } }), 'Never look at the sun');
    expect(told(-0.9)).toEqual([expect.objectContaining({ level: 'caution' })]);
    expect(told(-1.1)).toEqual([]);
  });
});

test('where no filter changes, nothing is said of frames that one may spoil', () => {
  expect(startingWith(made(camera()), 'Changing filters')).toEqual([]);
});

test('a reading that no sky gives is told first, as a warning, with its number', () => {
  const plan = made({ ...camera(), readings: [{ at: '2026-09-18T19:30:00+02:00', ev100: 25 }] });
  expect(plan.notes[0]).toEqual({
    level: 'warning',
    kind: 'reading-refused',
    ev100: 25,
    because: expect.objectContaining({ reason: 'impossible', ev100: 25 }),
    text: expect.stringMatching(/^The reading of EV 25 was not used\. [A-Z].*\.$/),
  });
});

test('warnings stand before cautions, and those before the rest, whatever they are about', () => {
  const moves = [{ axis: 'pan', by: { deg: 20 }, gear: { settleS: 1, topSpeedDegPerS: 5 } }];
  const tight = {
    shutter: { shortest: '1/4000', longest: '30' },
    batteryFrames: 20,
    iso: { lowest: 100, highest: 1600 },
  };
  const { notes } = made({ ...camera(tight), moves, filters: [{ name: 'ND 64', factor: 64 }] });
  const levels = notes.map(({ level }) => level);
  const order = ['warning', 'caution', 'info'];
  expect(levels).toEqual(levels.toSorted((a, b) => order.indexOf(a) - order.indexOf(b)));
  expect(new Set(levels)).toEqual(new Set(order));
});

describe('a reading taken after the start', () => {
  // Sunset is at 20:14 there; the shoot starts at 20:00 on the place's clock.
  const span = { startAt: '2026-09-18T20:00:00+02:00', endAt: '2026-09-18T21:30:00+02:00' };
  const notesWith = (...at: string[]) => {
    const readings = at.map((each) => ({ at: each, ev100: 11.5 }));
    return made({ span, ...camera({ cardGB: 1, frameMB: 60 }), readings }).notes;
  };

  test('is warned of before all else: the plan is one from the start, and the evening belongs to follow', () => {
    // 20:20 in Madrid is 18:20 in UTC; the card that is too small is a warning too.
    const [first, second] = notesWith('2026-09-18T20:40:00+02:00', '2026-09-18T18:20:00Z');
    expect(first).toMatchObject({
      level: 'warning',
      text: expect.stringMatching(
        /^This plans the shoot from its start at 20:00, with a reading taken at 20:20: .*evenfall follow/,
      ),
    });
    expect(second).toMatchObject({ level: 'warning', text: expect.stringMatching(/^The card holds/) });
  });

  test('before the start, or at it, there is nothing to warn of', () => {
    for (const at of ['2026-09-18T19:40:00+02:00', '2026-09-18T20:00:00+02:00']) {
      expect(notesWith(at)[0]!.text).toMatch(/^The card holds/);
    }
    expect(notesWith()[0]!.text).toMatch(/^The card holds/);
  });
});
