// Colours on a screen.

import type { Io } from './io.js';

/** Paints text for a screen, or leaves it as it is. */
export type Colors = Readonly<Record<'bold' | 'dim' | 'red' | 'yellow', (text: string) => string>>;

/** How wide what is printed may be, and how it is painted. */
export interface Screen extends Colors {
  readonly columns: number;
}

const PLAIN: Colors = { bold: String, dim: String, red: String, yellow: String };

/** The library asks for node's streams as it is loaded, so that it is where somebody watches. */
export async function colorsOf(color: boolean): Promise<Colors> {
  return color ? (await import('picocolors')).default.createColors(true) : PLAIN;
}

export async function screenOf({ color, columns }: Pick<Io, 'color' | 'columns'>): Promise<Screen> {
  return { ...(await colorsOf(color)), columns };
}
