// An evening saved at any frame, through JSON, goes on as if nothing had happened; what is not such a text is refused in
// one line.

import { type PlanMade, readPlan, writePlan } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { type FollowState, followFrame, startFollow } from '../../../packages/core/src/follow/follow.js';
import { resumeFollow, saveFollow } from '../../../packages/core/src/follow/saved.js';
import type { FollowInput } from '../../../packages/core/src/follow/types.js';
import { simulateEvening } from '../../reference/evening-simulator.js';
import { type Random, seeded } from '../../reference/random.js';
import { BULB, DAWN, frameOf, HAND, RIG, readingOf, startMsOf } from './evenings.js';

const PLANS = { HAND, RIG, BULB, DAWN };

/** What may come in of an evening under clouds: mostly readings, and everything that goes wrong. */
function evening(plan: PlanMade, random: Random, seed: number): FollowInput[] {
  const { offsetEv } = simulateEvening(seed, 900, 8, true);
  const inputs: FollowInput[] = [];
  let frame = random.chance(0.5) ? 0 : random.whole(0, 300);
  while (frame < 900 && inputs.length < 120) {
    const { shutter, iso, filters } = frameOf(plan, frame);
    const wrong = random.chance(0.1) ? random.between(-4, 4) : 0;
    const at = random.chance(0.05) ? random.whole(0, 899) : frame;
    inputs.push({
      frame: at,
      ...(random.chance(0.7) ? { reading: readingOf(plan, frame, offsetEv[frame]! + wrong) } : {}),
      ...(random.chance(0.08) ? { missed: random.whole(1, 12) } : {}),
      ...(random.chance(0.08) ? { done: random.whole(1, 12) } : {}),
      ...(random.chance(0.06)
        ? { setting: plan === BULB ? { iso, filters } : { shutter, iso, filters } }
        : {}),
    });
    frame += random.chance(0.05) ? random.whole(10, 200) : random.whole(1, 9);
  }
  return inputs;
}

/** Through the text that is on the disk, into another process. */
function again(plan: PlanMade, state: FollowState): FollowState {
  const resumed = resumeFollow(plan, JSON.parse(JSON.stringify(saveFollow(state))));
  if (resumed.kind === 'wrong') throw new Error(resumed.errors[0]!.message);
  return resumed.state;
}

describe.each(Object.entries(PLANS))('%s', (_name, plan) => {
  // The plan of the process that goes on comes from a file.
  const read = readPlan(JSON.parse(writePlan(plan)));
  if (read.kind === 'wrong' || read.plan.kind === 'infeasible') throw new Error('no plan');
  const other = read.plan;

  test('saved and resumed at random frames, random evenings answer the same to the end', () => {
    const kinds = new Set<string>();
    for (let seed = 1; seed <= 6; seed++) {
      const random = seeded(seed);
      const inputs = evening(plan, random, seed);
      const ends = new Set([random.whole(0, inputs.length), random.whole(0, inputs.length), 0]);
      let never = startFollow(plan, seed % 2 === 0 ? {} : { aheadS: 600, meterEv: 0.1 });
      let ended = never;
      inputs.forEach((input, i) => {
        if (ends.has(i)) ended = again(i % 2 === 0 ? plan : other, ended);
        const { state: next, ...answer } = followFrame(never, input);
        const { state: nextEnded, ...answerEnded } = followFrame(ended, input);
        expect(answerEnded, `seed ${seed}, input ${i}`).toEqual(answer);
        for (const { kind } of answer.warnings) kinds.add(kind);
        never = next;
        ended = nextEnded;
      });
      expect(saveFollow(ended)).toEqual(saveFollow(never));
    }
    // The evenings were eventful.
    expect(kinds.size).toBeGreaterThan(5);
  });
});

/** The state after some frames, each with a reading. */
function followed(plan: PlanMade, frames: number): FollowState {
  let state = startFollow(plan);
  for (let frame = 0; frame < frames; frame++) {
    state = followFrame(state, { frame, reading: readingOf(plan, frame, -0.7) }).state;
  }
  return state;
}

test('it is a few kB of plain JSON', () => {
  const saved = saveFollow(followed(HAND, 150));
  const text = JSON.stringify(saved);
  expect(text.length).toBeLessThan(4096);
  expect(JSON.parse(text)).toEqual(saved);
  expect(structuredClone(saved)).toEqual(saved);
  expect(saved.format).toBe('evenfall-follow/1');
});

test('before the first frame, and after a reading alone, there is something to save too', () => {
  const start = startFollow(HAND);
  expect(again(HAND, start).frame).toBeUndefined();
  const early = { atMs: startMsOf(HAND, 0) - 600_000, ev100: frameOf(HAND, 0).sceneEv100 - 1 };
  const { state } = followFrame(start, { reading: early });
  const { offsetEv } = followFrame(again(HAND, state), { frame: 0 });
  expect(offsetEv).toBe(followFrame(state, { frame: 0 }).offsetEv);
  expect(offsetEv).not.toBe(0);
});

describe('refused in one line', () => {
  const saved = saveFollow(followed(HAND, 20));
  const why = (value: unknown, plan = HAND) => {
    const resumed = resumeFollow(plan, value);
    if (resumed.kind === 'ok') throw new Error('taken up');
    expect(resumed.errors).toHaveLength(1);
    expect(resumed.errors[0]!.message).not.toMatch(/[\n\r]/);
    return resumed.errors[0]!;
  };
  const VERSION = /is not of this version; give an evening saved as "evenfall-follow\/1"$/;

  test('of another version, or nothing of the kind', () => {
    expect(why({ ...saved, format: 'evenfall-follow/2' }).message).toMatch(
      /^format: "evenfall-follow\/2" is not of this version/,
    );
    for (const value of [undefined, null, 7, 'x', [], {}, HAND, { format: `x\n${'y'.repeat(5000)}` }]) {
      const { path, message } = why(value);
      expect(path).toEqual(['format']);
      expect(message).toMatch(VERSION);
      expect(message.length).toBeLessThan(200);
    }
  });

  test('of another plan: another kit, another light, another schedule', () => {
    const shoot = { ...HAND.shoot, limits: { ...HAND.shoot.limits, toleranceEv: 0.3 } };
    const darker = HAND.frames.map((each) => ({ ...each, sceneEv100: each.sceneEv100 - 0.001 }));
    for (const plan of [
      RIG,
      { ...HAND, shoot },
      { ...HAND, frames: darker },
      { ...HAND, frames: HAND.frames.slice(0, 899) },
    ]) {
      const { path, message } = why(saved, plan);
      expect(path).toEqual(['plan']);
      expect(message).toBe(
        'plan: it was saved while another plan was followed; give that plan, or start over',
      );
    }
  });

  test('not whole, or changed by hand', () => {
    const text = JSON.stringify(saved);
    const { check: _, ...unchecked } = saved;
    const changed = JSON.parse(text.replace('"frame":19', '"frame":18'));
    let deep: unknown = {};
    for (let i = 0; i < 50_000; i++) deep = [deep];
    for (const value of [
      unchecked,
      changed,
      { ...saved, state: {} },
      { ...saved, more: 1 },
      { ...saved, state: deep },
    ]) {
      const { path, message } = why(value);
      expect(path).toEqual(['check']);
      expect(message).toBe('check: this saved evening is not whole; give an earlier one, or start over');
    }
    // Cut anywhere it is no JSON, or is told.
    for (let at = 0; at < text.length; at += 97) expect(() => JSON.parse(text.slice(0, at))).toThrow();
  });

  test('keys in another order are the same', () => {
    const turned = (value: unknown): unknown =>
      Array.isArray(value)
        ? value.map(turned)
        : typeof value === 'object' && value !== null
          ? Object.fromEntries(
              Object.entries(value)
                .reverse()
                .map(([key, each]) => [key, turned(each)]),
            )
          : value;
    expect(resumeFollow(HAND, turned(saved)).kind).toBe('ok');
  });
});
