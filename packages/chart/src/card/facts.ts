// What the front of the card says, as text: shared by paper and plain text.

import type { PlanMade } from '@evenfall/core';
import { type BracketTexts, bracketTexts } from '../text/bracket.js';
import { clockText, instantMs, needsSeconds } from '../text/local-time.js';
import { placeTexts } from '../text/place.js';
import { shutterEnds } from '../text/setting.js';
import type { Words } from '../text/words.js';
import { type EvTable, evTable } from './ev-table.js';
import { type Mark, marksOf } from './marks.js';

export interface CardFacts {
  readonly withSeconds: boolean;
  readonly title: string;
  readonly place: string; // its coordinates
  readonly zone: string; // all times are its own
  readonly setUpBy: string;
  readonly startAndEnd: string;
  readonly length: string;
  readonly bracket: BracketTexts | undefined;
  readonly checks: readonly string[];
  readonly events: readonly string[]; // during the shoot and an hour around it
  readonly correction: string;
  readonly howToRead: string; // over the cues
  readonly evTable: EvTable;
  readonly marks: readonly Mark[];
}

/** The texts of a plan's card. */
export function cardFacts(plan: PlanMade, words: Words): CardFacts {
  const { shoot, summary } = plan;
  const withSeconds = needsSeconds([
    summary.startAt,
    summary.endAt,
    ...[...plan.cues, ...(plan.shutterTimes ?? [])].map(({ at }) => at),
  ]);
  const { card } = words;
  const [latitude, longitude, zone] = placeTexts(shoot.place, words);
  return {
    withSeconds,
    title: shoot.title === '' ? words.untitled : shoot.title,
    place: `${latitude} ${longitude}`,
    zone,
    setUpBy: card.setUpBy(clockText(summary.setUpAt, false, words)),
    startAndEnd:
      `${card.start} ${clockText(summary.startAt, withSeconds, words)} · ` +
      `${card.end} ${clockText(summary.endAt, withSeconds, words)}`,
    length: [
      card.frames(summary.frameCount),
      card.every(words.seconds(shoot.intervalS)),
      card.clip(words.seconds(Number(summary.clipS.toFixed(1))), words.upTo(shoot.clipFps, 3)),
    ].join(' · '),
    bracket: bracketTexts(plan, words),
    checks: checklist(plan, words),
    events: eventTexts(plan, words),
    correction: correction(plan, words),
    howToRead: howToRead(plan, words),
    evTable: evTable(plan, words),
    marks: marksOf(plan, words),
  };
}

function checklist({ shoot, frames }: PlanMade, { card, seconds, upTo }: Words): string[] {
  const { checks } = card;
  const { bracket } = shoot.camera;
  return [
    checks.mode,
    checks.isoFixed,
    checks.interval(seconds(shoot.intervalS), frames.length),
    ...(bracket === undefined ? [] : [checks.bracket(bracket.frames, upTo(bracket.stepEv, 2))]),
    checks.focus,
    checks.stabiliser,
    checks.whiteBalance,
    shoot.camera.darkFrame ? checks.darkFrameOn : checks.darkFrameOff,
    checks.card,
    checks.battery,
    checks.level,
    checks.finder,
    frames[0]!.filters.length > 0 ? checks.filterOn : checks.filterOff,
    checks.clock,
    checks.redLight,
  ];
}

const HOUR_MS = 3_600_000;

function eventTexts({ events, summary }: PlanMade, words: Words): string[] {
  const [from, to] = [instantMs(summary.startAt) - HOUR_MS, instantMs(summary.endAt) + HOUR_MS];
  return events
    .filter(({ at }) => instantMs(at) >= from && instantMs(at) <= to)
    .sort((a, b) => instantMs(a.at) - instantMs(b.at))
    .map(({ name, at }) => `${words.events[name]} ${clockText(at, false, words)}`);
}

/** How the rows below are meant, and what is a rig's to do. */
function howToRead({ shoot, cues, frames }: PlanMade, { card }: Words): string {
  if (!shoot.camera.bulb) return cues.length > 0 ? card.howToRead : card.noCues;
  const rig = card.rigTimes(...shutterEnds(frames));
  return cues.length > 0 ? `${rig} ${card.howToRead}` : rig;
}

function correction(plan: PlanMade, words: Words): string {
  const { shoot, summary, cues } = plan;
  const tolerance = words.number(shoot.limits.toleranceEv, 2);
  if (shoot.camera.bulb) return words.card.correctionByRig({ tolerance });
  // Where the settings turn back, under lamps or a closed sky, the next cue is no darker than the last.
  if (turnsBack(plan)) return words.card.correctionByMarks({ tolerance, marks: shoot.camera.stepsPerStop });
  return words.card.correction({
    tolerance,
    fallsDark: summary.sceneToEv100 <= summary.sceneFromEv100,
    cuesPerStop: words.number(cues.length / Math.max(1, summary.rampStops), 1),
  });
}

/**
 * Whether an EV may stand at two cues, or a cue is no guide to the next: one sets against the way of the evening, as when
 * lamps come on, or against the scene at the one before.
 */
function turnsBack({ cues, frames, summary }: PlanMade): boolean {
  const way = Math.sign(summary.sceneToEv100 - summary.sceneFromEv100);
  return cues.slice(1).some(({ frame }, i) => {
    const [before, after] = [frames[cues[i]!.frame]!, frames[frame]!];
    const set = after.settingEv100 - before.settingEv100;
    const against = set * way < 0 || set * (after.sceneEv100 - before.sceneEv100) < 0;
    return Math.abs(set) > 0.4 && against;
  });
}
