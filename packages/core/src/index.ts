// The whole of core. Each room is also an entry point, `@evenfall/core/ramp` and so on, with nothing else loaded.

export * from './exposure/index.js';
export * from './files/index.js';
export * from './follow/index.js';
export * from './footage/index.js';
export * from './light/index.js';
export * from './move/index.js';
export * from './plan/index.js';
export * from './ramp/index.js';
export * from './review/index.js';
export * from './shoot/index.js';
export * from './sky/index.js';
export * from './words/index.js';
