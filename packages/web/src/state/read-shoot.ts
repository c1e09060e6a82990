// A part of its own, for reader.ts to ask for.

export { readShoot } from '@evenfall/core';
