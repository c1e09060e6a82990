export interface Licensed {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  readonly text?: string;
  readonly users: readonly string[];
}
export const PAGE: string;
export function runtimeLicences(): Licensed[];
export function licencePage(): string;
