// A plan for a person to read: what to bring, when to be there, what to turn when.

import {
  cueNoteText,
  labelText,
  noteText,
  placeTexts,
  reasonText,
  remedyText,
  reserveText,
  settingText,
  shutterEnds,
} from '@evenfall/chart';
import {
  changesByClock,
  framesHeld,
  type PlanInfeasible,
  type PlanMade,
  type PlanNote,
  type Remedy,
  steepestMinute,
} from '@evenfall/core';
import type { Screen } from './colors.js';
import { hanging, linesOf } from './layout.js';
import { moveFacts } from './move-facts.js';
import { changesText, headingLines, shortSettingText, wordsOver } from './wording.js';
import type { CommandWords } from './words/words.js';

const HOUR_MS = 3_600_000;
const LEAD = 15;
const COMMAND_LEAD = 18;
/** Below so many columns a cue takes two lines. */
const NARROW = 70;

/** Commands to go on with, each with what it is for. */
export type Next = readonly (readonly [what: string, command: string])[];

/** The whole plan as text, with what to go on with. */
export function planText(plan: PlanMade, next: Next, inWords: CommandWords, screen: Screen): string {
  const words = wordsOver(plan, inWords);
  const lines = [
    ...headingLines(plan.shoot, words.card.untitled, words, screen),
    ...noteLines(plan, words, screen, ['warning']),
    '',
    ...factLines(plan, words, screen),
    '',
    ...cueLines(plan, words, screen),
    ...noteLines(plan, words, screen, ['caution', 'info']),
    ...nextLines(next, words, screen),
  ];
  return `${lines.join('\n')}\n`;
}

function nextLines(next: Next, { plan: w }: CommandWords, { bold, columns }: Screen): string[] {
  if (next.length === 0) return [];
  // A command stays on one line: broken in two it could not be pasted.
  const lines = next.map(([what, command]) => {
    const line = `  ${what.padEnd(COMMAND_LEAD)}${command}`;
    return line.length <= columns ? line : `  ${what}\n    ${command}`;
  });
  return ['', bold(w.next), ...lines];
}

function factLines(plan: PlanMade, words: CommandWords, screen: Screen): string[] {
  const { shoot, summary, frames } = plan;
  const w = words.plan;
  const { clock } = words.card;
  const fact = (name: string, text: string) => hanging(name.padEnd(LEAD), text, screen.columns);
  const steepest = steepestMinute(frames, shoot.intervalS);
  const speed = steepest ? `; ${w.fastest(clock(steepest.at, true), Math.abs(steepest.evPerMin))}` : '';
  const light = {
    fromEv: summary.sceneFromEv100,
    toEv: summary.sceneToEv100,
    stops: summary.rampStops,
  };
  const reserve = {
    darkEv: summary.reserveDarkEv,
    brightEv: summary.reserveBrightEv,
    // No forecast is sure enough to say all of them.
    percent: 100 * summary.eveningsHeldShare,
    dawn: shoot.direction === 'dawn',
  };
  return [
    fact(w.setUpBy, clock(summary.setUpAt)),
    fact(
      w.startEnd,
      `${words.range(clock(summary.startAt, true), clock(summary.endAt, true))}, ${placeTexts(shoot.place, words.card)[2]}`,
    ),
    fact(w.frames, w.framesText(summary.frameCount, shoot.intervalS, summary.clipS, shoot.clipFps)),
    ...bracketFacts(plan, words).map((text) => fact(w.bracket, text)),
    ...supplyFacts(plan, words, screen).map(([name, text]) => fact(name, text)),
    fact(w.light, `${w.lightText(light)}${speed}`),
    ...eventFacts(plan, words).map((text) => fact(w.sky, text)),
    fact(w.firstSetting, settingText(frames[0]!, words.card, ', ')),
    ...moveFacts(plan, words).map(([name, text]) => fact(name, text)),
    fact(w.offBy, w.offByText(summary.worstErrorEv, summary.rmsErrorEv)),
    fact(w.reserve, w.reserveText(reserve)),
  ];
}

/** What every frame is, from its shortest exposure by day to its longest at night; none without a bracket. */
function bracketFacts({ notes, frames }: PlanMade, { plan: w, card }: CommandWords): string[] {
  const mark = (label: string) => labelText('shutter', label, card);
  const byTime = [...frames].sort((a, b) => a.shutterS - b.shutterS);
  const { bracketShortest: shortest } = byTime[0]!;
  const { bracketLongest: longest } = byTime.at(-1)!;
  if (shortest === undefined || longest === undefined) return [];
  return notes.flatMap((note) =>
    note.kind === 'bracket'
      ? [
          w.bracketText({
            ...note,
            stops: card.upTo(note.stepEv, 2),
            shortest: mark(shortest),
            longest: mark(longest),
          }),
        ]
      : [],
  );
}

function supplyFacts(
  { shoot, summary }: PlanMade,
  { plan: w, card: { clock } }: CommandWords,
  screen: Screen,
) {
  const facts: [string, string][] = [];
  const verdict = (supply: 'card' | 'battery', fits: boolean, at?: string) => {
    const when = at === undefined ? '' : `, ${w.outAt[supply](clock(at))}`;
    return fits ? '' : `: ${screen.red(`${w.notEnough[supply]}${when}`)}`;
  };
  const { cardNeededGB, cardFits, batteryFits, frameCount, cardFullAt, batteryOutAt } = summary;
  const { onCard = 0, onCharge = 0 } = framesHeld(shoot.camera);
  if (cardNeededGB !== undefined) {
    const { cardGB } = shoot.camera;
    const text = w.cardText({
      neededGB: cardNeededGB,
      ...(cardGB === undefined ? {} : { cardGB, holds: onCard }),
    });
    facts.push([w.card, `${text}${verdict('card', cardFits !== false, cardFullAt)}`]);
  }
  if (batteryFits !== undefined) {
    const { coldFactor = 1 } = shoot.camera;
    const text = w.batteryText({ frameCount, holds: onCharge, cold: coldFactor < 1 });
    facts.push([w.battery, `${text}${verdict('battery', batteryFits, batteryOutAt)}`]);
  }
  return facts;
}

/** Events from an hour before the start to an hour after the end, in one line of text; none where there are none. */
function eventFacts({ events, summary }: PlanMade, { card }: CommandWords): string[] {
  const from = Date.parse(summary.startAt) - HOUR_MS;
  const to = Date.parse(summary.endAt) + HOUR_MS;
  const near = events
    .filter(({ at }) => Date.parse(at) >= from && Date.parse(at) <= to)
    .map(({ name, at }) => `${card.events[name]} ${card.clock(at)}`);
  return near.length === 0 ? [] : [near.join(', ')];
}

function cueLines(plan: PlanMade, words: CommandWords, screen: Screen): string[] {
  const { shoot, cues, frames, summary, shutterTimes = [] } = plan;
  const changes = changesByClock(plan);
  const clocks = changes.map(({ at }) => words.card.clock(at, true));
  const clockWidth = clocks.reduce((most, text) => Math.max(most, text.length), 0);
  const w = words.plan;
  const rig = shoot.camera.bulb ? rigLines(plan, words, screen) : [];
  if (changes.length === 0) {
    return rig.length > 0 ? rig : [screen.bold(w.noCues), `  ${w.leaveAlone}`];
  }
  const rows = changes.map((cue, i) => {
    const minutes = (Date.parse(cue.at) - Date.parse(changes[i - 1]?.at ?? summary.startAt)) / 60_000;
    return { cue, minutes: `+${words.fixed(minutes)}`, change: changesText(cue, words.card) };
  });
  // Long filter names may push the setting to a line of its own, but not all rows' column aside.
  const isNarrow = screen.columns < NARROW;
  const widest = isNarrow ? 0 : 26;
  const width = Math.max(...rows.map(({ change }) => (change.length <= widest ? change.length : 0)), 6);
  const before = (clockText: string, minutes: string, frame: string) =>
    `${clockText.padEnd(clockWidth)}  ${minutes.padStart(5)}  ${frame.padStart(5)}  `;
  return [
    ...(rig.length > 0
      ? rig
      : linesOf(w.cuesTitle(cues.length), screen.columns).map((line) => screen.bold(line))),
    screen.dim(
      `${before(w.columns.clock, w.columns.minutes, w.columns.frame)}${w.columns.change.padEnd(width)}${isNarrow ? '' : `  ${w.columns.after}`}`,
    ),
    ...rows.map(({ cue, minutes, change }, i) => {
      // People count frames from 1.
      const lead = before(clocks[i]!, minutes, String(cue.frame + 1));
      const then = shortSettingText(frames[cue.frame]!);
      const line = `${lead}${change.padEnd(width)}  ${then}`;
      const under = `${' '.repeat(lead.length)}  `;
      const more = (cue.notes ?? []).map(
        (note) => `\n${hanging(under, cueNoteText(note, words.card), screen.columns)}`,
      );
      const text =
        line.length <= screen.columns
          ? line
          : `${hanging(lead, change, screen.columns)}\n${hanging(`${under}${w.columns.after} `, then, screen.columns)}`;
      return shutterTimes.includes(cue) ? screen.dim(text) : [text, ...more].join('');
    }),
  ];
}

/** What a rig that times the shutter freely does by itself, and how many cues are left for a person. */
function rigLines({ cues, frames }: PlanMade, { plan: w }: CommandWords, screen: Screen): string[] {
  const [shortest, longest] = shutterEnds(frames);
  return [
    ...linesOf(w.rigTitle(shortest, longest, cues.length), screen.columns).map((line) => screen.bold(line)),
    ...linesOf(w.rigRows, screen.columns),
  ];
}

function noteLines(
  { notes }: PlanMade,
  { plan: w, card }: CommandWords,
  screen: Screen,
  levels: readonly PlanNote['level'][],
): string[] {
  const told = notes.filter(({ level }) => levels.includes(level));
  if (told.length === 0) return [];
  const paint = { info: screen.dim, caution: screen.yellow, warning: screen.red };
  const lines = told.map((note) => {
    const lead = `${w.levels[note.level]}: `;
    return hanging(`  ${lead}`, noteText(note, card), screen.columns).replace(lead, paint[note.level](lead));
  });
  // Warnings stand right below the title, before anything is read that they put in doubt.
  return levels.includes('warning') ? ['', ...lines] : ['', screen.bold(w.notes), ...lines];
}

function cureText(remedy: Remedy, { card }: CommandWords): string {
  const reserve = reserveText(remedy, card);
  return `${remedyText(remedy, card)}${reserve === '' ? '' : ` ${reserve}`}`;
}

/** What happens, when and by how much, with the nearest cure; then every single change that would cure it. */
export function infeasibleText(plan: PlanInfeasible, inWords: CommandWords, screen: Screen): string {
  const words = wordsOver(plan, inWords);
  const w = words.plan;
  const remedies = plan.infeasible.remedies.map((remedy) => cureText(remedy, words));
  const [nearest] = remedies;
  const lines = [
    ...headingLines(plan.shoot, words.card.untitled, words, screen),
    '',
    ...linesOf(reasonText(plan.infeasible, words.card), screen.columns).map((line) => screen.red(line)),
    ...(nearest === undefined ? [] : linesOf(w.nearestCure(nearest), screen.columns)),
    ...(remedies.length === 0
      ? ['', ...linesOf(w.noCure, screen.columns)]
      : ['', screen.bold(w.anyCure), ...remedies.map((remedy) => hanging('  - ', remedy, screen.columns))]),
  ];
  return `${lines.join('\n')}\n`;
}
