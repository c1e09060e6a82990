// What a followed evening's journal tells a review: what was metered, and what was on the lens when.

import { readFileSync } from 'node:fs';
import { followLines, type PlanMade, type ReviewOptions } from '@evenfall/core';
import { Refusal } from './refusal.js';
import { systemFault } from './system-error.js';

type Known = Pick<ReviewOptions, 'readings' | 'filterLog'>;

/** What following answers to a line, as far as it is asked for here. */
interface Answer {
  readonly at?: string;
  readonly setting?: { readonly filters?: readonly string[] };
}

/** @throws Refusal where the journal cannot be read */
export async function journalOf(path: string | undefined, plan: PlanMade): Promise<Known> {
  if (path === undefined) return {};
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    throw new Refusal([{ kind: 'cannot-read', path, because: systemFault(error) }]);
  }
  const lines = followLines(plan);
  let state = lines.start;
  const readings: { atMs: number; ev100: number }[] = [];
  const filterLog: { atMs: number; filters: readonly string[] }[] = [];
  for (const line of text.split('\n').slice(1, -1)) {
    const step = lines.next(state, line);
    state = step.state;
    const { at, ev100 } = groupOf(line);
    if (typeof at === 'string' && typeof ev100 === 'number') readings.push({ atMs: Date.parse(at), ev100 });
    for (const out of step.out) {
      const { at: answeredAt, setting } = groupOf(out) as Answer;
      const filters = setting?.filters;
      if (answeredAt === undefined || filters === undefined) continue;
      const last = filterLog.at(-1);
      if (last !== undefined && last.filters.join('\n') === filters.join('\n')) continue;
      filterLog.push({ atMs: Date.parse(answeredAt), filters });
    }
  }
  return { readings: readings.filter(({ atMs }) => Number.isFinite(atMs)), filterLog };
}

function groupOf(line: string): Readonly<Record<string, unknown>> {
  try {
    const value: unknown = JSON.parse(line);
    return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}
