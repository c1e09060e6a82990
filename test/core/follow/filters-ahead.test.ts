// Where filter changes are limited: those of the plan that come after what is looked ahead are kept back.

import { followFrame, startFollow } from '@evenfall/core';
import { expect, test } from 'vitest';
import { filtersAhead } from '../../../packages/core/src/follow/filters-ahead.js';
import { EVENING_SHOOT, planOf } from '../../reference/evening-shoot.js';
import { readingOf } from './evenings.js';

const FILTERS = [3, 6, 10].map((stops) => ({ name: `ND ${stops}`, stops }));
const limited = (maxFilterChanges: number) =>
  planOf({ ...EVENING_SHOOT, filters: FILTERS, limits: { toleranceEv: 0.5, maxFilterChanges } });

/** An evening as forecast; what may be done about filters by frame. */
function evening(maxFilterChanges: number, offsetEv: number) {
  const plan = limited(maxFilterChanges);
  let state = startFollow(plan);
  const rows = [];
  for (let frame = 0; frame < 900; frame += 10) {
    const step = followFrame(state, { frame, jump: true, reading: readingOf(plan, frame, offsetEv) });
    state = step.state;
    const targets = Float64Array.from(
      plan.frames.slice(frame, frame + 150),
      ({ targetEv100 }) => targetEv100 + offsetEv,
    );
    const may = filtersAhead(state.evening, state.camera, frame, targets);
    rows.push({ frame, ...may, filters: step.setting.filters, made: state.camera.filterChanges });
  }
  return { plan, rows, state };
}

test('a change whose light comes later than twenty minutes is kept back, and made when it comes', () => {
  const { plan, rows, state } = evening(2, 0);
  const changes = plan.frames.flatMap(({ filters }, i) =>
    i > 0 && filters.join() !== plan.frames[i - 1]!.filters.join() ? [i] : [],
  );
  expect(changes).toHaveLength(2);
  const [first, second] = changes as [number, number];
  // 150 frames of 8 s are twenty minutes; the window of a frame holds a change within them.
  let kept = 0;
  let open = 0;
  for (const { frame, changesLeft, made } of rows) {
    if (frame + 150 >= 900) break;
    if (made === 0 && frame < first - 150) {
      expect(changesLeft, `frame ${frame}`).toBe(0);
      kept++;
    }
    if (made === 1 && frame > second - 140) {
      expect(changesLeft, `frame ${frame}`).toBe(1);
      open++;
    }
  }
  expect(kept + open).toBeGreaterThan(3);
  expect(state.camera.filterChanges).toBe(2);
  expect(rows.at(-1)!.filters).toEqual(plan.frames.at(-1)!.filters);
});

test.each([-2, 1])(
  'one change for an evening %d stops off: to the plan’s last filters, never to others',
  (offsetEv) => {
    const { plan, rows } = evening(1, offsetEv);
    const names = new Set(rows.map(({ filters }) => filters.join()));
    expect(names.size).toBeLessThanOrEqual(2);
    expect(rows.at(-1)!.filters).toEqual(plan.frames.at(-1)!.filters);
    for (const { made } of rows) expect(made).toBeLessThanOrEqual(1);
  },
);

test('no limit, nothing kept back; none left, none to be made', () => {
  const free = planOf({ ...EVENING_SHOOT, filters: FILTERS, limits: {} });
  const { state } = followFrame(startFollow(free), { frame: 0, reading: readingOf(free, 0, 0) });
  expect(filtersAhead(state.evening, state.camera, 0, Float64Array.of(9))).toEqual({
    changesLeft: Number.POSITIVE_INFINITY,
  });
  const { rows } = evening(1, 0);
  const after = rows.filter(({ made }) => made === 1);
  expect(after.length).toBeGreaterThan(0);
  for (const { changesLeft } of after) expect(changesLeft).toBe(0);
});
