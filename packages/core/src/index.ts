// The whole of core. Each stage is also its own way in, `@evenfall/core/ramp` and so on, with nothing else loaded.

export * from './stage/clock.js';
export * from './stage/cues.js';
export * from './stage/dial.js';
export * from './stage/files.js';
export * from './stage/follow.js';
export * from './stage/footage.js';
export * from './stage/light.js';
export * from './stage/move.js';
export * from './stage/plan.js';
export * from './stage/ramp.js';
export * from './stage/sun.js';
