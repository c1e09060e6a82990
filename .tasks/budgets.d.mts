export interface Size {
  readonly what: string;
  readonly kB: number; // at most
  readonly sizeKB: number;
}
export const DOC: string;
export const OPEN: string;
export const CLOSE: string;
export function measured(): Promise<Size[]>;
export function budgetTable(): string;
export function reportOf(sizes: readonly Size[]): string;
