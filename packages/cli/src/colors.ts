import type pc from 'picocolors';

/** Paints text for a screen, or leaves it as it is. */
export type Colors = Pick<ReturnType<typeof pc.createColors>, 'bold' | 'dim' | 'red' | 'yellow'>;
