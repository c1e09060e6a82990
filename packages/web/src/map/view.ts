// A small map to choose a place on: pressed where one stands, or by arrow keys. As many degrees across as it is wide,
// twice as wide as high, so that a press is a place without any projection.

import { path } from 'virtual:land';
import { signal } from '@preact/signals-core';
import { html } from 'lit-html';
import { adoptStyles } from '../parts/adopt-styles.js';
import { coordinatesText } from '../parts/text.js';
import { shoot } from '../state/shoot.js';
import { words } from '../words/words.js';
import css from './map.css?inline';

adoptStyles(css);

interface Spot {
  readonly east: number;
  readonly north: number;
}

/** How often the world is as wide as what is seen of it, and what an arrow key moves by, degrees. Our choice. */
const ZOOMS = [
  { times: 1, stepDeg: 5 },
  { times: 2, stepDeg: 2 },
  { times: 4, stepDeg: 1 },
  { times: 8, stepDeg: 0.5 },
  { times: 16, stepDeg: 0.2 },
  { times: 32, stepDeg: 0.1 },
];
const MARGIN = 0.1; // of what is seen, our choice: a place beyond it comes to the middle

const zoomed = signal(0);
const middle = signal<Spot | undefined>(undefined);

const between = (low: number, value: number, high: number) => Math.max(low, Math.min(value, high));

function seen() {
  const { times, stepDeg } = ZOOMS[zoomed.value]!;
  const [wide, high] = [360 / times, 180 / times];
  const { longitudeDeg, latitudeDeg } = shoot.value.place;
  const { east, north } = middle.value ?? { east: longitudeDeg, north: latitudeDeg };
  return {
    wide,
    high,
    stepDeg,
    west: between(-180, east - wide / 2, 180 - wide),
    top: between(-90 + high, north + high / 2, 90),
  };
}

function zoom(by: 1 | -1): void {
  zoomed.value = between(0, zoomed.value + by, ZOOMS.length - 1);
  middle.value = undefined;
}

type Use = (latitudeDeg: number, longitudeDeg: number) => void;

function place({ east, north }: Spot, use: Use): void {
  const { wide, high, west, top } = seen();
  const digits = wide > 90 ? 1 : 2;
  const whole = (value: number) => Number(value.toFixed(digits));
  const [across, down] = [(east - west) / wide, (top - north) / high];
  const inside = Math.min(across, 1 - across, down, 1 - down) >= MARGIN;
  middle.value = inside ? { east: west + wide / 2, north: top - high / 2 } : { east, north };
  use(whole(north), whole(east));
}

const WAYS: Readonly<Record<string, Spot>> = {
  ArrowLeft: { east: -1, north: 0 },
  ArrowRight: { east: 1, north: 0 },
  ArrowUp: { east: 0, north: 1 },
  ArrowDown: { east: 0, north: -1 },
};

function key(event: KeyboardEvent, use: Use): void {
  const way = WAYS[event.key];
  const by = ({ '+': 1, '-': -1 } as const)[event.key];
  if ((way === undefined && by === undefined) || event.altKey || event.ctrlKey || event.metaKey) return;
  event.preventDefault();
  if (by !== undefined) zoom(by);
  if (way === undefined) return;
  const { longitudeDeg, latitudeDeg } = shoot.value.place;
  const { stepDeg } = seen();
  const east = longitudeDeg + way.east * stepDeg;
  // Round the world, and no further than its poles.
  place(
    {
      east: east > 180 ? east - 360 : east < -180 ? east + 360 : east,
      north: between(-90, latitudeDeg + way.north * stepDeg, 90),
    },
    use,
  );
}

function press(event: MouseEvent, use: Use): void {
  const box = (event.currentTarget as Element).getBoundingClientRect();
  const { wide, high, west, top } = seen();
  place(
    {
      east: west + ((event.clientX - box.left) / box.width) * wide,
      north: top - ((event.clientY - box.top) / box.height) * high,
    },
    use,
  );
}

const DEGREES = [
  ...[-150, -120, -90, -60, -30, 0, 30, 60, 90, 120, 150].map((east) => `M${east} -90V90`),
  ...[-60, -30, 0, 30, 60].map((south) => `M-180 ${south}H180`),
].join('');

export function mapView(use: Use) {
  const w = words();
  const { wide, high, west, top } = seen();
  const { longitudeDeg, latitudeDeg } = shoot.value.place;
  const [x, y, arm] = [longitudeDeg, -latitudeDeg, wide / 24];
  return html`<div class="fields">
    <div
      class="map"
      role="application"
      tabindex="0"
      aria-label=${w.place.mapLabel}
      aria-describedby="map-help"
      @click=${(event: MouseEvent) => press(event, use)}
      @keydown=${(event: KeyboardEvent) => key(event, use)}
    >
      <svg viewBox="${west} ${-top} ${wide} ${high}" aria-hidden="true">
        <path class="degrees" d=${DEGREES} />
        <path class="land" d=${path} />
        <path class="here" d="M${x - arm} ${y}h${arm * 0.6}m${arm * 0.8} 0h${arm * 0.6}M${x} ${y - arm}v${arm * 0.6}m0 ${arm * 0.8}v${arm * 0.6}" />
      </svg>
    </div>
    <div class="buttons">
      <button type="button" class="small" ?disabled=${zoomed.value === 0} @click=${() => zoom(-1)}>
        ${w.place.mapSmaller}
      </button>
      <button type="button" class="small" ?disabled=${zoomed.value === ZOOMS.length - 1} @click=${() => zoom(1)}>
        ${w.place.mapLarger}
      </button>
      <span role="status">${coordinatesText(latitudeDeg, longitudeDeg)}</span>
    </div>
    <p class="help" id="map-help">${w.place.mapHelp}</p>
  </div>`;
}
