// The moments of sun and moon that fall into the frames, named above the sky where there is room.

import type { PlanMade } from '@evenfall/core';
import { clock } from '../parts/clock.js';
import { words } from '../words/words.js';
import { textPx } from './text-px.js';

type Sign = 'sun' | 'moon' | 'none';

export interface Moment {
  readonly x: number;
  readonly sign: Sign;
  readonly onHorizon: boolean; // rises or sets there
  readonly label: string;
  readonly left: number; // of the label
  readonly row: number; // from the top; -1: no room for its name
  readonly free: boolean; // no name stands in the way of its line above the sky
}

const ROWS = 3;
const SIGN_PX = 14;

export function momentsOf(
  plan: PlanMade,
  xOf: (ms: number) => number,
  left: number,
  right: number,
): Moment[] {
  const names = words().chart.events;
  const change = plan.notes.find((note) => note.kind === 'clocks-change');
  const clocks = change && {
    name: change.byMin > 0 ? ('clocks-forward' as const) : ('clocks-back' as const),
    at: change.at,
  };
  const free = Array.from({ length: ROWS }, () => 0);
  const placed = [...plan.events, ...(clocks ? [clocks] : [])]
    .map(({ name, at }) => ({ name, at, x: xOf(Date.parse(at)) }))
    .filter(({ x }) => x >= left && x <= right)
    .sort((a, b) => a.x - b.x)
    .map(({ name, at, x }) => {
      const sign: Sign = name.startsWith('moon') ? 'moon' : name.startsWith('sun') ? 'sun' : 'none';
      const label = `${names[name]} ${clock(at, false)}`;
      const width = textPx(label) + 8 + (sign === 'none' ? 0 : SIGN_PX);
      const start = x + width > right ? right - width : x;
      const row = free.findIndex((px) => start >= px);
      if (row >= 0) free[row] = start + width;
      return { x, sign, onHorizon: /rise$|set$/.test(name), label, left: start, width, row };
    });
  return placed.map((one) => ({
    ...one,
    free:
      one.row >= 0 &&
      !placed.some(({ left: from, width, row }) => row >= one.row && from < one.x && one.x < from + width),
  }));
}
