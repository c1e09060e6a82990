// Behind the curves: the twilights as greys, the sun's events by name.

import type { PlanMade } from '@evenfall/core';
import type { Chart, Plugin } from 'chart.js';
import { clock } from '../parts/clock.js';
import { words } from '../words/words.js';
import type { Inks } from './inks.js';

const FLOORS = [
  { name: 'day', downToDeg: -0.833 },
  { name: 'civil', downToDeg: -6 },
  { name: 'nautical', downToDeg: -12 },
  { name: 'astronomical', downToDeg: -18 },
  { name: 'night', downToDeg: Number.NEGATIVE_INFINITY },
] as const;

type Phase = (typeof FLOORS)[number]['name'];

export interface Stretch {
  readonly phase: Phase;
  readonly fromMs: number;
  readonly toMs: number;
}

/** Daylight, twilights and night along the frames, in order. */
export function stretches({ frames }: PlanMade): Stretch[] {
  const list: { phase: Phase; fromMs: number; toMs: number }[] = [];
  for (const frame of frames) {
    const phase = FLOORS.find(({ downToDeg }) => frame.sunAltitudeDeg >= downToDeg)?.name ?? 'night';
    const ms = Date.parse(frame.at);
    const last = list.at(-1);
    if (last !== undefined) last.toMs = ms;
    if (last?.phase !== phase) list.push({ phase, fromMs: ms, toMs: ms });
  }
  return list;
}

export interface Backdrop {
  readonly stretches: readonly Stretch[];
  readonly events: readonly { readonly ms: number; readonly label: string }[];
}

export function backdropOf(plan: PlanMade): Backdrop {
  const [fromMs, toMs] = [Date.parse(plan.summary.startAt), Date.parse(plan.summary.endAt)];
  const names = words().chart.events;
  const change = plan.notes.find((note) => note.kind === 'clocks-change');
  const clocks = change && {
    name: change.byMin > 0 ? ('clocks-forward' as const) : ('clocks-back' as const),
    at: change.at,
  };
  return {
    stretches: stretches(plan),
    events: [...plan.events, ...(clocks ? [clocks] : [])]
      .map(({ name, at }) => ({ ms: Date.parse(at), label: `${names[name]} ${clock(at, false)}` }))
      .filter(({ ms }) => ms >= fromMs && ms <= toMs)
      .sort((a, b) => a.ms - b.ms),
  };
}

/** Draws what `current` gives, under everything else. */
export function backdropPlugin(
  current: () => { backdrop: Backdrop; inks: Inks } | undefined,
): Plugin<'line'> {
  return {
    id: 'backdrop',
    beforeDraw(chart: Chart) {
      const now = current();
      const x = chart.scales.x;
      const ev = chart.scales.ev;
      if (now === undefined || x === undefined || ev === undefined) return;
      const { ctx, chartArea } = chart;
      const { inks } = now;
      ctx.save();
      for (const { phase, fromMs, toMs } of now.backdrop.stretches) {
        const [left, right] = [x.getPixelForValue(fromMs), x.getPixelForValue(toMs)];
        ctx.fillStyle = inks[phase];
        ctx.fillRect(left, chartArea.top, right - left + 0.5, chartArea.bottom - chartArea.top);
      }
      ctx.font = '12px system-ui, sans-serif';
      ctx.textBaseline = 'top';
      ctx.strokeStyle = ctx.fillStyle = inks.text;
      ctx.setLineDash([1, 3]);
      let freeFrom = [chartArea.left, chartArea.left, chartArea.left];
      const placed = now.backdrop.events.map(({ ms, label }) => {
        const at = Math.round(x.getPixelForValue(ms)) + 0.5;
        const width = ctx.measureText(label).width + 8;
        const left = at + width > chartArea.right ? at - width : at + 4;
        const row = freeFrom.findIndex((free) => left >= free);
        freeFrom = freeFrom.map((free, i) => (i === row ? left + width : free));
        return { at, label, left, right: left + width, row };
      });
      const topOf = (row: number) => ev.top + 3 + row * 15;
      for (const { at, label, left, row } of placed) {
        // A line gives way to the names of others: struck through they would be hard to read.
        ctx.beginPath();
        let from = ev.top;
        const crossed = placed.filter((one) => one.row >= 0 && one.left < at && at < one.right);
        for (const other of crossed.sort((a, b) => a.row - b.row)) {
          ctx.moveTo(at, from);
          ctx.lineTo(at, Math.max(from, topOf(other.row)));
          from = topOf(other.row) + 14;
        }
        ctx.moveTo(at, from);
        ctx.lineTo(at, ev.bottom);
        ctx.stroke();
        if (row >= 0) ctx.fillText(label, left, topOf(row) + 1);
      }
      ctx.restore();
    },
  };
}
