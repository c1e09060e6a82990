/** A moment of the light: a frame of a plan or a row of a light table. */
export interface LitMoment {
  readonly at: string;
  readonly sunAltitudeDeg: number;
  readonly sceneEv100: number;
}

/** Where the light changes fastest. */
export interface Steepest {
  readonly at: string; // start of the minute
  readonly sunAltitudeDeg: number; // at that time
  readonly evPerMin: number; // negative where it falls
}

/** The steepest minute of a scene's light; undefined for a single moment. A shorter span counts whole. */
export function steepestMinute(moments: readonly LitMoment[], intervalS: number): Steepest | undefined {
  const ahead = Math.min(moments.length - 1, Math.max(1, Math.round(60 / intervalS)));
  let steepest: Steepest | undefined;
  for (let i = 0; ahead > 0 && i + ahead < moments.length; i++) {
    const { at, sunAltitudeDeg, sceneEv100 } = moments[i]!;
    const evPerMin = ((moments[i + ahead]!.sceneEv100 - sceneEv100) * 60) / (ahead * intervalS);
    if (steepest === undefined || Math.abs(evPerMin) > Math.abs(steepest.evPerMin)) {
      steepest = { at, sunAltitudeDeg, evPerMin };
    }
  }
  return steepest;
}
