// A lane for a bracket: from its shortest exposure to its longest, frame by frame, with the middle one that the shutter's
// lane tells of between them.

import type { PlanFrame, PlanMade } from '@evenfall/core';
import { scaleLinear } from 'd3-scale';
import { area } from 'd3-shape';
import { LINE, type Look, TYPE } from '../svg/ink.js';
import { dense, labelRoom, type Place, type Point, stepCorners } from '../svg/label-room.js';
import { polyline } from '../svg/polyline.js';
import { type Box, element, textAt } from '../svg/svg.js';
import { shutterText } from '../text/setting.js';
import type { Words } from '../text/words.js';
import { laneGround, laneName } from './lane-frame.js';
import type { MoveLane } from './move-lanes.js';
import type { TimeAxis } from './time-axis.js';

/** The lane of a plan's bracket; none without one. */
export function bracketLanes({ shoot, frames }: PlanMade, words: Words): MoveLane[] {
  const { bracket } = shoot.camera;
  if (bracket === undefined || frames[0]?.bracketLongest === undefined) return [];
  const reachEv = ((bracket.frames - 1) / 2) * bracket.stepEv;
  return [
    { weight: 2.6, draw: (box, axis, look) => drawn(frames, reachEv, words.lanes.bracket, box, axis, look) },
  ];
}

function drawn(
  frames: readonly PlanFrame[],
  reachEv: number,
  name: string,
  box: Box,
  axis: TimeAxis,
  look: Look,
): string {
  const { unit: u, ink } = look;
  const size = TYPE.body * u;
  // A row for labels over the longest and under the shortest.
  const [top, bottom] = [box.top + size + 6 * u, box.bottom - size - 6 * u];
  const stops = frames.map(({ shutterS }) => Math.log2(shutterS));
  const [low, high] = [Math.min(...stops) - reachEv, Math.max(...stops) + reachEv];
  const y = scaleLinear([low, high], [bottom, top]);
  const edge = (byEv: number): Point[] =>
    stepCorners(
      frames
        .map((frame, i) => ({ x: axis.xAt(frame.at), y: y(stops[i]! + byEv) }))
        .filter((point, i, all) => i === all.length - 1 || point.y !== all[i - 1]?.y),
    );
  const [longest, shortest] = [edge(reachEv), edge(-reachEv)];
  const between = area<readonly [Point, Point]>(
    ([over]) => over.x,
    ([, under]) => under.y,
    ([over]) => over.y,
  ).digits(2)(longest.map((point, i) => [point, shortest[i]!] as const));
  const room = labelRoom(
    box,
    [longest, shortest].map((points) => dense(points, 1.5 * u)),
  );
  const label = (at: 'first' | 'last', mark: string, points: readonly Point[], side: 'over' | 'under') => {
    const point = at === 'first' ? points[0]! : points.at(-1)!;
    const place: Place = {
      x: point.x + (at === 'first' ? 3 : -2) * u,
      y: side === 'over' ? point.y - 5 * u : point.y + 4 * u + 0.76 * size,
      text: shutterText(mark),
      style: { size, anchor: at === 'first' ? 'start' : 'end', fill: ink.text },
    };
    const found = room.place([place], 1.2 * u);
    return found === undefined ? '' : textAt(found.x, found.y, found.text, found.style);
  };
  const [first, last] = [frames[0]!, frames.at(-1)!];
  return [
    element('path', { d: between ?? '', fill: ink.twilight.nautical }),
    ...[longest, shortest].map((points) => polyline(points, { stroke: ink.settings, width: LINE.fine * u })),
    laneGround(box, look),
    label('first', first.bracketLongest ?? '', longest, 'over'),
    label('first', first.bracketShortest ?? '', shortest, 'under'),
    label('last', last.bracketLongest ?? '', longest, 'over'),
    label('last', last.bracketShortest ?? '', shortest, 'under'),
    laneName(name, (box.top + box.bottom) / 2, axis, look),
  ].join('');
}
