type Core = typeof import('../packages/core/src/index.js');
type Light = import('../packages/core/src/plan/types.js').LightRow;

export const EXAMPLES: readonly string[];
export interface ExampleFacts {
  readonly name: string;
  readonly plan: import('../packages/core/src/plan/types.js').PlanMade;
  readonly rows: readonly Light[];
  readonly steepest: Light;
  readonly sunset: Light;
  readonly settled?: Light; // from here on less than 0.05 EV a minute
}
export function exampleFacts(core: Core, name: string): ExampleFacts;
export function examplesTable(core: Core): string;
export function writtenExamples(): string;
