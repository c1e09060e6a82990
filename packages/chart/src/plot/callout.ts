// A curve's name beside it, with a short leader: no legend to look up.

import type { LabelRoom, Point } from '../svg/label-room.js';
import { type Box, element, type TextStyle, textAt } from '../svg/svg.js';
import { textWidth } from '../svg/text-width.js';

export interface CalloutSpec {
  readonly text: string;
  readonly curve: readonly Point[]; // dense
  readonly others: readonly (readonly Point[])[]; // curves the leader should not cross
  readonly side: 'above' | 'below';
  readonly room: LabelRoom;
  readonly unit: number;
  readonly style: TextStyle;
  readonly shares?: readonly number[]; // where along the curve to try, 0 to 1, best first
}

const SHARES = [0.5, 0.45, 0.55, 0.4, 0.6, 0.35, 0.65, 0.3, 0.7, 0.25, 0.75, 0.2, 0.8, 0.12, 0.88];
const DISTANCES = [12, 18, 26, 36, 50];
const ANGLES_DEG = [45, 60, 30, 90, 120, 135, 150, 15];

/** The name and its leader, where the nearest free place is; empty where the picture is full. */
export function callout({
  text,
  curve,
  others,
  side,
  room,
  unit,
  style,
  shares = SHARES,
}: CalloutSpec): string {
  if (curve.length === 0) return '';
  const size = { width: textWidth(text, style.size, style.bold), height: style.size };
  let best: { crossings: number; box: Box; from: Point; to: Point } | undefined;
  for (const flip of side === 'above' ? [-1, 1] : [1, -1]) {
    for (const distance of DISTANCES) {
      for (const share of shares) {
        const from = curve[Math.round(share * (curve.length - 1))]!;
        for (const angle of ANGLES_DEG) {
          const dx = Math.cos((angle * Math.PI) / 180) * distance * unit;
          const to = {
            x: from.x + dx,
            y: from.y + flip * Math.sin((angle * Math.PI) / 180) * distance * unit,
          };
          const box = boxBeyond(to, Math.round(dx), flip, size);
          if (!room.isFree(box, 3 * unit)) continue;
          const crossings = crossingsOf(from, to, others, unit);
          if (best === undefined || crossings < best.crossings) best = { crossings, box, from, to };
          if (crossings === 0) return drawn(best);
        }
      }
    }
  }
  return best === undefined ? '' : drawn(best);

  function drawn({ box, from, to }: { box: Box; from: Point; to: Point }): string {
    room.claim(box);
    const stroke = style.fill ?? '#000';
    return (
      element('line', { x1: from.x, y1: from.y, x2: to.x, y2: to.y, stroke, 'stroke-width': 1.35 * unit }) +
      element('circle', { cx: from.x, cy: from.y, r: 2.4 * unit, fill: stroke }) +
      textAt(box.left, box.bottom - 0.2 * size.height, text, { ...style, anchor: 'start' })
    );
  }
}

// The box whose nearest corner, or edge where the leader is upright, is the leader's end.
function boxBeyond(to: Point, dx: number, flip: number, size: { width: number; height: number }): Box {
  const left = dx > 0 ? to.x + 1 : dx < 0 ? to.x - size.width - 1 : to.x - size.width / 2;
  const top = flip < 0 ? to.y - size.height : to.y;
  return { left, top, right: left + size.width, bottom: top + size.height };
}

function crossingsOf(from: Point, to: Point, others: readonly (readonly Point[])[], unit: number): number {
  const steps = 12;
  let crossings = 0;
  for (const other of others) {
    for (let k = 2; k <= steps; k++) {
      const x = from.x + ((to.x - from.x) * k) / steps;
      const y = from.y + ((to.y - from.y) * k) / steps;
      if (other.some((p) => Math.abs(p.x - x) < 1.5 * unit && Math.abs(p.y - y) < 1.5 * unit)) crossings++;
    }
  }
  return crossings;
}
