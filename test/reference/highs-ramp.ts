// The same optimum as a mixed-integer programme for HiGHS: one unit of flow from the first frame to the last. Nodes
// are judged frames at a setting within tolerance; a filter change is one arc over the frames it may spoil, so rules
// 2 and 4 are in the network. Cue spacing and the limit on filter changes are rows across it, which is what makes it
// a programme in whole numbers rather than a shortest path.

import { createRequire } from 'node:module';
import type { RampProblem } from '../../packages/core/src/ramp/problem.js';
import { rulesOf } from './kit-settings.js';
import type { RampSetting } from './ramp-cost.js';

export type HighsRamp =
  | { readonly kind: 'ok'; readonly objective: number; readonly frames: RampSetting[] }
  | { readonly kind: 'infeasible' };

/** A move from one judged frame to the next; columns `y` and `z` of the programme are named by position. */
interface Arc {
  readonly name: string;
  readonly cost: number;
  readonly cueFrame: number | undefined; // where it changes something
  readonly filter: boolean;
  readonly from: string;
  readonly to: string;
  readonly settings: RampSetting[]; // of the frames it enters, the judged one last
}

// The package's types describe its CommonJS build, not the module that `import` would give.
const { default: highsLoader } = createRequire(import.meta.url)('highs') as typeof import('highs');
type Highs = Awaited<ReturnType<typeof highsLoader>>;

/** Solves with a HiGHS loaded once by {@link loadSolver}. Throws unless it ends optimal or infeasible. */
export function highsRamp(highs: Highs, problem: RampProblem): HighsRamp {
  const { text, nodes, arcs } = programmeOf(problem);
  const solution = highs.solve(text, {
    output_flag: false,
    mip_rel_gap: 0,
    mip_abs_gap: 1e-9,
    // Left at 1e-6 and 1e-7 a sum of slightly broken rows could cost more than the 1e-6 that objectives may differ.
    primal_feasibility_tolerance: 1e-9,
    mip_feasibility_tolerance: 1e-9,
  });
  if (solution.Status === 'Infeasible') return { kind: 'infeasible' };
  if (solution.Status !== 'Optimal') throw new Error(`HiGHS ended with ${solution.Status}`);

  // Columns of a MIP and of an LP differ in type, both have Primal.
  const taken = (name: string) => Number(solution.Columns[name]?.Primal ?? 0) > 0.5;
  const frames: RampSetting[] = [];
  let at = [...nodes.values()].find(({ name, frame }) => frame === 0 && taken(name))!;
  frames.push(at.setting);
  while (frames.length < problem.targetEv100.length) {
    const arc = arcs.find(({ name, from }) => from === at.name && taken(name))!;
    frames.push(...arc.settings);
    at = nodes.get(arc.to)!;
  }
  return { kind: 'ok', objective: solution.ObjectiveValue, frames };
}

/** HiGHS takes some 70 ms to load: once a test file is enough. */
export function loadSolver(): Promise<Highs> {
  return highsLoader();
}

function programmeOf(problem: RampProblem) {
  const rules = rulesOf(problem);
  const { frameCount, choices, lost, spacing, maxFilterChanges } = rules;

  const nodes = new Map<string, { name: string; frame: number; cost: number; setting: RampSetting }>();
  const judged = Array.from({ length: frameCount }, (_, frame) =>
    choices.flatMap((choice, s) => {
      if (!rules.withinTolerance(frame, choice) || (frame === 0 && !rules.mayStart(choice))) return [];
      const name = `y_${frame}_${s}`;
      const cost = rules.frameCost(frame, choice);
      nodes.set(name, { name, frame, cost, setting: rules.settingAt(frame, choice) });
      return [{ name, choice }];
    }),
  );

  const arcs: Arc[] = [];
  for (let i = 1; i < frameCount; i++) {
    for (const { name: from, choice: a } of judged[i - 1]!) {
      for (const { name: to, choice: b } of judged[i]!) {
        const move = rules.move(i, a, b);
        if (move === undefined || move.kind === 'filter') continue;
        const cueFrame = move.kind === 'turn' ? i : undefined;
        const settings = [rules.settingAt(i, b)];
        arcs.push({ name: `z_${arcs.length}`, cost: move.cost, cueFrame, filter: false, from, to, settings });
      }
      for (const { name: to, choice: b } of judged[i + lost] ?? []) {
        const move = rules.move(i, a, b);
        if (move?.kind !== 'filter') continue;
        const cost = move.cost + lost * rules.affectedCost;
        const settings = Array.from({ length: lost + 1 }, (_, k) => rules.settingAt(i + k, b));
        arcs.push({ name: `z_${arcs.length}`, cost, cueFrame: i, filter: true, from, to, settings });
      }
    }
  }

  const rows: string[] = [];
  // An infeasible programme must still have a row that says so: `never` is 0.
  rows.push(`${sum(judged[0]!.map(({ name }) => name))} + never = 1`);
  const inward = namesBy(arcs, 'to');
  const outward = namesBy(arcs, 'from');
  for (const { name, frame } of nodes.values()) {
    if (frame > 0) rows.push(`${sum(inward.get(name) ?? [])} - ${name} = 0`);
    if (frame < frameCount - 1) rows.push(`${sum(outward.get(name) ?? [])} - ${name} = 0`);
  }
  for (let first = 1; first === 1 || first + spacing <= frameCount; first++) {
    const cues = arcs.filter(({ cueFrame: f }) => f !== undefined && f >= first && f < first + spacing);
    if (spacing > 1 && cues.length > 0) rows.push(`${sum(cues.map(({ name }) => name))} <= 1`);
  }
  const filterArcs = arcs.filter(({ filter }) => filter);
  if (Number.isFinite(maxFilterChanges) && filterArcs.length > 0) {
    rows.push(`${sum(filterArcs.map(({ name }) => name))} <= ${maxFilterChanges}`);
  }

  // With whole nodes the arcs are whole by themselves: no two arcs join the same two nodes.
  const columns = [...nodes.values(), ...arcs];
  const objective = columns.map(({ name, cost }) => `${cost} ${name}`);
  const text = [
    'Minimize',
    ` cost: ${sum([...objective, '0 never'])}`,
    'Subject To',
    ...rows.map((row, r) => ` row_${r}: ${row}`),
    'Bounds',
    ' never = 0',
    ...arcs.map(({ name }) => ` ${name} <= 1`),
    'Binary',
    ...[...nodes.keys()].map((name) => ` ${name}`),
    'End',
  ].join('\n');
  return { text, nodes, arcs };
}

function namesBy(arcs: readonly Arc[], end: 'from' | 'to'): Map<string, string[]> {
  const names = new Map<string, string[]>();
  for (const arc of arcs) {
    const known = names.get(arc[end]);
    if (known === undefined) names.set(arc[end], [arc.name]);
    else known.push(arc.name);
  }
  return names;
}

/** Terms of a row, broken into lines: the format limits a line's length. Of no terms, a zero. */
function sum(terms: readonly string[]): string {
  return terms.length === 0 ? '0 never' : terms.join('\n  + ');
}
