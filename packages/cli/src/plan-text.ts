// A plan for a person to read: what to bring, when to be there, what to turn when.

import { english, placeTexts, settingText, shutterEnds } from '@evenfall/chart';
import {
  type Clock,
  changesByClock,
  clockOver,
  framesOnCard,
  framesOnCharge,
  type PlanInfeasible,
  type PlanMade,
  type PlanNote,
  type Remedy,
  steepestMinute,
} from '@evenfall/core';
import type { Colors } from './colors.js';
import { COLUMNS, hanging, linesOf } from './layout.js';
import { moveFacts } from './move-facts.js';
import { printable } from './printable.js';

import { changesText, counted, ev, eventText, placeText, shortSettingText } from './wording.js';

const HOUR_MS = 3_600_000;
const LEAD = 15;

/** The whole plan as text; `shootPath` names the file in the commands to go on with. */
export function planText(plan: PlanMade, shootPath: string, colors: Colors): string {
  const lines = [
    ...headingLines(plan, colors),
    ...noteLines(plan, colors, ['warning']),
    '',
    ...factLines(plan, colors),
    '',
    ...cueLines(plan, colors),
    ...noteLines(plan, colors, ['caution', 'info']),
    '',
    colors.bold('Next'),
    `  a card to carry   npx evenfall card ${asArgument(shootPath)} -o card.pdf`,
    `  the curve         npx evenfall chart ${asArgument(shootPath)} -o chart.svg`,
  ];
  return `${lines.join('\n')}\n`;
}

/** A path as it can be pasted into a shell. */
function asArgument(path: string): string {
  return /^[\w./@%+:,-]+$/.test(path) ? path : `'${printable(path).replaceAll("'", "'\\''")}'`;
}

function headingLines({ shoot }: PlanMade | PlanInfeasible, colors: Colors): string[] {
  const title = shoot.title === '' ? english.untitled : shoot.title;
  return [
    ...linesOf(title).map((line) => colors.bold(line)),
    `${english.date(shoot.date)}, ${shoot.direction}`,
    placeText(shoot.place),
  ];
}

function factLines(plan: PlanMade, colors: Colors): string[] {
  const clock = clockOver(plan.clocksBack);
  const { shoot, summary, frames } = plan;
  const fact = (name: string, text: string) => hanging(name.padEnd(LEAD), text);
  const steepest = steepestMinute(frames, shoot.intervalS);
  const speed = steepest
    ? `; fastest at ${clock(steepest.at, true)}, ${ev(Math.abs(steepest.evPerMin), 2)} EV a minute`
    : '';
  return [
    fact('Be set up by', clock(summary.setUpAt)),
    fact(
      'Start, end',
      `${clock(summary.startAt, true)} to ${clock(summary.endAt, true)}, ${placeTexts(shoot.place, english)[2]}`,
    ),
    fact(
      'Frames',
      `${summary.frameCount}, one every ${shoot.intervalS} s; a clip of ${summary.clipS.toFixed(1)} s at ${shoot.clipFps} frames a second`,
    ),
    ...supplyFacts(plan, colors, clock).map(([name, text]) => fact(name, text)),
    fact(
      'Light',
      `EV ${ev(summary.sceneFromEv100)} to ${ev(summary.sceneToEv100)} at ISO 100; ${ev(summary.rampStops)} stops to follow${speed}`,
    ),
    ...eventFacts(plan, clock).map((text) => fact('Sun and moon', text)),
    fact('First setting', settingText(frames[0]!, english, ', ')),
    ...moveFacts(plan).map(([name, text]) => fact(name, text)),
    fact('Off by', `${ev(summary.worstErrorEv, 2)} stops at worst, ${ev(summary.rmsErrorEv, 2)} rms`),
    fact(
      'Reserve',
      `the scene may be ${ev(summary.reserveDarkEv)} stops darker or ${ev(summary.reserveBrightEv)} brighter, as on ${outOfHundred(summary.eveningsHeldShare)} ${shoot.direction === 'dawn' ? 'mornings' : 'evenings'} in 100`,
    ),
  ];
}

function supplyFacts({ shoot, summary }: PlanMade, colors: Colors, clock: Clock): [string, string][] {
  const facts: [string, string][] = [];
  const verdict = (fits: boolean, what: string, at?: string) => {
    const when = at === undefined ? '' : `, ${what} at ${clock(at)}`;
    return fits ? '' : `: ${colors.red(`not enough${when}`)}`;
  };
  const { cardNeededGB, cardFits, batteryFits, frameCount, cardFullAt, batteryOutAt } = summary;
  if (cardNeededGB !== undefined) {
    const { cardGB, frameMB = 0 } = shoot.camera;
    const card = cardGB === undefined ? '' : ` of ${cardGB}`;
    const room = cardGB === undefined ? '' : `, room for ${framesOnCard(cardGB, frameMB)} frames`;
    facts.push([
      'Card',
      `${cardNeededGB.toFixed(1)}${card} GB${room}${verdict(cardFits !== false, 'full', cardFullAt)}`,
    ]);
  }
  if (batteryFits !== undefined) {
    const { batteryFrames = 0, coldFactor = 1 } = shoot.camera;
    const charge = framesOnCharge(batteryFrames, coldFactor);
    const cold = coldFactor < 1 ? ' in the cold' : '';
    facts.push([
      'Battery',
      `${frameCount} of ${charge} frames${cold}${verdict(batteryFits, 'spent', batteryOutAt)}`,
    ]);
  }
  return facts;
}

/** Events from an hour before the start to an hour after the end, in one line of text; none where there are none. */
function eventFacts({ events, summary }: PlanMade, clock: Clock): string[] {
  const from = Date.parse(summary.startAt) - HOUR_MS;
  const to = Date.parse(summary.endAt) + HOUR_MS;
  const near = events
    .filter(({ at }) => Date.parse(at) >= from && Date.parse(at) <= to)
    .map(({ name, at }) => `${eventText(name)} ${clock(at)}`);
  return near.length === 0 ? [] : [near.join(', ')];
}

function cueLines(plan: PlanMade, colors: Colors): string[] {
  const { shoot, cues, frames, summary, shutterTimes = [] } = plan;
  const changes = changesByClock(plan);
  const clock = clockOver(plan.clocksBack);
  const clocks = changes.map(({ at }) => clock(at, true));
  const clockWidth = clocks.reduce((most, text) => Math.max(most, text.length), 0);
  const rig = shoot.camera.bulb ? rigLines(plan, colors) : [];
  if (changes.length === 0) {
    return rig.length > 0 ? rig : [colors.bold('No cues'), '  Leave the camera as it stands.'];
  }
  const rows = changes.map((cue, i) => {
    const minutes = (Date.parse(cue.at) - Date.parse(changes[i - 1]?.at ?? summary.startAt)) / 60_000;
    return { cue, minutes: `+${minutes.toFixed(1)}`, change: changesText(cue) };
  });
  // Long filter names may push the setting to a line of its own, but not all rows' column aside.
  const width = Math.max(...rows.map(({ change }) => (change.length <= 26 ? change.length : 0)), 6);
  const before = (clockText: string, minutes: string, frame: string) =>
    `${clockText.padEnd(clockWidth)}  ${minutes.padStart(5)}  ${frame.padStart(5)}  `;
  return [
    ...(rig.length > 0
      ? rig
      : [
          colors.bold(
            `${counted(cues.length, 'cue')}; the clock is the start of the first frame with the new setting`,
          ),
        ]),
    colors.dim(`${before('clock', '+min', 'frame')}${'change'.padEnd(width)}  then`),
    ...rows.map(({ cue, minutes, change }, i) => {
      // People count frames from 1.
      const lead = before(clocks[i]!, minutes, String(cue.frame + 1));
      const then = shortSettingText(frames[cue.frame]!);
      const line = `${lead}${change.padEnd(width)}  ${then}`;
      if (shutterTimes.includes(cue)) return colors.dim(line);
      if (line.length <= COLUMNS) return line;
      return `${hanging(lead, change)}\n${hanging(`${' '.repeat(lead.length)}  then `, then)}`;
    }),
  ];
}

/** What a rig that times the shutter freely does by itself, and how many cues are left for a person. */
function rigLines({ cues, frames }: PlanMade, colors: Colors): string[] {
  const [shortest, longest] = shutterEnds(frames);
  const others = cues.length === 0 ? 'no cues beside it' : `${counted(cues.length, 'cue')} of other controls`;
  return [
    colors.bold(`The rig drives the shutter, ${shortest} to ${longest}; ${others}`),
    ...linesOf('Where it stands is told at every third of a stop; the clock is the start of that frame.'),
  ];
}

function noteLines({ notes }: PlanMade, colors: Colors, levels: readonly PlanNote['level'][]): string[] {
  const told = notes.filter(({ level }) => levels.includes(level));
  if (told.length === 0) return [];
  const paint = { info: colors.dim, caution: colors.yellow, warning: colors.red };
  const lines = told.map(({ level, text }) => {
    const lead = level === 'info' ? 'note: ' : `${level}: `;
    return hanging(`  ${lead}`, text).replace(lead, paint[level](lead));
  });
  // Warnings stand right below the title, before anything is read that they put in doubt.
  return levels.includes('warning') ? ['', ...lines] : ['', colors.bold('Notes'), ...lines];
}

/** A share of evenings as a whole number; no forecast is sure enough to say all of them. */
function outOfHundred(share: number): string {
  return share > 0.99 ? 'more than 99' : String(Math.round(100 * share));
}

function cureText({ text, reserveText }: Remedy): string {
  return reserveText === undefined ? text : `${text} ${reserveText}`;
}

/** What happens, when and by how much, with the nearest cure; then every single change that would cure it. */
export function infeasibleText(plan: PlanInfeasible, colors: Colors): string {
  const { text, remedies } = plan.infeasible;
  const [nearest] = remedies;
  const lines = [
    ...headingLines(plan, colors),
    '',
    ...linesOf(text).map((line) => colors.red(line)),
    ...(nearest === undefined ? [] : linesOf(`Nearest cure: ${cureText(nearest)}`)),
    ...(remedies.length === 0
      ? ['', 'No single change would cure it: try two, or another day.']
      : [
          '',
          colors.bold('Any one of these would do'),
          ...remedies.map((remedy) => hanging('  - ', cureText(remedy))),
        ]),
  ];
  return `${lines.join('\n')}\n`;
}
