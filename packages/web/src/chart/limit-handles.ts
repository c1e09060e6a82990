// What is set on the picture: start and end of the shoot at its edges, the interval, the tolerance beside the target, the
// skyline where the sun goes behind it, the longest shutter and the highest ISO in their lanes. Each is dragged, or moved by
// the arrow keys, and does what its control does.

import { type PlanMade, type SceneWords, type Span, sunAndMoon } from '@evenfall/core';
import { html } from 'lit-html';
import { marks } from '../design/dial.js';
import { putInterval } from '../design/interval.js';
import { clock } from '../parts/clock.js';
import { markText } from '../parts/text.js';
import type { Path } from '../state/path.js';
import { put, shown } from '../state/shoot.js';
import { words } from '../words/words.js';
import type { Geometry, LanePlace, Layout } from './geometry.js';
import { atOffset } from './time-ticks.js';

const HALF = 22; // of a touch target
const INSIDE = 12; // so that no target leaves the page

/** Where a drag began; what it moves is measured there, for the picture changes under the finger. */
let from:
  | { readonly x: number; readonly y: number; readonly move: (dx: number, dy: number) => void }
  | undefined;

interface Handle {
  readonly name: string;
  readonly text: string; // its value, for a voice
  readonly x: number;
  readonly y: number;
  readonly across: boolean;
  /** What a drag from here does, pixels from where it began. */
  readonly drag: () => (dx: number, dy: number) => void;
  readonly step: (by: number) => void; // later, or more
  readonly now: number;
}

function handleView({ name, text, x, y, across, drag, step, now }: Handle, width: number) {
  return html`<div
    class="limit-handle ${across ? 'across' : 'upright'}"
    role="slider"
    tabindex="0"
    aria-label=${name}
    aria-orientation=${across ? 'horizontal' : 'vertical'}
    aria-valuenow=${now}
    aria-valuetext=${text}
    data-side=${x > width / 2 ? 'left' : 'right'}
    .style=${`transform:translate(${x - HALF}px,${y - HALF}px)`}
    @pointerdown=${(event: PointerEvent) => {
      (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
      from = { x: event.clientX, y: event.clientY, move: drag() };
    }}
    @pointermove=${(event: PointerEvent) => from?.move(event.clientX - from.x, event.clientY - from.y)}
    @pointerup=${end}
    @pointercancel=${end}
    @keydown=${(event: KeyboardEvent) => {
      const by = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }[event.key];
      if (by === undefined) return;
      event.preventDefault();
      step(by);
    }}
  ><span class="handle-text" aria-hidden="true">${name}: ${text}</span></div>`;
}

function end(): void {
  from = undefined;
}

const MINUTE_MS = 60_000;
const STEP_DEG = 0.5;

/** The sun's altitude at a time; beyond the frames it goes on as it went over the last of them. */
function altitudeAt({ frames }: PlanMade, ms: number): number {
  const at = (i: number) => frames[Math.max(0, Math.min(i, frames.length - 1))];
  const next = frames.findIndex((frame) => Date.parse(frame.at) >= ms);
  const i = next < 0 ? frames.length - 1 : Math.max(next, Math.min(10, frames.length - 1));
  const [a, b] = [at(i - 10), at(i)];
  if (a === undefined || b === undefined || a === b) return 0;
  const [fromMs, toMs] = [Date.parse(a.at), Date.parse(b.at)];
  const slope = (b.sunAltitudeDeg - a.sunAltitudeDeg) / (toMs - fromMs);
  return b.sunAltitudeDeg + slope * (ms - toMs);
}

function spanHandle(which: 'start' | 'end', plan: PlanMade, g: Geometry): Handle {
  const { startAt, endAt } = plan.summary;
  const at = which === 'start' ? startAt : endAt;
  const atMs = Date.parse(at);
  const byClock = 'startAt' in (shown(['span']) as Span);
  const key = which === 'start' ? 'fromSunAltitudeDeg' : 'toSunAltitudeDeg';
  const to = (ms: number) => {
    if (byClock) {
      const whole = Math.round(ms / MINUTE_MS) * MINUTE_MS;
      put(['span', which === 'start' ? 'startAt' : 'endAt'], atOffset(whole, at));
    } else put(['span', key], Math.round(altitudeAt(plan, ms) / STEP_DEG) * STEP_DEG);
  };
  const falls = plan.shoot.direction === 'dusk';
  return {
    name: words().chart.handles[which],
    text: clock(at, false),
    x: which === 'start' ? g.left : g.right - INSIDE,
    y: g.top + HALF,
    across: true,
    now: Math.round(atMs / MINUTE_MS),
    drag: () => (dx) => to(g.msAt(g.xOf(atMs) + dx)),
    step: (by) => {
      const now = shown(['span', key]);
      if (byClock) to(atMs + by * MINUTE_MS);
      else if (typeof now === 'number') put(['span', key], now + (falls ? -by : by) * STEP_DEG);
    },
  };
}

const PX_A_MARK = 12;

function dialHandle(control: 'shutter' | 'iso', plan: PlanMade, lane: LanePlace, g: Geometry): Handle {
  const w = words().kit;
  const path = control === 'shutter' ? ['camera', 'shutter', 'longest'] : ['camera', 'iso', 'highest'];
  const mark = String(shown(path));
  const all = marks(control, plan.shoot.camera.stepsPerStop, mark, (label) => label).map(([label]) => label);
  const at = all.indexOf(mark);
  const more = control === 'shutter' ? -1 : 1; // shutter marks begin with the longest
  const to = (index: number) => {
    const label = all[Math.max(0, Math.min(Math.round(index), all.length - 1))];
    if (label !== undefined) put(path, control === 'iso' ? Number(label) : label);
  };
  return {
    name: control === 'shutter' ? w.longestLimit : w.isoLimit,
    text: markText(control, mark),
    x: g.right - INSIDE,
    y: (lane.top + lane.bottom) / 2,
    across: false,
    now: at,
    drag: () => (_, dy) => to(at - (more * dy) / PX_A_MARK),
    step: (by) => to(at + more * by),
  };
}

/** How far one turns from here by pixels, in steps; rounded to whole ones. */
interface Turned {
  readonly path: Path;
  readonly name: string;
  readonly unit: string;
  readonly step: number;
  readonly digits: number;
  readonly x: number;
  readonly y: number;
  readonly across: boolean;
  readonly choose?: (value: number) => void;
}

/** A number that is turned in steps, as its control's buttons do; never below one step. */
function turned({ path, name, unit, step, digits, x, y, across, choose }: Turned): Handle | undefined {
  const value = shown(path);
  if (typeof value !== 'number') return undefined;
  const to = (next: number) =>
    (choose ?? ((v: number) => put(path, v)))(Math.max(step, Number(next.toFixed(digits))));
  return {
    name,
    text: `${words().number(value, digits)} ${unit}`,
    x,
    y,
    across,
    now: value,
    drag: () => (dx, dy) => to(value + Math.round((across ? dx : -dy) / PX_A_MARK) * step),
    step: (by) => to(value + by * step),
  };
}

/** Where the sun goes behind the skyline, or comes over it; without one, where it sets or rises. */
const SKYLINE_EVENTS = ['sun-behind-skyline', 'sun-over-skyline', 'sunset', 'sunrise'];

type SkylinePoint = Exclude<NonNullable<SceneWords['skylineDeg']>, number>[number];

// As the shoot file has them.
const [LOWEST_DEG, HIGHEST_DEG] = [-10, 89];

const SKYLINE = ['scene', 'skylineDeg'];

/** The height that counts where the sun stands: the one all round, or of those by bearing the nearest to it. */
function skylineToward({ shoot: { place } }: PlanMade, atMs: number) {
  const w = words().chart.handles;
  const given = shown(SKYLINE) ?? 0;
  if (!Array.isArray(given)) {
    const to = (deg: number) => put(SKYLINE, deg <= 0 ? undefined : deg);
    return { name: w.skyline, height: given, to };
  }
  const { sunAzimuthDeg } = sunAndMoon(atMs, place);
  const off = ({ azimuthDeg: bearing }: SkylinePoint) =>
    Math.abs(((((bearing - sunAzimuthDeg) % 360) + 540) % 360) - 180);
  const points: readonly SkylinePoint[] = given;
  const nearest = points.reduce((best, point, i) => (off(point) < off(points[best]!) ? i : best), 0);
  const { azimuthDeg: bearing, altitudeDeg: height } = points[nearest]!;
  const to = (deg: number) =>
    put([...SKYLINE, nearest, 'altitudeDeg'], Math.max(LOWEST_DEG, Math.min(deg, HIGHEST_DEG)));
  return { name: w.skylineToward(words().plain(bearing)), height, to };
}

function skylineHandle(plan: PlanMade, g: Geometry): Handle | undefined {
  const event = SKYLINE_EVENTS.map((name) => plan.events.find((one) => one.name === name)).find(
    (found) => found !== undefined,
  );
  if (event === undefined) return undefined;
  const atMs = Date.parse(event.at);
  const { name, height, to: putHeight } = skylineToward(plan, atMs);
  if (typeof height !== 'number') return undefined;
  const x = g.xOf(atMs);
  if (x < g.left || x > g.right) return undefined;
  const to = (heightDeg: number) => putHeight(Math.round(heightDeg / STEP_DEG) * STEP_DEG);
  const sun = (ms: number) => altitudeAt(plan, ms);
  return {
    name,
    text: `${words().number(height, 1)}°`,
    x,
    y: g.evBottom - HALF,
    across: true,
    now: height,
    // By the difference: refraction, which lifts sun and skyline alike, then takes no part.
    drag: () => (dx) => to(height + sun(g.msAt(x + dx)) - sun(atMs)),
    step: (by) => to(height + by * STEP_DEG),
  };
}

/** The target's end at the right, where no other handle is. */
function toleranceHandle(plan: PlanMade, g: Geometry): Handle | undefined {
  const y = g.yOf(plan.frames.at(-1)?.targetEv100 ?? 0);
  return turned({
    path: ['limits', 'toleranceEv'],
    name: words().chart.handles.tolerance,
    unit: 'EV',
    step: 0.05,
    digits: 2,
    x: g.right - INSIDE,
    y: Math.min(g.evBottom - HALF, Math.max(g.top + 3 * HALF, y)),
    across: false,
  });
}

export function limitHandles({ plan, geometry, lanes }: Layout) {
  const interval = turned({
    path: ['intervalS'],
    name: words().chart.handles.interval,
    unit: words().rhythm.secondsUnit,
    step: 0.5,
    digits: 1,
    x: geometry.left,
    y: geometry.evBottom - 3 * HALF,
    across: true,
    choose: putInterval,
  });
  const handles = [
    spanHandle('start', plan, geometry),
    spanHandle('end', plan, geometry),
    interval,
    toleranceHandle(plan, geometry),
    skylineHandle(plan, geometry),
  ].filter((handle) => handle !== undefined);
  for (const lane of lanes) {
    const { control } = lane;
    if (control === 'shutter' || control === 'iso') handles.push(dialHandle(control, plan, lane, geometry));
  }
  return handles.map((handle) => handleView(handle, geometry.width));
}
