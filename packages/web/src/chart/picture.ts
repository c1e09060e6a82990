// The evening as a picture: curves before the sky, lanes under it. Every line differs from the others by width and
// dash, and has a dark edge: the sky behind it goes from bright to black.

import { nothing, svg, type TemplateResult } from 'lit-html';
import { clock } from '../parts/clock.js';
import { words } from '../words/words.js';
import type { Point } from './data.js';
import { CLOCK_PX, type Geometry, type LanePlace, type Layout, ROW_PX } from './geometry.js';
import { laneMarks } from './lane-marks.js';
import type { Moment } from './moments.js';
import { at, curve, steps } from './paths.js';
import { timeTicks } from './time-ticks.js';

/** The settings of a plan, on the axes of the picture as it stands. */
export const settingsPath = (settings: readonly Point[], { xOf, yOf }: Geometry) => steps(settings, xOf, yOf);

const edged = (name: string, d: string) =>
  svg`<path class="edge ${name}" d=${d} /><path class=${name} d=${d} />`;

export function picture(layout: Layout, was: string | undefined): TemplateResult {
  const { plan, data, geometry, lanes, moments } = layout;
  const { width, left, right, top, evBottom, bottom, xOf, yOf } = geometry;
  const low = curve(data.low, xOf, yOf);
  const high = curve(data.high, xOf, yOf);
  const back = [...data.low].reverse();
  const band = `${high}L${curve(back, xOf, yOf).slice(1)}Z`;
  const most = Math.max(2, Math.floor((right - left) / (plan.clocksBack ? 104 : 64)));
  const ticks = timeTicks(plan.frames, plan.shoot.intervalS, most).map((tick) => ({
    ...tick,
    x: xOf(tick.value),
  }));
  const settings = settingsPath(data.settings, geometry);
  return svg`<svg class="drawing" width=${width} height=${bottom + CLOCK_PX} aria-hidden="true">
    <g class="grid">
      ${evTicks(layout).map((ev) => svg`<path d="M${left} ${at(yOf(ev))}H${right}" />`)}
      ${ticks.map(({ x }) => svg`<path d="M${at(x)} ${top}V${bottom}" />`)}
    </g>
    ${moments.map((moment) => momentView(moment, top, evBottom, bottom))}
    <path class="band" d=${band} />
    ${edged('bound', low)} ${edged('bound', high)}
    ${was === undefined ? nothing : svg`<path class="settings was" d=${was} />`}
    ${edged('scene', curve(data.scene, xOf, yOf))}
    ${edged('settings', settings)}
    <path class="target" d=${curve(data.target, xOf, yOf)} />
    ${spoilt(layout)}
    ${evTicks(layout).map(
      (ev, i, all) =>
        svg`<text class="end" x=${left - 6} y=${at(yOf(ev) + 4)}>${i === all.length - 1 ? 'EV ' : ''}${words().number(ev, 0)}</text>`,
    )}
    ${lanes.map((lane) => laneView(lane, layout))}
    <path class="rule" d="M0 ${bottom}H${right}" />
    ${ticks
      .filter(({ x }) => x + 18 <= right)
      .map(
        ({ x, at: time }) =>
          svg`<text class="middle" x=${at(x)} y=${bottom + 15}>${clock(time, false)}</text>`,
      )}
  </svg>`;
}

/** Round values, at most seven. */
function evTicks({ lowEv, highEv }: Layout): number[] {
  const step = [1, 2, 5, 10].find((one) => (highEv - lowEv) / one <= 6.5) ?? 10;
  const first = Math.ceil((lowEv + 0.4) / step) * step;
  const count = Math.floor((highEv - 0.4 - first) / step) + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => first + i * step);
}

function momentView(
  { x, sign, onHorizon, label, left, row, free }: Moment,
  top: number,
  foot: number,
  end: number,
) {
  const y = row * ROW_PX + 13;
  const textX = left + (sign === 'none' ? 3 : 17);
  return svg`<path class="moment" d="M${at(x)} ${free ? y - 9 : top}V${end}" />
    ${onHorizon && sign !== 'none' ? svg`<g class="body ${sign}">${bodyAt(sign, x, foot, 8)}</g>` : nothing}
    ${
      row < 0
        ? nothing
        : svg`<g class="sign">${sign === 'none' ? nothing : bodyAt(sign, left + 9, y - 4, 4.5)}</g>
          <text x=${at(textX)} y=${y}>${label}</text>`
    }`;
}

/** The sun as a disc, the moon as a crescent. */
function bodyAt(sign: 'sun' | 'moon', x: number, y: number, r: number) {
  return sign === 'sun'
    ? svg`<circle cx=${at(x)} cy=${at(y)} r=${r} />`
    : svg`<path d="M${at(x)} ${at(y - r)}A${r} ${r} 0 1 1 ${at(x)} ${at(y + r)}A${r * 1.4} ${r * 1.4} 0 0 0 ${at(x)} ${at(y - r)}Z" />`;
}

/** A filter change is felt in every lane, and may spoil frames: a post through all, with a cross on it. */
function spoilt({ plan: { frames }, geometry: { xOf, yOf, bottom } }: Layout) {
  return frames.map((frame, i) => {
    const before = frames[i - 1];
    if (before === undefined || before.filters.join() === frame.filters.join()) return nothing;
    const [x, y] = [xOf(Date.parse(frame.at)), yOf(frame.settingEv100)];
    return svg`<path class="post" d="M${at(x)} ${at(y)}V${bottom}" />
      ${frame.affected ? svg`<path class="cross" d="M${at(x - 5)} ${at(y - 5)}l10 10m0 -10l-10 10" />` : nothing}`;
  });
}

function laneView(lane: LanePlace, { geometry }: Layout) {
  const { control, runs, top, bottom, yOf } = lane;
  return svg`<path class="rule" d="M0 ${top}H${geometry.right}" />
    <text class="end name" x=${geometry.left - 6} y=${(top + bottom) / 2 + 4}>${words().chart.lanes[control]}</text>
    <path class="lane" d=${steps(runs, geometry.xOf, yOf)} />
    ${laneMarks(lane, geometry).map(({ text, x, y }) => svg`<text x=${at(x)} y=${at(y)}>${text}</text>`)}`;
}
