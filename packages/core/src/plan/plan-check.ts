// What a plan must be to be followed or reviewed: what planShoot and readPlan give.

import { aNumber, either, flag, groupWith, hold, isGroup, listOf, oneOf, text, wholeFrom } from '../hold.js';
import { checkShoot } from '../shoot/shoot-check.js';
import type { Plan, PlanMade } from './types.js';

const format = oneOf(['evenfall-plan/1']);

const frame = groupWith({
  at: text,
  sunAltitudeDeg: aNumber,
  sceneEv100: aNumber,
  lowEv100: aNumber,
  highEv100: aNumber,
  targetEv100: aNumber,
  shutter: text,
  iso: aNumber,
  aperture: text,
  filters: listOf(text),
  settingEv100: aNumber,
  errorEv: aNumber,
  affected: flag,
});

const kind = oneOf(['ok', 'infeasible']);

const plan = either((value) =>
  isGroup(value) && value.kind === 'infeasible'
    ? groupWith({ format, infeasible: groupWith({ reason: text, text }) })
    : groupWith({
        format,
        kind,
        summary: groupWith({ rmsErrorEv: aNumber }),
        frames: listOf(frame, 1),
        cues: listOf(groupWith({ frame: wholeFrom(1, 1e6), at: text })),
      }),
);

/** @throws RangeError as {@link checkPlan}, and where there is no plan */
export function checkMade(value: PlanMade): void {
  checkPlan(value);
  if ((value as Plan).kind !== 'ok')
    throw new RangeError('plan must be one that can be shot, got one that is infeasible');
}

/** @throws RangeError naming the place, the rule and the value of what no plan has */
export function checkPlan(value: Plan): void {
  hold('plan', value, plan);
  checkShoot(value.shoot, 'plan.shoot');
  if (value.kind === 'infeasible') return;
  const late = value.cues.findIndex(({ frame }) => frame >= value.frames.length);
  if (late >= 0) {
    throw new RangeError(
      `plan.cues[${late}].frame must be one of the plan's ${value.frames.length} frames, got ${value.cues[late]?.frame}`,
    );
  }
}
