export interface Packed {
  readonly name: string;
  readonly version: string;
  readonly file: string;
  readonly paths: readonly string[];
}
export const PACKAGES: readonly string[];
export function packInto(folder: string): Packed[];
