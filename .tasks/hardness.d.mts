export interface Tally {
  readonly statuses: Readonly<Record<string, number>>;
  readonly kinds: Readonly<Record<string, number>>;
  readonly faults: readonly { readonly index: number; readonly kind: string; readonly text: string }[];
}
export function hardness(options: {
  readonly count: number;
  readonly first?: number;
  readonly seed?: number;
}): Promise<Tally>;
