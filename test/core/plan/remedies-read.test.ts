// Each remedy of shoots at random, as somebody takes it: written into the file, read again, and planned.

import { planShoot, readShoot, writeShoot } from '@evenfall/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shoots } from '../../../packages/tools/any-shoot.mjs';
import { seedOf } from '../../reference/cases.js';
import { sliceOf } from '../../reference/long.js';

const RUNS = sliceOf(1000, 100);

test(`remedies of ${RUNS} shoots at random: each is read, and has a plan`, () => {
  let offered = 0;
  for (const value of fc.sample(shoots({ able: true }), { numRuns: RUNS, seed: seedOf(22) })) {
    const read = readShoot(value);
    if (read.kind === 'wrong') throw new Error(read.errors[0]?.message);
    const plan = planShoot(read.shoot);
    if (plan.kind !== 'infeasible') continue;
    for (const { text, apply } of plan.infeasible.remedies) {
      offered++;
      const written = JSON.parse(writeShoot({ ...read.shoot, ...apply }));
      const again = readShoot(written);
      if (again.kind === 'wrong') throw new Error(`${text} ${again.errors[0]?.message}`);
      const cured = planShoot(again.shoot);
      expect(
        cured.kind === 'infeasible' ? `${text} ${cured.infeasible.text}` : '',
        JSON.stringify(value),
      ).toBe('');
    }
  }
  expect(offered).toBeGreaterThan(RUNS / 10);
});
