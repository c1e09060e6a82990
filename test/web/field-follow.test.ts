// What is planned again in the field, held against the rules of the hand by APEX arithmetic done here.

import { type FollowCue, type PlanMade, planShoot } from '@evenfall/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FieldEvent, readEvents } from '../../packages/web/src/field/events.js';
import { type Stand, standAfter, standAtStart, standBy } from '../../packages/web/src/field/follow.js';
import { EVENING, eveningWith } from './build.js';

function planOf(change: object): PlanMade {
  const plan = planShoot(eveningWith(change));
  if (plan.kind !== 'ok') throw new Error(plan.infeasible.text);
  return plan;
}

const PLANS = [
  planOf({}),
  planOf({ filters: [], span: { fromSunAltitudeDeg: 1, toSunAltitudeDeg: -9 } }),
  planOf({
    direction: 'dawn',
    span: { fromSunAltitudeDeg: -9, toSunAltitudeDeg: 3 },
    limits: { secondsBetweenCues: 120 },
  }),
  planOf({ intervalS: 20, camera: { ...EVENING.camera, stepsPerStop: 2 } }),
];

/** The marks on the camera, by control. */
type Marks = Record<'shutter' | 'iso' | 'aperture' | 'filter', string>;

const marksOf = ({ held }: Stand): Marks => ({
  shutter: held.shutter,
  iso: String(held.iso),
  aperture: held.aperture,
  filter: held.filters.join(' + ') || 'none',
});

/** Stops of light that marks let through, to the nearest dial step: APEX, ISO 2720 and ISO 1222 mark nominal values. */
function stopsOf({ shutter, iso, aperture, filter }: Marks, stepsPerStop: number): number {
  const step = (stops: number) => Math.round(stops * stepsPerStop) / stepsPerStop;
  const [over, under = '1'] = shutter.split('/');
  const nd = filter === 'none' ? 0 : 6;
  return (
    step(Math.log2(Number(over) / Number(under))) +
    step(Math.log2(Number(iso) / 100)) -
    step(2 * Math.log2(Number(aperture))) -
    nd
  );
}

function afterCue(marks: Marks, cue: FollowCue): Marks {
  const next = { ...marks };
  for (const { control, from, to } of cue.changes) {
    expect(from, `${control} at cue ${cue.cue}`).toBe(marks[control]);
    next[control] = to;
  }
  return next;
}

/** Every cue told goes on from what the camera stands at, is no larger than a hand's step and has time before it. */
function holdsToTheRules(plan: PlanMade, stand: Stand, lastDone: number | undefined): void {
  const { limits, camera, intervalS } = plan.shoot;
  let marks = marksOf(stand);
  let before = lastDone;
  for (const cue of stand.cues) {
    const next = afterCue(marks, cue);
    const step = Math.abs(stopsOf(next, camera.stepsPerStop) - stopsOf(marks, camera.stepsPerStop));
    if (cue.setNow === undefined) {
      expect(step, `step at cue ${cue.cue}`).toBeLessThanOrEqual(limits.largestStepEv + 1e-9);
    } else {
      // What was missed is told once, whole.
      expect(cue).toBe(stand.cues[0]);
      expect(marksOf({ ...stand, held: cue.setNow })).toEqual(next);
    }
    if (before !== undefined) {
      expect((cue.frame - before) * intervalS).toBeGreaterThanOrEqual(limits.secondsBetweenCues);
    }
    before = cue.frame;
    marks = next;
  }
}

/** What a person may do in one go: wait, then press something. */
interface Act {
  readonly waitFrames: number;
  readonly press: 'done' | 'missed' | 'reading' | 'sure';
  readonly offEv: number;
}

const acts = fc.array(
  fc.record<Act>({
    waitFrames: fc.integer({ min: 0, max: 40 }),
    press: fc.constantFrom('done', 'done', 'done', 'missed', 'reading', 'sure'),
    offEv: fc.integer({ min: -25, max: 25 }).map((tenths) => tenths / 10),
  }),
  { minLength: 1, maxLength: 12 },
);

describe('an evening in the field', () => {
  it('keeps to step, spacing and kit whatever is pressed, and comes out the same when gone through again', () => {
    let readings = 0;
    let late = 0;
    let whole = 0;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: PLANS.length - 1 }), acts, (which, list) => {
        const plan = PLANS[which]!;
        const events: FieldEvent[] = [];
        let last = standAtStart(plan);
        let seen = 0;
        let lastDone: number | undefined;
        holdsToTheRules(plan, last, lastDone);
        for (const { waitFrames, press, offEv } of list) {
          seen = Math.min(seen + waitFrames, plan.frames.length - 3);
          const now = standBy(last, seen);
          const passed = now.owed ? last.cues.filter(({ frame }) => frame <= seen).at(-1) : undefined;
          if (passed !== undefined) lastDone = passed.frame;
          holdsToTheRules(plan, now, lastDone);
          const next = now.owed ? undefined : now.cues[0];
          if (press === 'done' && now.owed) {
            whole++;
            events.push({ kind: press, seen, frame: seen + 1 });
            if (passed !== undefined) lastDone = seen + 1;
          } else if (press === 'done') {
            if (next === undefined) continue;
            const frame = seen + 1;
            if (next.frame < seen) late++;
            events.push({ kind: press, seen, frame });
            lastDone = Math.min(frame, now.cues[1]?.frame ?? frame);
          } else if (press === 'missed') {
            events.push({ kind: press, seen, frame: seen + 2 });
          } else {
            const { at, sceneEv100 } = plan.frames[seen]!;
            const reading = { atMs: Date.parse(at), ev100: sceneEv100 + offEv, sure: press === 'sure' };
            events.push({ kind: 'reading', seen, frame: seen + 2, ...reading });
            readings++;
          }
          const marks = press === 'done' && next ? afterCue(marksOf(now), next) : marksOf(now);
          last = standAfter(last, events.at(-1)!);
          expect(marksOf(last)).toEqual(marks);
          holdsToTheRules(plan, last, lastDone);
        }
        const again = readEvents(JSON.parse(JSON.stringify(events))).reduce(standAfter, standAtStart(plan));
        expect(again.held).toEqual(last.held);
        expect(again.cues).toEqual(last.cues);
      }),
      { seed: 20260912, numRuns: 150 },
    );
    expect(readings).toBeGreaterThan(100);
    expect(late).toBeGreaterThan(30);
    expect(whole).toBeGreaterThan(30);
  });

  it('goes on without a filter that is lost: off the lens in one order, and never told again', () => {
    const plan = planOf({
      camera: { ...EVENING.camera, shutter: { shortest: '1/4000', longest: '1' } },
    });
    const on = plan.frames.findIndex(({ filters }) => filters.length > 0) + 30;
    let now = standAtStart(plan);
    for (const cue of plan.cues.filter(({ frame }) => frame <= on))
      now = standAfter(now, { kind: 'done', seen: cue.frame - 1, frame: cue.frame });
    expect(now.held.filters).toEqual(['ND 6']);
    const [event] = readEvents([{ kind: 'kit', seen: on, frame: on + 2, filters: [], highestIso: 400 }]);
    const lost = standAfter(now, event!);
    // What is on the camera, until somebody says that the order is done.
    expect(lost.held.filters).toEqual(['ND 6']);
    expect(lost.cues[0]!.setNow!.filters).toEqual([]);
    const wanted = plan.frames[on + 2]!.targetEv100;
    expect(Math.abs(lost.cues[0]!.setNow!.settingEv100 - wanted)).toBeLessThan(0.5);
    const done = standAfter(lost, { kind: 'done', seen: on + 2, frame: on + 3 });
    expect(done.held.filters).toEqual([]);
    const isos = done.cues.flatMap(({ changes }) => changes).filter(({ control }) => control === 'iso');
    expect(isos.length).toBeGreaterThan(0);
    for (const { to } of isos) expect(Number(to)).toBeLessThanOrEqual(400);
    expect(done.cues.flatMap(({ changes }) => changes).filter(({ control }) => control === 'filter')).toEqual(
      [],
    );
    // Found again, it may be told again; what anybody may have written is left out.
    expect(readEvents([{ kind: 'kit', seen: 1, frame: 2, filters: [1], highestIso: 400 }])).toEqual([]);
    expect(readEvents([{ kind: 'kit', seen: 1, frame: 2, filters: [] }])).toEqual([]);
  });

  it('leaves the plan as it is while its cues are done when they are due', () => {
    for (const plan of PLANS) {
      let now = standAtStart(plan);
      expect(plan.cues.length).toBeGreaterThan(5);
      for (const [i, cue] of plan.cues.entries()) {
        const toCome = now.cues.map(({ frame, changes }) => ({ frame, changes }));
        expect(toCome).toEqual(plan.cues.slice(i).map(({ frame, changes }) => ({ frame, changes })));
        now = standAfter(now, { kind: 'done', seen: cue.frame - 1, frame: cue.frame });
        expect(now.held.settingEv100).toBe(plan.frames[cue.frame]!.settingEv100);
      }
      expect(now.cues).toEqual([]);
    }
  });

  it('tells a cue missed until the next is due, then the whole setting that the plan has by then', () => {
    for (const plan of PLANS) {
      const start = standAtStart(plan);
      const [, second] = plan.cues;
      expect(standBy(start, second!.frame - 1)).toBe(start);
      for (let frame = second!.frame; frame < plan.frames.length; frame++) {
        const now = standBy(start, frame);
        expect(now.owed).toBe(true);
        const { shutter, iso, aperture, filters } = plan.frames[frame]!;
        expect(now.held).toMatchObject({ shutter, iso, aperture, filters });
        const toCome = plan.cues.filter((cue) => cue.frame > frame);
        expect(now.cues.map(({ changes }) => changes)).toEqual(toCome.map(({ changes }) => changes));
      }
    }
  });

  it('takes who comes late to be about to set what the plan has then', () => {
    for (const plan of PLANS) {
      const cue = plan.cues[3]!;
      for (const frame of [cue.frame, cue.frame + 1]) {
        const late = standAtStart(plan, frame);
        expect(late.owed).toBe(true);
        expect(late.held.settingEv100).toBe(plan.frames[cue.frame]!.settingEv100);
        const there = standAfter(late, { kind: 'done', seen: frame, frame: frame + 1 });
        expect(there.owed).toBe(false);
        expect(there.held).toEqual(late.held);
        expect(there.cues[0]!.changes).toEqual(plan.cues[4]!.changes);
      }
    }
  });

  it('keeps nothing of a reading that no sky gives but what is said of it', () => {
    const plan = PLANS[0]!;
    const { at, sceneEv100 } = plan.frames[100]!;
    const before = standAtStart(plan);
    const refused = standAfter(before, {
      kind: 'reading',
      seen: 100,
      frame: 102,
      atMs: Date.parse(at),
      ev100: sceneEv100 + 20,
    });
    expect(refused.warnings).toHaveLength(1);
    expect({ ...refused, warnings: [] }).toEqual({ ...standBy(before, 100), warnings: [] });
  });

  it('doubts a reading three quarters of a stop off, and not where the meter is said to differ by half a stop', () => {
    const plan = PLANS[0]!;
    const kindsAt = (meterEv: number | undefined) =>
      [0, 0.75]
        .reduce(
          (stand, offEv, i) => {
            const { at, sceneEv100 } = plan.frames[100 + i]!;
            const pressed = { seen: 100 + i, frame: 102 + i } as const;
            return standAfter(stand, {
              kind: 'reading',
              ...pressed,
              atMs: Date.parse(at),
              ev100: sceneEv100 + offEv,
            });
          },
          standAtStart(plan, 0, meterEv),
        )
        .warnings.map(({ kind }) => kind);
    expect(kindsAt(undefined)).toContain('reading-doubted');
    expect(kindsAt(0.5)).not.toContain('reading-doubted');
  });

  it('does not use a reading three stops off until somebody insists', () => {
    const plan = PLANS[0]!;
    const reading = (seen: number, offEv: number) => {
      const { at, sceneEv100 } = plan.frames[seen]!;
      const ev100 = sceneEv100 + offEv;
      return { kind: 'reading', seen, frame: seen + 2, atMs: Date.parse(at), ev100 } as const;
    };
    const before = standAfter(standAtStart(plan), reading(100, -0.2));
    const torch = standAfter(before, reading(114, 2.9));
    expect(torch.warnings.map(({ kind }) => kind)).toContain('reading-doubted');
    const doubting = marksOf(torch);
    expect(stopsOf(afterCue(doubting, torch.cues[0]!), 3)).toBeGreaterThan(stopsOf(doubting, 3));
    const sure = standAfter(before, { ...reading(114, 2.9), sure: true });
    expect(sure.warnings.map(({ kind }) => kind)).not.toContain('reading-doubted');
    // Three stops brighter at dusk: against the light as soon as a minute has passed since the cue before, and step by
    // step of a dial: a filter that came off and went on again would be there as soon, and spoil frames.
    const [cue] = sure.cues;
    const marks = marksOf(sure);
    expect(cue!.frame).toBe(before.cues[0]!.frame + 60 / plan.shoot.intervalS);
    expect(stopsOf(afterCue(marks, cue!), 3)).toBeLessThan(stopsOf(marks, 3));
    const soon = sure.cues.filter(({ frame }) => frame < 116 + 180 / plan.shoot.intervalS);
    expect(soon.length).toBeGreaterThan(1);
    expect(soon.flatMap(({ changes }) => changes.map(({ control }) => control))).not.toContain('filter');
  });
});
