// Where a shoot's lens points: what its scene says is where it starts, and a pan by the compass says it itself.

import type { SceneWords } from '../light/scene-words.js';
import { pointing } from '../move/pointing.js';
import type { SkyView } from '../move/sky-view.js';
import type { Shoot } from './shoot.js';
import { shootSpan } from './span.js';
import { shootTravels } from './time-left.js';

/** The scene at the first frame: a pan from a bearing starts there, whatever `facing` is left at. */
export function sceneAtStart({ scene, moves }: Pick<Shoot, 'scene' | 'moves'>): SceneWords {
  const bearing = moves.flatMap(({ by }) => ('fromBearingDeg' in by ? [by.fromBearingDeg] : []))[0];
  return bearing === undefined ? scene : { ...scene, facing: { azimuthDeg: bearing } };
}

/**
 * Where the lens points at a time, UTC epoch milliseconds: before the first frame where it starts, after the last
 * where it ends; undefined where it does not turn.
 *
 * @param start where it points at the first frame
 */
export function shootPointing(shoot: Shoot, start: SkyView): ((atMs: number) => SkyView) | undefined {
  const turns = shootTravels(shoot).filter(({ axis }) => axis !== 'slide');
  const span = turns.length === 0 ? undefined : shootSpan(shoot);
  if (span?.kind !== 'ok') return undefined;
  const viewAt = pointing(start, turns, span.times.length);
  return (atMs) => viewAt((atMs - span.times[0]!) / (1000 * shoot.intervalS));
}
