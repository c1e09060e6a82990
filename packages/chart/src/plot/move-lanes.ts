// Lanes of a chart for a camera that moves: where each axis stands, and what every interval holds.

import type { PlanFrame, PlanMade, Travel } from '@evenfall/core';
import { area } from 'd3-shape';
import { LINE, type Look, TYPE } from '../svg/ink.js';
import { dense, labelRoom, type Place, type Point } from '../svg/label-room.js';
import { polyline } from '../svg/polyline.js';
import { type Box, element, textAt } from '../svg/svg.js';
import { instantMs } from '../text/local-time.js';
import { goneText, lengthText, positionOf } from '../text/move.js';
import type { Words } from '../text/words.js';
import { laneGround, laneName } from './lane-frame.js';
import type { TimeAxis } from './time-axis.js';

/** A lane and the share of the height it takes, as for those of the controls. */
export interface MoveLane {
  readonly weight: number;
  readonly draw: (box: Box, axis: TimeAxis, look: Look) => string;
}

/** One lane an axis, one for the speed on screen where it is known, one for the interval; none without moves. */
export function moveLanes(plan: PlanMade, words: Words): MoveLane[] {
  if (plan.move === undefined) return [];
  return [
    ...plan.move.travels.map((travel) => ({
      weight: 1.9,
      draw: (box: Box, axis: TimeAxis, look: Look) =>
        positionLane(travel, plan.frames, words, { box, axis, look }),
    })),
    ...(plan.move.fastest === undefined
      ? []
      : [
          {
            weight: 2.4,
            draw: (box: Box, axis: TimeAxis, look: Look) => speedLane(plan, words, { box, axis, look }),
          },
        ]),
    {
      weight: 2.2,
      draw: (box: Box, axis: TimeAxis, look: Look) => timeLane(plan, words, { box, axis, look }),
    },
  ];
}

interface Where {
  readonly box: Box;
  readonly axis: TimeAxis;
  readonly look: Look;
}

function positionLane(travel: Travel, frames: readonly PlanFrame[], words: Words, where: Where): string {
  const { box, axis, look } = where;
  const u = look.unit;
  const size = TYPE.body * u;
  const [top, bottom] = [box.top + 6 * u, box.bottom - 6 * u];
  const curve = frames.map((frame): Point => {
    const share = positionOf(travel, frame) / travel.length;
    return { x: axis.xAt(frame.at), y: bottom + (top - bottom) * share };
  });
  const room = labelRoom(box, [dense(curve, 1.5 * u)]);
  const style = { size, fill: look.ink.text };
  const [first, last] = [curve[0]!, curve.at(-1)!];
  const start = lengthText(0, travel, words);
  const end = goneText(travel, words);
  const over = (point: Point, text: string, anchor: 'start' | 'end', dx: number): Place[] =>
    [point.y - 5 * u, point.y + 4 * u + 0.76 * size].map((y) => ({
      x: point.x + dx,
      y,
      text,
      style: { ...style, anchor },
    }));
  const labels = [
    room.place(over(first, start, 'start', 3 * u), 1.2 * u),
    room.place(over(last, end, 'end', -2 * u), 1.2 * u),
  ];
  return [
    laneGround(box, look),
    stroke(curve, look, undefined),
    ...labels.flatMap((place) =>
      place === undefined ? [] : [textAt(place.x, place.y, place.text, place.style)],
    ),
    nameOf(words.move.lanes[travel.axis], where),
  ].join('');
}

/** Seconds of clip in which a picture's width should pass at the fastest. */
const COMFORT_S = 7;

// How fast the picture passes, frame by frame, below the dashed line that is the limit of comfort.
function speedLane({ frames, move }: PlanMade, words: Words, where: Where): string {
  const { box, axis, look } = where;
  const { unit: u, ink } = look;
  const size = TYPE.body * u;
  const fastest = move?.fastest?.widthsPerS ?? 0;
  // Room for the speed's own words above its peak.
  const [top, bottom] = [box.top + size + 5 * u, box.bottom - 1 * u];
  const most = Math.max(fastest, 1 / COMFORT_S);
  const y = (widthsPerS: number) => bottom + ((top - bottom) * widthsPerS) / most;
  // No step follows the last frame.
  const curve = frames
    .slice(0, -1)
    .map((frame): Point => ({ x: axis.xAt(frame.at), y: y(frame.widthsPerS ?? 0) }));
  const comfort = [box.left, box.right].map((x): Point => ({ x, y: y(1 / COMFORT_S) }));
  const room = labelRoom(
    box,
    [curve, comfort].map((points) => dense(points, 1.5 * u)),
  );
  const at = (share: number, lineY: number, text: string): Place[] =>
    [lineY - 5 * u, lineY + 4 * u + 0.76 * size].map((textY) => ({
      x: axis.left + share * (axis.right - axis.left),
      y: textY,
      text,
      style: { size, fill: ink.text, anchor: 'middle' },
    }));
  const [crossing, limit] = [1 / fastest, COMFORT_S].map((timeS) =>
    words.move.width(words.seconds(Number(timeS.toPrecision(2)))),
  ) as [string, string];
  const peak = curve.reduce((high, point) => Math.min(high, point.y), bottom);
  const places = [
    room.place(
      // Above the peak, under it, in the middle under the curve, or over the limit's line where that is too near.
      [peak, (peak + bottom) / 2 + 5 * u + 0.26 * size, y(1 / COMFORT_S)].flatMap((lineY) =>
        at(0.5, lineY, crossing),
      ),
      1.2 * u,
    ),
    room.place(
      [0.1, 0.9, 0.2, 0.8].flatMap((share) => at(share, y(1 / COMFORT_S), limit)),
      1.2 * u,
    ),
  ];
  return [
    laneGround(box, look),
    stroke(curve, look, undefined),
    stroke(comfort, look, `${5 * u} ${3 * u}`),
    ...places.flatMap((place) =>
      place === undefined ? [] : [textAt(place.x, place.y, place.text, place.style)],
    ),
    nameOf(words.move.lanes.speed, where),
  ].join('');
}

// All exposures with their dark frames stand on the ground, moving, rest and writing hang from the top: what is left
// blank between them is time to spare.
function timeLane({ frames, shoot, move }: PlanMade, words: Words, where: Where): string {
  const { box, axis, look } = where;
  const { unit: u, ink } = look;
  const [top, bottom] = [box.top + 4 * u, box.bottom - 1 * u];
  const y = (timeS: number) => bottom + ((top - bottom) * timeS) / shoot.intervalS;
  const x = (frame: PlanFrame) => axis.x(instantMs(frame.at));
  const openS = ({ shutterS, bracketS = 0, darkS = 0 }: PlanFrame) => shutterS + bracketS + darkS;
  const open = frames.map((frame) => ({ x: x(frame), y: y(openS(frame)) }));
  const busy = frames.map((frame, i) => ({
    x: x(frame),
    // Rounding must not cross the two.
    y: Math.min(open[i]!.y, y(openS(frame) + (frame.slackS ?? 0))),
  }));
  const filled = (points: readonly Point[], edge: number, fill: string) =>
    element('path', {
      d:
        area<Point>(
          (p) => p.x,
          () => edge,
          (p) => p.y,
        ).digits(2)(points) ?? '',
      fill,
    });
  const size = TYPE.body * u;
  const room = labelRoom(
    { ...box, top, bottom },
    [open, busy].map((points) => dense(points, 1.5 * u)),
  );
  const text = words.move.spare(words.seconds(Math.max(0, move?.tightest.slackS ?? 0)));
  const shares = [0.5, 0.35, 0.65, 0.2, 0.8, 0.08, 0.92];
  const name = room.place(
    shares.flatMap((share): Place[] => {
      const at = Math.round(share * (frames.length - 1));
      const middle = (open[at]!.y + busy[at]!.y) / 2 + 0.26 * size;
      return [{ x: open[at]!.x, y: middle, text, style: { size, fill: ink.text, anchor: 'middle' } }];
    }),
    1.2 * u,
  );
  return [
    filled(open, bottom, ink.grid),
    filled(busy, top, ink.twilight.nautical),
    laneGround(box, look),
    stroke(open, look, undefined),
    stroke(busy, look, `${5 * u} ${3 * u}`),
    name === undefined ? '' : textAt(name.x, name.y, name.text, name.style),
    nameOf(words.move.lanes.time, where),
  ].join('');
}

function stroke(points: readonly Point[], { unit, ink }: Look, dash: string | undefined): string {
  return polyline(points, { stroke: ink.settings, width: LINE.line * unit, dash });
}

function nameOf(name: string, { box, axis, look }: Where): string {
  return laneName(name, (box.top + box.bottom) / 2, axis, look);
}
