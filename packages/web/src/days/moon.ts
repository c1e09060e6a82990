// The moon as it stands in the sky at the end of an evening.

import type { EveningLight } from '@evenfall/core';
import { html, svg } from 'lit-html';

const R = 9;

/** The lit part: half a disc, its straight side bent to the half ellipse that the line of shadow is seen as. */
export function litPath(litFraction: number): string {
  const rx = Math.abs(1 - 2 * litFraction) * R;
  return `M0 ${-R}A${R} ${R} 0 0 1 0 ${R}A${rx.toFixed(2)} ${R} 0 0 ${litFraction < 0.5 ? 0 : 1} 0 ${-R}Z`;
}

/** @param south of the equator the waxing moon is lit on the left */
export function moonView({ moonLitFraction, moonWaxing, moonAltitudeDeg }: EveningLight, south: boolean) {
  const lit = svg`<path d=${litPath(moonLitFraction)} transform=${moonWaxing === south ? 'scale(-1,1)' : 'scale(1,1)'} />`;
  return html`<svg class="moon ${moonAltitudeDeg < 0 ? 'down' : ''}" viewBox="-10 -10 20 20" aria-hidden="true">
    <circle r=${R} />
    ${lit}
  </svg>`;
}
