// A camera and a clock to try a rig's loop on, indoors and before the evening comes.

import { setTimeout as sleep } from 'node:timers/promises';

/**
 * A clock that reaches any time so many times sooner; between its waits it stands still.
 *
 * @param {number} startMs what it shows at first, UTC epoch milliseconds
 */
export function fastClock(startMs, speed = 1000) {
  let nowMs = startMs;
  return {
    nowMs: () => nowMs,
    /** @param {number} atMs */
    async until(atMs) {
      if (atMs <= nowMs) return;
      await sleep((atMs - nowMs) / speed);
      nowMs = atMs;
    },
  };
}

/** The clock of a real evening. */
export const realClock = {
  nowMs: () => Date.now(),
  /** @param {number} atMs */
  until: (atMs) => sleep(Math.max(0, atMs - Date.now())),
};

/**
 * A camera that takes its time as a real one does. Its frames are evenly lit: metered they come out at 18 % grey, and
 * white at 2.5 stops more.
 *
 * @param {typeof realClock} clock
 * @param {(atMs: number) => number} sceneEv100At what a meter would read off the scene, EV at ISO 100, at a time in UTC epoch milliseconds
 */
export function simulatedCamera(clock, sceneEv100At, { setS = 0.2, writeS = 0.5 } = {}) {
  let standsAt;
  const taken = [];
  const wait = (seconds) => clock.until(clock.nowMs() + seconds * 1000);
  return {
    taken, // a row a frame
    async set(setting) {
      await wait(setS);
      standsAt = setting;
    },
    /** One frame; its mean level in linear light, 0 to 1. */
    async expose(shutterS) {
      const startMs = clock.nowMs();
      await wait(shutterS);
      const endMs = clock.nowMs();
      await wait(writeS);
      taken.push({ ...standsAt, startMs, endMs, readyMs: clock.nowMs() });
      return { mean: Math.min(1, 0.18 * 2 ** (sceneEv100At(startMs) - standsAt.settingEv100)) };
    },
  };
}
