// The lanes of a move, under the picture of the evening and on its time axis.

import type { PlanMade } from '@evenfall/core';
import { computed } from '@preact/signals-core';
import { html, nothing, svg } from 'lit-html';
import type { Geometry } from '../chart/geometry.js';
import { geometry } from '../chart/layout.js';
import { at, curve, steps } from '../chart/paths.js';
import { textPx } from '../chart/text-px.js';
import { made } from '../state/plan.js';
import { markSpot, type Room } from './lane-marks.js';
import { type MoveLane, moveLanes } from './lanes.js';
import { moveWords } from './words.js';

const lanes = computed(() => (made.value === undefined ? [] : moveLanes(made.value)));

/** Drawn once for a plan and a width, not at every move of the cursor. */
const drawing = computed(() => geometry.value && lanesPicture(lanes.value, geometry.value));

/** What is drawn, by the name of each line. */
export const movesDrawn = () =>
  Object.fromEntries(lanes.peek().flatMap(({ lines }) => lines.map(({ label, points }) => [label, points])));

export const lanesView = ({ move }: PlanMade) =>
  move === undefined ? nothing : html`<div class="move-lanes">${drawing.value}</div>`;

function lanesPicture(all: readonly MoveLane[], { left, right, width, xOf }: Geometry) {
  let bottom = 0;
  const drawn = all.map((lane) => {
    const top = bottom;
    bottom += lane.heightPx;
    const foot = bottom;
    const yOf = (value: number) => foot - ((value - lane.min) / (lane.max - lane.min)) * lane.heightPx;
    return laneView(lane, { left, right, top, bottom, xOf, yOf });
  });
  return svg`<svg class="drawing" width=${width} height=${bottom} aria-hidden="true">${drawn}</svg>`;
}

/** How much wider the names of lanes are than other text. */
const BOLD = 1.15;

function laneView({ name, lines, marks }: MoveLane, room: Room) {
  const { left, right, top, bottom, xOf, yOf } = room;
  const text = moveWords().lanes[name];
  const most = left - 8;
  return svg`<path class="rule" d="M0 ${top + 0.5}H${right}" />
    <text class="end name" x=${left - 6} y=${(top + bottom) / 2 + 4} lengthAdjust="spacingAndGlyphs"
      textLength=${BOLD * textPx(text) > most ? most : nothing}>${text}</text>
    ${name === 'time' ? parts(lines, room) : lines.map(({ label, points }) => svg`<path class="lane ${label}" d=${curve(points, xOf, yOf)} />`)}
    ${marks.map((mark) => {
      const spot = markSpot(mark, room);
      return spot === undefined ? nothing : svg`<text x=${at(spot.x)} y=${at(spot.y)}>${mark.text}</text>`;
    })}`;
}

/** From the last down to the ground, each over what comes after it: what is left of its colour is its own time. */
function parts(lines: MoveLane['lines'], { bottom, right, left, xOf, yOf }: Room) {
  return lines
    .toReversed()
    .map(
      ({ label, points }) =>
        svg`<path class="part ${label}" d="${steps(points, xOf, yOf)}H${right}V${bottom}H${left}Z" />`,
    );
}
