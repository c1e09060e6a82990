// The rig's loop of docs/examples: a whole dusk at a thousand times its speed, and what a loop must survive.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { PlanMade } from '@evenfall/core';
import { expect, test } from 'vitest';
import { keptIn, LAKE, planOf, runRig } from '../../docs/examples/rig-loop.mjs';
import { fastClock, simulatedCamera } from '../../docs/examples/simulated-camera.mjs';

const plan: PlanMade = planOf(LAKE);
const { intervalS } = plan.shoot;
const startMs = Date.parse(plan.summary.startAt);
const indexAt = (atMs: number) => Math.round((atMs - startMs) / 1000 / intervalS);

/** A stop darker than forecast, and a bank of cloud that takes another half stop and goes again within the hour. */
function sceneEv100At(atMs: number): number {
  const cloud = 0.25 * (1 - Math.cos((2 * Math.PI * (atMs - startMs)) / 3_600_000));
  return plan.frames[indexAt(atMs)]!.sceneEv100 - 1 - cloud;
}

/** APEX (ASA PH2.5-1960), from exact values: log2 N² − log2 t − log2(S / 100). */
const ev100 = ({ fNumber, shutterS, isoExact }: { fNumber: number; shutterS: number; isoExact: number }) =>
  2 * Math.log2(fNumber) - Math.log2(shutterS) - Math.log2(isoExact / 100);

test('a whole dusk, a stop darker than forecast and with clouds: every frame taken in time and near its target', async () => {
  const clock = fastClock(startMs - 30_000, 1000);
  const camera = simulatedCamera(clock, sceneEv100At);
  const said: string[] = [];
  await runRig(plan, camera, clock, (text) => said.push(text));

  expect(said).toEqual([]);
  const { taken } = camera;
  expect(taken.map((frame) => (frame.startMs - startMs) / 1000 / intervalS)).toEqual(
    plan.frames.map(({ frame }) => frame),
  );
  let squares = 0;
  let planned = 0;
  taken.forEach((frame, i) => {
    expect(frame.endMs - frame.startMs).toBeCloseTo(frame.shutterS * 1000, 3);
    const next = taken[i + 1];
    // Ended, written and set again before the next one begins.
    if (next !== undefined) expect(frame.readyMs).toBeLessThan(next.startMs);
    expect(frame.isoExact).toBeLessThanOrEqual(6400);
    expect(frame.aperture).toBe('4');
    const before = taken[i - 1];
    // A rig's largest step is one mark of the dial, a third of a stop.
    if (before !== undefined) expect(Math.abs(ev100(frame) - ev100(before))).toBeLessThan(1 / 3 + 1e-6);
    const lookEv = plan.frames[i]!.targetEv100 - plan.frames[i]!.sceneEv100;
    const wanted = sceneEv100At(frame.startMs) + lookEv;
    squares += (ev100(frame) - wanted) ** 2;
    planned += (ev100(plan.frames[i]!) - wanted) ** 2;
  });
  // The plan alone is off by the stop and the cloud; the loop by little more than the marks of the dial are.
  expect(Math.sqrt(planned / taken.length)).toBeGreaterThan(1);
  expect(Math.sqrt(squares / taken.length)).toBeLessThan(0.2);
});

test('a frame that runs late costs the frames it runs over, and the clock of no other', async () => {
  const clock = fastClock(startMs, 1e6);
  const camera = simulatedCamera(clock, sceneEv100At);
  const { expose } = camera;
  camera.expose = async (shutterS) => {
    const ev = await expose(shutterS);
    if (camera.taken.length === 101) await clock.until(camera.taken[100]!.startMs + 40_000); // a card that hesitates
    return ev;
  };
  const said: string[] = [];
  await runRig(plan, camera, clock, (text) => said.push(text));
  const frames = camera.taken.map((frame) => indexAt(frame.startMs));
  // Ready again 40 s after frame 100 began, 15 s apart: 101 and 102 are gone, 103 stands where it should.
  expect(frames.slice(99, 103)).toEqual([99, 100, 103, 104]);
  expect(camera.taken[101]!.startMs).toBe(startMs + 103 * intervalS * 1000);
  expect(frames[frames.length - 1]).toBe(plan.summary.frameCount - 1);
});

test('started in the middle of the evening it joins there, and says so', async () => {
  const from = plan.summary.frameCount - 20;
  const clock = fastClock(startMs + from * intervalS * 1000 - 1000, 1e6);
  const camera = simulatedCamera(clock, sceneEv100At);
  const said: string[] = [];
  await runRig(plan, camera, clock, (text) => said.push(text));
  expect(camera.taken).toHaveLength(20);
  expect(said[0]).toMatch(/^Frame \d+: Joined at frame /);
});

test('stopped in mid-evening, it goes on from what was kept: every frame near its target', async () => {
  const path = join(mkdtempSync(join(tmpdir(), 'evenfall-')), 'evening.json');
  const clock = fastClock(startMs - 30_000, 1e6);
  const camera = simulatedCamera(clock, sceneEv100At);
  const cuts = [150, 151, 300];
  const said: string[] = [];
  for (const cut of [...cuts, Number.POSITIVE_INFINITY]) {
    const stopped = {
      ...camera,
      expose: async (shutterS: number) => {
        if (camera.taken.length >= cut) throw new Error('cut');
        return camera.expose(shutterS);
      },
    };
    const run = runRig(plan, stopped, clock, (text) => said.push(text), keptIn(path));
    await (cut === Number.POSITIVE_INFINITY ? run : expect(run).rejects.toThrow('cut'));
  }
  rmSync(dirname(path), { recursive: true });
  expect(said.filter((text) => /Joined|Started over/.test(text))).toEqual([]);
  const { taken } = camera;
  // Started again at once, the frame that was cut is asked for again, and taken.
  expect(taken).toHaveLength(plan.summary.frameCount);
  const errors = taken.map((frame) => {
    const i = indexAt(frame.startMs);
    const lookEv = plan.frames[i]!.targetEv100 - plan.frames[i]!.sceneEv100;
    return ev100(frame) - sceneEv100At(frame.startMs) - lookEv;
  });
  expect(Math.max(...errors.slice(5).map(Math.abs))).toBeLessThan(0.5);
});

test('a file of another plan, or half a file, is no reason to stop', async () => {
  const path = join(mkdtempSync(join(tmpdir(), 'evenfall-')), 'evening.json');
  const from = plan.summary.frameCount - 5;
  for (const text of ['{"format":"evenfall-fo', '{"format":"evenfall-follow/9"}']) {
    writeFileSync(path, text);
    const clock = fastClock(startMs + from * intervalS * 1000 - 1000, 1e6);
    const camera = simulatedCamera(clock, sceneEv100At);
    const said: string[] = [];
    await runRig(plan, camera, clock, (line) => said.push(line), keptIn(path));
    expect(camera.taken).toHaveLength(5);
    expect(said.some((line) => line.startsWith('Started over: '))).toBe(text.endsWith('}'));
  }
  rmSync(dirname(path), { recursive: true });
});

test('run by itself it loses the frames without power, and no others', () => {
  const path = fileURLToPath(new URL('../../docs/examples/rig-loop.mjs', import.meta.url));
  const { stdout, stderr, status } = spawnSync('node', [path], { encoding: 'utf8' });
  expect({ stderr, status }).toEqual({ stderr: '', status: 0 });
  expect(stdout).toMatch(
    new RegExp(
      `^power cut\\n${plan.summary.frameCount - 4} frames taken; the last at \\S+ s, ISO \\d+\\.\n$`,
    ),
  );
});
