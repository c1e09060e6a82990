/**
 * What the photographer decides, and what of it can be said before any light is known.
 *
 * @module @evenfall/core/shoot
 */

export { framesLostByDefault } from './frames-lost.js';
export { type NamedKit, type Setting, settingOf } from './kit.js';
export { shootOnDate } from './on-date.js';
export type { Camera, ReadingEntry, Shoot, Span } from './shoot.js';
export { type ShootSpan, shootSpan } from './span.js';
export { shootGap } from './time-left.js';
