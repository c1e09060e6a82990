// The interval, wherever it is set.

import { framesLostByDefault } from '@evenfall/core';
import { putAll, shoot } from '../state/shoot.js';

/** The frames that a filter change may spoil go along with the interval, unless they are the photographer's own. */
export function putInterval(intervalS: unknown): void {
  const { limits, intervalS: was } = shoot.peek();
  const own = limits.framesLostPerFilterChange !== framesLostByDefault(was);
  putAll([
    [['intervalS'], intervalS],
    ...(own ? [] : [[['limits', 'framesLostPerFilterChange'], undefined] as const]),
  ]);
}
