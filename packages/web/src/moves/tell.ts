// Moves in words and numbers: lengths, and what stands under the cursor and in the table.

import type { PlanFrame, PlanMade, Travel } from '@evenfall/core';
import { words } from '../words/words.js';
import { moveWords } from './words.js';

/** Position of an axis at a frame, from the start, in its own unit. */
export function positionOf({ axis }: Pick<Travel, 'axis'>, frame: PlanFrame): number {
  return (axis === 'slide' ? frame.slideM : axis === 'tilt' ? frame.tiltDeg : frame.panDeg) ?? 0;
}

/** Two figures at least, one decimal of a degree, two of a metre. */
function digitsOf(size: number, unit: Travel['unit']): number {
  const least = unit === 'deg' ? 1 : 2;
  return size === 0 ? least : Math.min(9, Math.max(least, 1 - Math.floor(Math.log10(size))));
}

/** A number with the digits it has and no more. */
function plain(value: number): string {
  return words().number(value, String(value).split('.')[1]?.length ?? 0);
}

/** "60°", "0.0022°", "1.2 m". */
export function lengthText(length: number, unit: Travel['unit']): string {
  const size = Math.abs(length);
  return `${plain(Number(size.toFixed(digitsOf(size, unit))))}${unit === 'deg' ? '°' : ' m'}`;
}

/** "60° right". */
export function goneText(
  length: number,
  { axis, unit, toward }: Pick<Travel, 'axis' | 'unit' | 'toward'>,
): string {
  const { ways } = moveWords();
  const [on, back] =
    axis === 'tilt'
      ? [ways.up, ways.down]
      : toward === 'forward'
        ? [ways.forward, ways.back]
        : [ways.right, ways.left];
  const text = lengthText(length, unit);
  return length === 0 ? text : `${text} ${length < 0 ? back : on}`;
}

/** Seconds to three figures and a thousandth. */
export function secondsText(timeS: number): string {
  return plain(Number(Number(timeS.toPrecision(3)).toFixed(3)));
}

/** "45 s", "90 min", "2 h 30 min". */
export function timeText(timeS: number): string {
  if (timeS < 120) return `${secondsText(timeS)} s`;
  const minutes = Math.round(timeS / 60);
  const rest = minutes % 60;
  if (minutes < 100) return `${minutes} min`;
  return `${Math.floor(minutes / 60)} h${rest === 0 ? '' : ` ${rest} min`}`;
}

// A quarter of an hour of clip to one width: nobody sees that move.
const crossing = (widthsPerS = 0) =>
  widthsPerS > 1e-3 ? moveWords().width(secondsText(1 / widthsPerS)) : moveWords().facts.stands;

type Fact = readonly [name: string, value: string];
type Column = readonly [name: string, cell: (frame: PlanFrame) => string];

/** A column a number; what is not known has none. */
export function moveColumns({ move }: PlanMade): readonly Column[] {
  if (move === undefined) return [];
  const { facts, lanes, budget } = moveWords();
  const seconds = (timeS: number | undefined) => `${secondsText(timeS ?? 0)} s`;
  return [
    ...move.travels.map(
      (travel): Column => [lanes[travel.axis], (frame) => goneText(positionOf(travel, frame), travel)],
    ),
    ...(move.fastest === undefined
      ? []
      : [[facts.speed, ({ widthsPerS }: PlanFrame) => crossing(widthsPerS)] as const]),
    ...(move.travels.some(({ mode }) => mode === 'continuous')
      ? [
          [
            facts.smear,
            ({ blurPx }: PlanFrame) => (blurPx === undefined ? '?' : facts.pixels(words().number(blurPx, 1))),
          ] as const,
        ]
      : []),
    [budget.parts.moveS, ({ moveS }) => seconds(moveS)],
    [facts.slack, ({ slackS }) => seconds(slackS)],
  ];
}

/** What the move does at the frame under the cursor. */
export function moveFacts(plan: PlanMade, frame: PlanFrame): readonly Fact[] {
  return moveColumns(plan).map(([name, cell]) => [name, cell(frame)]);
}

/** How fast it looks, for the figures that are always in view. */
export function moveFigures({ move }: PlanMade) {
  if (move?.fastest === undefined) return [];
  const { facts } = moveWords();
  const fast = move.findings.some(({ kind }) => kind === 'too-fast');
  return [
    {
      name: facts.speed,
      value: crossing(move.fastest.widthsPerS),
      ...(fast ? { short: facts.fast } : {}),
    },
  ];
}

/** For a voice, to go on with: where each axis stands, and what is to spare. */
export function moveSpoken(plan: PlanMade, frame: PlanFrame): string {
  const { move } = plan;
  if (move === undefined) return '';
  const { lanes, facts } = moveWords();
  return [
    '',
    ...move.travels.map((travel) => `${lanes[travel.axis]} ${goneText(positionOf(travel, frame), travel)}`),
    `${secondsText(frame.slackS ?? 0)} s ${facts.slack}`,
  ].join(', ');
}
