// The weights of a shoot: which hold, and putting others in.

import { type RampWeights, rampWeights, type Shoot } from '@evenfall/core';

/** Every weight that holds for a shoot. */
export const weightsOf = ({ crew, weights }: Shoot): RampWeights => ({
  ...rampWeights(crew),
  ...(weights as Partial<RampWeights>), // of a shoot that was read none is undefined
});

const names = (weights: RampWeights) => Object.keys(weights) as (keyof RampWeights)[];

export const sameWeights = (a: RampWeights, b: RampWeights) => names(a).every((name) => a[name] === b[name]);

/** The shoot with these weights: those that are the default anyway are left out. */
export function withWeights({ weights: _, ...shoot }: Shoot, wanted: RampWeights): Shoot {
  const usual = rampWeights(shoot.crew);
  const own = names(wanted).filter((name) => wanted[name] !== usual[name]);
  if (own.length === 0) return shoot;
  return { ...shoot, weights: Object.fromEntries(own.map((name) => [name, wanted[name]])) };
}

/** Whether two shoots differ in nothing but their weights, and their title. */
export function alike(a: Shoot, b: Shoot): boolean {
  return keyOf(a) === keyOf(b);
}

const keyOf = ({ weights: _, title: __, ...shoot }: Shoot) =>
  JSON.stringify(Object.entries(shoot).sort(([a], [b]) => (a < b ? -1 : 1)));
