// What stands before sun and moon, and when the lamps in the frame come on: rarely asked for, so it comes with this part.

import { LAMPS_ON, type SceneWords } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { numberControl, selectControl } from '../parts/controls.js';
import { put, shown } from '../state/shoot.js';
import { moveWords } from './words.js';

type SkylinePoint = Exclude<NonNullable<SceneWords['skylineDeg']>, number>[number];
type LampsOn = Extract<SceneWords['lamps'], { word: unknown }>['on'];

const SKYLINE = ['scene', 'skylineDeg'];
const LAMPS = ['scene', 'lamps'];

export function sceneFields() {
  return html`<div class="fields">${skylineFields()} ${lampsFields()}</div>`;
}

function skylineFields() {
  const w = moveWords().scene;
  const skyline = shown(SKYLINE) as SceneWords['skylineDeg'];
  const points: readonly SkylinePoint[] = Array.isArray(skyline) ? skyline : [];
  const add = () => put(SKYLINE, [...points, nextPoint(points, skyline)]);
  const without = (i: number) => (points.length === 1 ? undefined : points.filter((_, k) => k !== i));
  return html`
    ${
      points.length === 0
        ? numberControl({
            path: SKYLINE,
            label: w.skyline,
            unit: '°',
            placeholder: w.level,
            help: w.skylineHelp,
          })
        : points.map(
            (_, i) => html`<div class="pair">
              ${numberControl({ path: [...SKYLINE, i, 'azimuthDeg'], label: w.bearing(i + 1), unit: w.fromNorth })}
              ${numberControl({ path: [...SKYLINE, i, 'altitudeDeg'], label: w.height(i + 1), unit: '°' })}
              <button type="button" class="small" @click=${() => put(SKYLINE, without(i))}>${w.remove(i + 1)}</button>
            </div>`,
          )
    }
    <button type="button" class="small" @click=${add}>${w.add}</button>
  `;
}

/** A quarter turn on from the last; the first toward the west, as high as it was all round. */
function nextPoint(points: readonly SkylinePoint[], skyline: SceneWords['skylineDeg']): SkylinePoint {
  const last = points[points.length - 1];
  if (last === undefined) return { azimuthDeg: 270, altitudeDeg: typeof skyline === 'number' ? skyline : 0 };
  return { azimuthDeg: (last.azimuthDeg + 90) % 360, altitudeDeg: last.altitudeDeg };
}

function lampsFields() {
  const w = moveWords().scene;
  const lamps = shown(LAMPS) as SceneWords['lamps'];
  if (lamps === 'none') return nothing;
  const on = typeof lamps === 'object' ? lamps.on : undefined;
  const kind = on === undefined || on === 'always' ? on : 'fromAt' in on ? 'clock' : 'sun';
  const path = [...LAMPS, 'on'];
  return html`
    ${selectControl<string | undefined>({
      path,
      label: w.lampsOn,
      value: kind,
      choices: [
        [undefined, w.inTwilight],
        ['always', w.always],
        ['sun', w.bySun],
        ...(kind === 'clock' ? [['clock', w.byClock] as const] : []),
      ],
      choose: (word) => {
        if (word !== 'clock')
          put(LAMPS, lampsWith(lamps, word === 'sun' ? LAMPS_ON : (word as 'always' | undefined)));
      },
    })}
    ${
      kind === 'sun'
        ? html`<div class="pair">
            ${numberControl({ path: [...path, 'fromSunAltitudeDeg'], label: w.firstLamp, unit: '°' })}
            ${numberControl({ path: [...path, 'toSunAltitudeDeg'], label: w.lastLamp, unit: '°' })}
          </div>`
        : nothing
    }
  `;
}

/** A word alone where nothing more is said of the lamps. */
function lampsWith(lamps: SceneWords['lamps'], on: LampsOn | undefined): SceneWords['lamps'] {
  if (typeof lamps === 'string') return on === undefined ? lamps : { word: lamps, on };
  if ('word' in lamps) return on === undefined ? lamps.word : { word: lamps.word, on };
  const { ev100, share } = lamps;
  return { ev100, share, ...(on === undefined ? {} : { on }) };
}
