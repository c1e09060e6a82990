import type { PlanMade, ReadingEntry } from '@evenfall/core';

/** Why a reading was not used, as the plan's notes tell it; undefined where it was. */
export function refusalOf({ notes }: PlanMade, { ev100 }: ReadingEntry): string | undefined {
  return notes.find(({ text }) => text.startsWith(`The reading of EV ${ev100} was not used`))?.text;
}
