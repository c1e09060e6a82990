// By how much each frame is to be brightened: what its setting lacks of the target, within the largest correction.

/** What a frame was exposed for, and what it should have been. */
export interface Wanted {
  readonly settingEv100: number;
  readonly targetEv100: number;
  /** By how much it is brighter than its setting makes it. */
  readonly flickerEv: number;
  /** Whether it may stand in for another. */
  readonly isGood: boolean;
  /** Whether another is to stand in for it. */
  readonly replace: boolean;
}

/** The offset of one frame. */
export interface Offset {
  readonly offsetEv: number;
  readonly flickerEv: number;
  /** What the largest correction leaves. */
  readonly beyondEv: number;
  /** The shot that is shown in its place. */
  readonly shownShot?: number;
}

/**
 * Offsets of frames in order: setting - target - flicker, clamped.
 *
 * @param mostEv largest correction, > 0
 */
export function offsetsOf(wanted: readonly Wanted[], mostEv: number) {
  const good = wanted.flatMap(({ isGood }, i) => (isGood ? [i] : []));
  const frames = wanted.map(({ targetEv100, replace }, i): Offset => {
    const shown = replace ? nearest(good, i) : undefined;
    const { settingEv100, flickerEv } = wanted[shown ?? i]!;
    const wholeEv = settingEv100 - targetEv100 - flickerEv;
    const offsetEv = Math.min(mostEv, Math.max(-mostEv, wholeEv)) + 0;
    return {
      offsetEv,
      flickerEv,
      beyondEv: wholeEv - offsetEv,
      ...(shown === undefined ? {} : { shownShot: shown }),
    };
  });
  const before = wanted.map(({ settingEv100, targetEv100 }) => settingEv100 - targetEv100);
  const after = frames.map(({ beyondEv }) => beyondEv);
  return {
    frames,
    summary: {
      rmsErrorEv: Math.sqrt(before.reduce((sum, ev) => sum + ev * ev, 0) / before.length),
      largestOffsetEv: frames.reduce((most, { offsetEv }) => Math.max(most, Math.abs(offsetEv)), 0),
      stepBeforeEv: largestStep(before),
      stepAfterEv: largestStep(after),
    },
  };
}

function largestStep(errors: readonly number[]): number {
  return errors.reduce((most, ev, i) => (i === 0 ? most : Math.max(most, Math.abs(ev - errors[i - 1]!))), 0);
}

function nearest(indices: readonly number[], index: number): number | undefined {
  let best: number | undefined;
  for (const each of indices) {
    if (best === undefined || Math.abs(each - index) < Math.abs(best - index)) best = each;
  }
  return best;
}
