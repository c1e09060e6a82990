// What the chart draws, as plain points: every one stands at a frame of the plan and has its value.

import type { Control, PlanFrame, PlanMade, Shoot } from '@evenfall/core';

export interface Point {
  readonly x: number; // UTC epoch milliseconds
  readonly y: number;
}

/** A stretch of frames over which one control stays. */
export interface Run extends Point {
  readonly label: string; // what the dial says
}

export interface Lane {
  readonly control: Control;
  readonly runs: readonly Run[]; // y: stops of light the control lets through, from any zero
}

export interface ChartData {
  readonly scene: readonly Point[];
  readonly low: readonly Point[];
  readonly high: readonly Point[];
  readonly target: readonly Point[];
  readonly settings: readonly Point[];
  readonly lanes: readonly Lane[];
}

// A curve needs no more points than a wide screen has columns; steps keep theirs.
const MOST_POINTS = 400;

export function chartData({ frames, shoot }: PlanMade): ChartData {
  const every = Math.max(1, Math.ceil(frames.length / MOST_POINTS));
  const some = frames.filter((_, i) => i % every === 0 || i === frames.length - 1);
  const xs = some.map((frame) => Date.parse(frame.at));
  const curve = (of: (frame: PlanFrame) => number): Point[] =>
    some.map((frame, i) => ({ x: xs[i] as number, y: of(frame) }));
  return {
    scene: curve((f) => f.sceneEv100),
    low: curve((f) => f.lowEv100),
    high: curve((f) => f.highEv100),
    target: curve((f) => f.targetEv100),
    settings: settingPoints(frames),
    lanes: controlsOf(shoot).map((control) => ({ control, runs: runsOf(control, frames) })),
  };
}

/** Where the settings change, and the last frame. */
export function settingPoints(frames: readonly PlanFrame[]): Point[] {
  return frames
    .filter((f, i) => i === frames.length - 1 || f.settingEv100 !== frames[i - 1]?.settingEv100)
    .map((f) => ({ x: Date.parse(f.at), y: f.settingEv100 }));
}

/** What may change over the frames. */
export function controlsOf({ camera, filters }: Pick<Shoot, 'camera' | 'filters'>): Control[] {
  const controls: Control[] = ['shutter', 'iso'];
  if (typeof camera.aperture !== 'string') controls.push('aperture');
  if (filters.length > 0) controls.push('filter');
  return controls;
}

function runsOf(control: Control, frames: readonly PlanFrame[]): Run[] {
  const runs: Run[] = [];
  for (const [i, frame] of frames.entries()) {
    const label = labelOf(control, frame);
    const last = i === frames.length - 1;
    if (label !== runs.at(-1)?.label || last) {
      runs.push({ x: Date.parse(frame.at), y: levelOf(control, frame), label });
    }
  }
  return runs;
}

function labelOf(control: Control, frame: PlanFrame): string {
  if (control === 'shutter') return frame.shutter;
  if (control === 'iso') return String(frame.iso);
  return control === 'aperture' ? frame.aperture : frame.filters.join(' + ') || 'none';
}

function levelOf(control: Control, frame: PlanFrame): number {
  if (control === 'shutter') return Math.log2(frame.shutterS);
  if (control === 'iso') return Math.log2(frame.isoExact);
  return control === 'aperture' ? -2 * Math.log2(frame.fNumber) : -frame.filterStops;
}
