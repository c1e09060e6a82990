// What stands before sun and moon, and when the lamps in the frame come on: rarely asked for, so it comes with this part.

import { LAMPS_ON, rfc3339, type SceneWords, wallToMs, zoneOf } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { idOf, labelled, numberControl, selectControl } from '../parts/controls.js';
import { made } from '../state/plan.js';
import { put, shoot, shown } from '../state/shoot.js';
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
        ['clock', w.byClock],
      ],
      choose: (word) => {
        const chosen =
          word === 'sun' ? LAMPS_ON : word === 'clock' ? byClock() : (word as 'always' | undefined);
        put(LAMPS, lampsWith(lamps, chosen));
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
    ${
      kind === 'clock'
        ? html`<div class="pair">
            ${labelled(
              { path: [...path, 'fromAt'], label: w.lampsAt },
              html`<input
                id=${idOf([...path, 'fromAt'])}
                type="time"
                .value=${live(String(shown([...path, 'fromAt'])).slice(11, 16))}
                @change=${(event: Event) => beginAt([...path, 'fromAt'], (event.target as HTMLInputElement).value)}
              />`,
            )}
            ${numberControl({ path: [...path, 'overMin'], label: w.lampsOver, unit: w.minutes, placeholder: '0' })}
          </div>`
        : nothing
    }
  `;
}

/** What the words chosen for lamps, cloud and night stand for; numbers speak for themselves. */
export function sceneMeanings() {
  const { lamps, cloud, night } = shoot.value.scene;
  const named = typeof lamps === 'object' && 'word' in lamps ? lamps.word : lamps;
  const mean: Readonly<Record<string, string>> = moveWords().scene.mean;
  const texts = [cloud, night, named].flatMap((word) => (typeof word === 'string' ? (mean[word] ?? []) : []));
  return html`${texts.map((text) => html`<p class="help">${text}</p>`)}`;
}

/** In the middle of the shoot, on a quarter of an hour: whoever chooses the clock knows better. */
function byClock(): LampsOn {
  const { summary } = made.peek() ?? {};
  const middleMs = summary ? (Date.parse(summary.startAt) + Date.parse(summary.endAt)) / 2 : nightfallMs();
  const fromAt = rfc3339(Math.round(middleMs / 900_000) * 900_000, zoneOf(shoot.peek().place));
  return { fromAt, overMin: 0 };
}

/** Where there has been no plan: six in the evening. */
function nightfallMs(): number {
  const { place, date } = shoot.peek();
  return wallToMs(date, '18:00', zoneOf(place))[0] ?? Date.parse(`${date}T18:00:00Z`);
}

/** The clock time nearest to the one there was: after midnight it is of the day after. */
function beginAt(path: readonly string[], time: string): void {
  const zone = zoneOf(shoot.peek().place);
  const wasMs = Date.parse(String(shown(path)));
  const days = [-1, 0, 1].map((day) => rfc3339(wasMs + day * 86_400_000, zone).slice(0, 10));
  const found = time === '' ? [] : days.flatMap((date) => wallToMs(date, time, zone));
  const nearest = found.sort((a, b) => Math.abs(a - wasMs) - Math.abs(b - wasMs))[0];
  if (nearest !== undefined) put(path, rfc3339(nearest, zone));
}

/** A word alone where nothing more is said of the lamps. */
function lampsWith(lamps: SceneWords['lamps'], on: LampsOn | undefined): SceneWords['lamps'] {
  if (typeof lamps === 'string') return on === undefined ? lamps : { word: lamps, on };
  if ('word' in lamps) return on === undefined ? lamps.word : { word: lamps.word, on };
  const { ev100, share } = lamps;
  return { ev100, share, ...(on === undefined ? {} : { on }) };
}
