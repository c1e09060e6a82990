// What a calendar's events say: short enough to be read on a locked telephone.

import type { CalendarTexts, PlanMade } from '@evenfall/core';
import { type CueFacts, cueFacts, stepText } from '../card/cue-facts.js';
import { checkPlan, givenWords } from './given.js';
import { clockText, wordsOver } from './local-time.js';
import { settingText } from './setting.js';
import type { Words } from './words.js';

/**
 * The texts of a plan's calendar, for `writeCalendar` of `@evenfall/core`. Short enough to be read on a
 * locked telephone.
 *
 * @param plan from `planShoot` or `readPlan`
 * @param inWords language and clock, from {@link wordsFor}
 * @returns one text for set-up, one a cue, and one for the end
 * @throws RangeError on a plan whose times are none
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { calendarTexts, english, wordsFor } from '@evenfall/chart';
 *
 * calendarTexts(plan, english).setUp.summary; // → 'Be set up'
 * calendarTexts(plan, wordsFor({ language: 'de' })).cues.length; // → plan.cues.length
 * ```
 */
export function calendarTexts(plan: PlanMade, inWords: Words): CalendarTexts {
  checkPlan(plan);
  const words = wordsOver(plan, givenWords(inWords));
  const { calendar, card } = words;
  const { shoot, summary, frames } = plan;
  const lead = shoot.title === '' ? [] : [shoot.title];
  const first = `${card.firstSetting}: ${settingText(frames[0]!, words)}`;
  return {
    language: words.language,
    setUp: {
      summary: calendar.setUp,
      description: [...lead, calendar.setUpFor(clockText(summary.startAt, true, words)), first].join('\n'),
    },
    end: {
      summary: calendar.end,
      description: [
        ...lead,
        calendar.endAt(clockText(summary.endAt, true, words)),
        card.frame(String(summary.frameCount)),
      ].join('\n'),
    },
    cues: cueFacts(plan, words).map((facts) => ({
      summary: summaryText(facts, words),
      description: [
        ...lead,
        card.frame(String(facts.frameNumber)),
        ...(facts.mayCost === undefined ? [] : [card.mayCost(facts.mayCost.first, facts.mayCost.last)]),
        ...facts.notes,
        calendar.after(settingText(facts.after, words)),
      ].join('\n'),
    })),
  };
}

function summaryText({ steps, filterChange }: CueFacts, words: Words): string {
  const text = steps.map((step) => stepText(step, words)).join(', ');
  return filterChange ? words.calendar.filterChange(text) : text;
}
