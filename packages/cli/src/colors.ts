import pc from 'picocolors';
import type { Io } from './io.js';

/** Paints text for a screen, or leaves it as it is. */
export type Colors = Pick<ReturnType<typeof pc.createColors>, 'bold' | 'dim' | 'red' | 'yellow'>;

/** How wide what is printed may be, and how it is painted. */
export interface Screen extends Colors {
  readonly columns: number;
}

export function screenOf({ color, columns }: Pick<Io, 'color' | 'columns'>): Screen {
  return { ...pc.createColors(color), columns };
}
