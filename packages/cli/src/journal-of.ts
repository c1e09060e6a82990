// What a followed evening's journal tells a review: what was metered, and what was on the lens when.

import { readFileSync } from 'node:fs';
import { followLines, type PlanMade, type ReviewOptions, saveFollow } from '@evenfall/core';
import { isJournalOf } from './journal.js';
import { Refusal } from './refusal.js';
import { systemFault } from './system-error.js';

type Known = Pick<ReviewOptions, 'readings' | 'filterLog'>;

/** What following answers to a line, as far as it is asked for here. */
interface Answer {
  readonly at?: string;
  readonly setting?: { readonly filters?: readonly string[] };
  readonly cue?: { readonly changes?: readonly { readonly control?: string }[] };
}

/** @throws Refusal where the journal cannot be read, or is another plan's */
export async function journalOf(path: string | undefined, plan: PlanMade): Promise<Known> {
  if (path === undefined) return {};
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    throw new Refusal([{ kind: 'cannot-read', path, because: systemFault(error) }]);
  }
  const lines = followLines(plan);
  const [header = '', ...said] = text.split('\n').slice(0, -1);
  if (!isJournalOf(header, saveFollow(lines.start.follow).plan)) {
    throw new Refusal([{ kind: 'journal-of-another', path }]);
  }
  let state = lines.start;
  const readings: { atMs: number; ev100: number }[] = [];
  const filterLog: { atMs: number; filters: readonly string[] }[] = [];
  for (const line of said) {
    const step = lines.next(state, line);
    state = step.state;
    const { at, ev100, missed } = groupOf(line);
    if (typeof at === 'string' && typeof ev100 === 'number') readings.push({ atMs: Date.parse(at), ev100 });
    for (const out of step.out) {
      const { at: answeredAt, setting, cue } = groupOf(out) as Answer;
      const filters = setting?.filters;
      if (answeredAt === undefined || filters === undefined) continue;
      // What was told and not done was not on the lens: it is told again, or not any more.
      const isAgain = cue?.changes?.some(({ control }) => control === 'filter') === true;
      const isLast = areSame(filterLog.at(-1)?.filters, filters);
      const isBack = areSame(filterLog.at(-2)?.filters, filters);
      if (missed !== undefined && ((isAgain && isLast) || isBack)) filterLog.pop();
      if (areSame(filterLog.at(-1)?.filters, filters)) continue;
      filterLog.push({ atMs: Date.parse(answeredAt), filters });
    }
  }
  return { readings: readings.filter(({ atMs }) => Number.isFinite(atMs)), filterLog };
}

const areSame = (a: readonly string[] | undefined, b: readonly string[]) => a?.join('\n') === b.join('\n');

function groupOf(line: string): Readonly<Record<string, unknown>> {
  try {
    const value: unknown = JSON.parse(line);
    return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}
