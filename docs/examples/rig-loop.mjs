// A rig's loop: a camera driven through a whole dusk, corrected by what its own frames say of the light.
//
//   node rig-loop.mjs       a simulated camera under a sky a stop darker than forecast, 1,000 times as fast as life;
//                           stopped in mid-evening, and started again from what was kept
//
// On a real camera every exposure must have the time it needs: measure how long yours takes to be set and to write,
// with a slow card and a full buffer, and put that into gapS. See docs/cautions.md before you leave a rig alone.

import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  followFrame,
  planShoot,
  readingOfFrame,
  readShoot,
  resumeFollow,
  saveFollow,
  startFollow,
} from '@evenfall/core';
import { fastClock, simulatedCamera } from './simulated-camera.mjs';

/**
 * Where an evening is kept from one process to the next: a file that is the old one or the new one, whole, whenever the
 * power goes.
 */
export function keptIn(path) {
  return {
    read() {
      try {
        return JSON.parse(readFileSync(path, 'utf8'));
      } catch {
        return undefined; // nothing there yet
      }
    },
    write(saved) {
      writeFileSync(`${path}.part`, JSON.stringify(saved), { flush: true });
      renameSync(`${path}.part`, path);
    },
  };
}

/** An evening that no other process goes on with. */
const NOT_KEPT = { read: () => undefined, write: (_saved) => {} };

function stateOf(plan, saved, say) {
  if (saved === undefined) return startFollow(plan);
  const resumed = resumeFollow(plan, saved);
  if (resumed.kind === 'ok') return resumed.state;
  say(`Started over: ${resumed.errors[0].message}`);
  return startFollow(plan);
}

/** Takes the frames of a plan, each with the setting that the light seen so far asks for. */
export async function runRig(plan, camera, clock, say = console.log, kept = NOT_KEPT) {
  const startMs = Date.parse(plan.summary.startAt);
  const intervalMs = plan.shoot.intervalS * 1000;
  // An exposure that ran late costs the frames it ran over, never the clock of those after it.
  const nextFrame = (least) => Math.max(least, Math.ceil((clock.nowMs() - startMs) / intervalMs));

  let state = stateOf(plan, kept.read(), say);
  let seen = {};
  for (let frame = nextFrame(0); frame < plan.summary.frameCount; frame = nextFrame(frame + 1)) {
    // The clock is right, so a jump ahead is one: frames that nobody took, while this was not running, say.
    const answer = followFrame(state, { frame, jump: true, ...seen });
    state = answer.state;
    for (const { text } of answer.warnings) say(`Frame ${frame + 1}: ${text}`);
    await camera.set(answer.setting); // in the gap, before the frame begins
    kept.write(saveFollow(state)); // what stands on the camera now
    const atMs = startMs + frame * intervalMs;
    await clock.until(atMs);
    const { shutterS, settingEv100 } = answer.setting;
    const level = await camera.expose(shutterS); // how bright the frame came out; undefined where nothing tells
    const taken = { atMs: atMs + 500 * shutterS, settingEv100 };
    seen = level === undefined ? {} : { reading: readingOfFrame(level, taken) };
  }
}

/** An evening over a lake, for a rig: software sets every frame, so nothing keeps the steps from being small. */
export const LAKE = {
  format: 'evenfall-shoot/1',
  place: { latitudeDeg: 57.05, longitudeDeg: 9.92, timeZone: 'Europe/Copenhagen' },
  date: '2026-09-12',
  span: { fromSunAltitudeDeg: 3, toSunAltitudeDeg: -12 },
  intervalS: 15,
  crew: 'rig',
  camera: {
    shutter: { shortest: '1/4000', longest: '13' },
    iso: { lowest: 100, highest: 6400 },
    aperture: '4',
    gapS: 2,
  },
};

export function planOf(file) {
  const read = readShoot(file);
  if (read.kind === 'wrong') throw new Error(read.errors.map(({ message }) => message).join('\n'));
  const plan = planShoot(read.shoot);
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  return plan;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const plan = planOf(LAKE);
  const startMs = Date.parse(plan.summary.startAt);
  const clock = fastClock(startMs - 60_000);
  const camera = simulatedCamera(clock, (atMs) => {
    const { sceneEv100 } = plan.frames[Math.round((atMs - startMs) / 1000 / plan.shoot.intervalS)];
    return sceneEv100 - 1;
  });
  const path = join(tmpdir(), `evening-${process.pid}.json`);
  // A power cut after two hundred frames: nothing is left but the file.
  const cut = {
    ...camera,
    async expose(shutterS) {
      if (camera.taken.length === 200) throw new Error('power cut');
      return camera.expose(shutterS);
    },
  };
  await runRig(plan, cut, clock, console.log, keptIn(path)).catch(({ message }) => console.log(message));
  await clock.until(clock.nowMs() + 60_000); // four frames
  await runRig(plan, camera, clock, console.log, keptIn(path));
  rmSync(path);
  const { taken } = camera;
  const last = taken[taken.length - 1];
  console.log(`${taken.length} frames taken; the last at ${last.shutter} s, ISO ${last.iso}.`);
}
