// Takes the frames of a plan with gphoto2, the free command-line program for cameras on a USB cable.
//
//   evenfall plan evening.yaml -o plan.json       with crew: rig, and no filter that must come off on the way
//   node camera-program.mjs plan.json
//
// TRY IT AT HOME FIRST, with your own camera, lens and card: this has been tested against a stand-in that prints what
// it is told, and cameras differ. It turns the camera's own controls, and leaves them as they stand when it ends.
//  - Manual exposure, manual focus, long-exposure noise reduction off (or darkFrame: true in the shoot), no
//    power-saving, mains power or a fresh battery.
//  - gapS has to hold all that the shutter does not: starting the program, setting, writing. Count on two seconds and
//    more; the lines this prints tell you when it is too little.
//  - It turns no filter, and it does not see. A lens left on the sun can burn what is behind it, and a tripod in the
//    dark can fall or be fallen over: stay with it. More: docs/cautions.md

import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { readPlan } from '@evenfall/core';
import { realClock } from './simulated-camera.mjs';

/** What this camera calls its controls; `gphoto2 --list-config` tells, and some say aperture as f-number. */
const NAMES = { shutter: 'shutterspeed', iso: 'iso', aperture: 'aperture' };
const GIVE_UP_AFTER = 3; // frames in a row that failed

/** Runs gphoto2 once; an error of one line where it fails or takes too long. */
export async function gphoto2(args, timeoutMs = 15_000) {
  try {
    return (await promisify(execFile)('gphoto2', args, { timeout: Math.ceil(timeoutMs) })).stdout;
  } catch (error) {
    const why =
      error.code === 'ENOENT'
        ? 'it is not installed'
        : error.killed
          ? `no end after ${timeoutMs / 1000} s`
          : String(error.stderr || error.message)
              .trim()
              .split('\n')[0];
    throw new Error(`gphoto2 ${args.join(' ')}: ${why}`);
  }
}

/**
 * Takes the frames of a plan.
 *
 * @param run runs the program: arguments in, its output out, an error of one line where it failed
 * @returns how many frames were taken
 */
export async function takeFrames(plan, { run = gphoto2, clock = realClock, say = console.log } = {}) {
  const { frames, shoot } = plan;
  if (frames.some(({ filters }) => filters.join() !== frames[0].filters.join())) {
    throw new Error('the plan changes a filter, which this cannot: give startFilter, or maxFilterChanges: 0');
  }
  if (shoot.camera.bulb) throw new Error('the plan times the shutter freely: give bulb: false');
  const marks = await marksOfCamera(plan, run);

  const standsAt = {};
  let taken = 0;
  let failed = 0;
  const tried = async (frame, args, timeoutMs) => {
    try {
      await run(args, timeoutMs);
      return true;
    } catch (error) {
      say(`Frame ${frame + 1}: ${error.message}`);
      return false;
    }
  };
  for (const frame of frames) {
    const startMs = Date.parse(frame.at);
    const busyMs = frame.shutterS * (shoot.camera.darkFrame ? 2 : 1) * 1000;
    // An exposure must end before the next frame begins: one that cannot is left out.
    const lateMs = () => Math.max(0, clock.nowMs() - startMs);
    const inTime = () => lateMs() + busyMs <= shoot.intervalS * 1000;

    // Set shortly before the frame, in the gap, and only what changes. What failed is set again at the next frame;
    // a frame at the setting before is better than none.
    await clock.until(startMs - shoot.camera.gapS * 500);
    const wanted = Object.entries(marks).map(([name, mark]) => [name, mark(frame)]);
    const changes = wanted.filter(([name, value]) => standsAt[name] !== value);
    if (changes.length > 0 && inTime()) {
      const told = await tried(
        frame.frame,
        changes.flatMap(([name, value]) => ['--set-config', `${name}=${value}`]),
      );
      for (const [name, value] of changes) standsAt[name] = told ? value : undefined;
    }

    await clock.until(startMs);
    if (!inTime()) {
      say(`Frame ${frame.frame + 1} left out, ${(lateMs() / 1000).toFixed(1)} s late: gapS is too short.`);
    } else if (await tried(frame.frame, ['--capture-image'], busyMs + 15_000)) {
      taken++;
      failed = 0;
    } else if (++failed === GIVE_UP_AFTER) {
      throw new Error(`Stopped: ${failed} frames in a row failed. The camera stands as it was last set.`);
    }
  }
  return taken;
}

/**
 * For each control, what to set for a frame: the value the camera lists that is nearest to the plan's mark. Both
 * are marks of a dial, so "30" meets "30", though both mean 32 s.
 */
async function marksOfCamera({ frames, shoot }, run) {
  const marks = {};
  for (const [control, name] of Object.entries(NAMES)) {
    const listed = choicesIn(await run(['--get-config', name]));
    if (control === 'aperture' && listed.length === 0) continue; // a lens with a ring: set it by hand
    const values = new Map();
    for (const label of new Set(frames.map((frame) => String(frame[control])))) {
      const offStops = ({ number }) =>
        Math.abs(Math.log2(number / numberOf(label))) * (control === 'aperture' ? 2 : 1);
      const [nearest] = listed.toSorted((a, b) => offStops(a) - offStops(b));
      // More than half a step of the dial would be another mark.
      if (nearest === undefined || offStops(nearest) > 0.5 / shoot.camera.stepsPerStop) {
        throw new Error(
          `the camera lists no ${control} near ${label}; gphoto2 --get-config ${name} says which`,
        );
      }
      values.set(label, nearest.value);
    }
    marks[name] = (frame) => values.get(String(frame[control]));
  }
  return marks;
}

/** The values that --get-config lists, lines such as "Choice: 4 1/60", without Auto, Bulb and the like. */
export function choicesIn(text) {
  return [...text.matchAll(/^Choice: \d+ (.*)$/gm)]
    .map(([, value]) => ({ value, number: numberOf(value) }))
    .filter(({ number }) => number > 0);
}

/** 1/60, 0.3, 0.3s, 5.6, f/5.6, 2560 as numbers; NaN for words. */
export function numberOf(mark) {
  const [, over, under] = /^(?:f\/)?(\d+(?:\.\d+)?)(?:\/(\d+(?:\.\d+)?))? ?s?$/i.exec(mark) ?? [];
  return Number(over) / Number(under ?? 1);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    if (process.argv.length !== 3) throw new Error('give one plan file: node camera-program.mjs plan.json');
    const read = readPlan(JSON.parse(readFileSync(process.argv[2], 'utf8')));
    if (read.kind === 'wrong') throw new Error(read.errors[0].message);
    if (read.plan.kind === 'infeasible') throw new Error(read.plan.infeasible.text);
    if (Date.parse(read.plan.summary.endAt) < Date.now())
      throw new Error('the last frame of this plan is over');
    console.log(`${await takeFrames(read.plan)} of ${read.plan.summary.frameCount} frames taken.`);
  } catch (error) {
    console.error(error.message);
    process.exitCode = 1;
  }
}
