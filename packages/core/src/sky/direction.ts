/** The way the light goes: day to night, or night to day. */
export type Direction = 'dusk' | 'dawn';
