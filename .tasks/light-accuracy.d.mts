type Core = typeof import('../packages/core/src/exposure/exposure.js') &
  typeof import('../packages/core/src/light/sunlight.js') &
  typeof import('../packages/core/src/light/sky.js') &
  typeof import('../packages/core/src/light/moon.js') &
  typeof import('../packages/core/src/light/night.js') &
  typeof import('../packages/core/src/light/scene.js') &
  typeof import('../packages/core/src/light/upright.js') &
  typeof import('../packages/core/src/light/words.js');

export interface Comparison {
  readonly part: string;
  readonly against: string;
  readonly limitEv?: number; // what the tests hold it to; absent where shown only
  readonly label: string;
  readonly stops: number; // the model's value over the reference's
}

export function readRows(name: string): Record<string, string>[];
export function domeOfModel(light: Core, sunAltitudeDeg: number): number;
export function comparisons(light: Core): Comparison[];
export function accuracyTable(light: Core): string;
export function writtenTable(): string;
