// The card in plain text, 80 columns at most: for a terminal, a message, a printer that knows no more.

import type { PlanMade } from '@evenfall/core';
import { bracketEnds } from '../text/bracket.js';
import { checkOptions, checkPlan, givenWords } from '../text/given.js';
import { clockText, instantMs, wordsOver } from '../text/local-time.js';
import { moveEnds, moveStarts } from '../text/move.js';
import { noteText } from '../text/sentences.js';
import { controlText, settingText } from '../text/setting.js';
import { english, type Words } from '../text/words.js';
import { type CueFacts, type CueStep, rowFacts, stepText } from './cue-facts.js';
import { cardFacts } from './facts.js';
import type { Mark } from './marks.js';

const COLUMNS = 80;

/**
 * The card in plain text, 80 columns at most: for a terminal, a message, a printer that knows no more.
 *
 * @param plan from `planShoot` or `readPlan`
 * @param options language and clock, from {@link wordsFor}; default English and 24 hours
 * @returns lines that end with a line feed, the last one too
 * @throws RangeError on a plan whose times are none
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { cardText } from '@evenfall/chart';
 *
 * const lines = cardText(plan).split('\n');
 * lines.every((line) => line.length <= 80); // → true
 * ```
 */
export function cardText(plan: PlanMade, options: { readonly words?: Words | undefined } = {}): string {
  checkPlan(plan);
  checkOptions(options, ['words']);
  const words = wordsOver(plan, givenWords(options.words ?? english));
  const facts = cardFacts(plan, words);
  const { card } = words;
  const rows = [...rowFacts(plan, words), ...facts.marks].sort(
    (a, b) => instantMs(rowAt(a)) - instantMs(rowAt(b)),
  );
  const list = (items: readonly string[], mark: string) => items.flatMap((item) => wrapped(item, mark));
  const notes = (isWarning: boolean) =>
    plan.notes
      .filter(({ level }) => (level === 'warning') === isWarning)
      .map((note) => noteText(note, words));
  const [warnings, others] = [notes(true), notes(false)];
  const lines = [
    ...wrapped(facts.title),
    ...wrapped(words.date(plan.shoot.date)),
    ...wrapped(`${facts.place} · ${facts.zone}`),
    '',
    facts.setUpBy,
    ...wrapped(`${facts.startAndEnd} · ${facts.zone}`),
    ...wrapped(facts.length),
    ...wrapped(`${card.firstSetting}: ${settingText(plan.frames[0]!, words)}`),
    ...(facts.bracket === undefined ? [] : wrapped(`${facts.bracket.setTo}. ${facts.bracket.how}`)),
    ...movesText(moveStarts(plan, words)),
    ...warnings.flatMap((text) => ['', ...wrapped(text, '! ')]),
    ...(others.length > 0 ? ['', heading(card.notesTitle), ...list(others, '- ')] : []),
    '',
    heading(card.beforeStarting),
    ...list(facts.checks, '[ ] '),
    ...(facts.events.length > 0 ? ['', heading(card.sky), ...list(facts.events, '- ')] : []),
    '',
    heading(`${card.cueList} (${plan.cues.length})`),
    ...wrapped(facts.howToRead),
    ...rows.flatMap((row, i) => {
      if (!('cue' in row)) return ['', ...markLines(row, facts.withSeconds, words)];
      const above = rows[i - 1];
      const isSecondOfRig = row.byRig && above !== undefined && 'cue' in above && above.byRig;
      return [
        ...(isSecondOfRig ? [] : ['']),
        ...(row.byRig ? rigLines : cueLines)(row, facts.withSeconds, words),
      ];
    }),
    '',
    ...wrapped(`${card.endsOn}: ${settingText(plan.frames.at(-1)!, words)}`),
    ...movesText(moveEnds(plan, words)),
    '',
    heading(card.readings),
    ...wrapped(facts.correction),
    '',
    ...wrapped(facts.evTable.head),
    ...(facts.evTable.filters === '' ? [] : wrapped(facts.evTable.filters)),
    ...wrapped(
      facts.evTable.cells
        .map(({ shutter, ev }) => `${shutter.replace(' ', '\u00a0')}\u00a0=\u00a0${ev}`)
        .join(',  '),
    ),
    '',
    heading(card.missedTitle),
    ...list(card.missed, '- '),
    '',
    heading(card.cautionsTitle),
    ...list(card.cautions, '- '),
  ];
  return `${lines.join('\n')}\n`;
}

// A line for each move, apart from the setting, which may take two lines itself.
function movesText(texts: readonly string[]): string[] {
  return texts.length === 0 ? [] : ['', ...texts.flatMap((text) => wrapped(text))];
}

function heading(text: string): string {
  return `== ${text} ==`;
}

// Where the rig has its shutter:
//     18:42:13  1/60  frame 412  sun −3.2° · EV 8.3
function rigLines({ cue, after, frameNumber }: CueFacts, withSeconds: boolean, words: Words): string[] {
  const { card } = words;
  return wrapped(
    [
      clockText(cue.at, withSeconds, words),
      controlText('shutter', after, words),
      card.frame(String(frameNumber)),
      `${card.sun(words.number(cue.sunAltitudeDeg, 1))} · ${card.ev(words.number(after.sceneEv100, 1))}`,
    ].join('  '),
    '    ',
  );
}

function rowAt(row: CueFacts | Mark): string {
  return 'cue' in row ? row.cue.at : row.at;
}

// What falls between cues, with a box where there is something to do.
function markLines({ at, text, toDo }: Mark, withSeconds: boolean, words: Words): string[] {
  return wrapped(`${clockText(at, withSeconds, words)}  ${text}`, toDo ? '[ ] ' : '    ');
}

// One cue:
// [ ] 18:42:13  cue 7 of 20  +3.3 min  frame 412  sun −3.2° · EV 8.3
//     Shutter 1/60 → 1/50, 1 click
//     = 1/50 · ISO 100 · f/8 · no filter
function cueLines(facts: CueFacts, withSeconds: boolean, words: Words): string[] {
  const { card } = words;
  const number = facts.filterChange && facts.steps.length > 1;
  const ends = bracketEnds(facts.after, words);
  return [
    ...wrapped(
      [
        clockText(facts.cue.at, withSeconds, words),
        card.wholeCueOf(facts.number, facts.cueCount),
        card.minutesAfter(words.number(facts.minutesSince, 1)),
        card.frame(String(facts.frameNumber)),
        `${card.sun(words.number(facts.cue.sunAltitudeDeg, 1))} · ${card.ev(words.number(facts.after.sceneEv100, 1))}`,
      ].join('  '),
      '[ ] ',
    ),
    ...(facts.filterChange ? [`    *** ${card.filterChange} ***`] : []),
    ...facts.steps.flatMap((step, i) =>
      wrapped(withClicks(facts, step, words), `    ${number ? `${i + 1}. ` : ''}`),
    ),
    ...(facts.mayCost === undefined
      ? []
      : wrapped(card.mayCost(facts.mayCost.first, facts.mayCost.last), '    ')),
    ...facts.notes.flatMap((text) => wrapped(text, '    ')),
    ...wrapped([settingText(facts.after, words), ends].filter((text) => text !== '').join(', '), '    = '),
  ];
}

function withClicks({ clicks }: CueFacts, step: CueStep, words: Words): string {
  const text = stepText(step, words);
  return step.kind === 'dial' && clicks[step.control] > 0
    ? `${text}, ${words.card.clicks(clicks[step.control])}`
    : text;
}

// Letters of the East take two columns, marks that combine take none.
const TWO_COLUMNS =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]/u;

function columnsOf(text: string): number {
  let columns = 0;
  for (const char of text) columns += /\p{M}|\p{Cf}/u.test(char) ? 0 : TWO_COLUMNS.test(char) ? 2 : 1;
  return columns;
}

// Later lines stand under the first one's text; a word too long for a line is cut into several.
function wrapped(text: string, mark = ''): string[] {
  const indent = ' '.repeat(mark.length);
  const room = COLUMNS - mark.length;
  const lines: string[] = [];
  let line = '';
  for (const word of text
    .replace(/[\p{Cc}\s]/gu, ' ')
    .split(' ')
    .flatMap((w) => cut(w, room))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (columnsOf(longer) > room) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line].map((l, i) => ((i === 0 ? mark : indent) + l).trimEnd());
}

function cut(word: string, room: number): string[] {
  const pieces = [''];
  for (const char of word) {
    if (columnsOf(pieces.at(-1)! + char) > room) pieces.push(char);
    else pieces.push(pieces.pop()! + char);
  }
  return pieces;
}
