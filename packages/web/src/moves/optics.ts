// The lens and the part of the sensor that the clip uses.

import { fieldOfViewDeg, type Sensor } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { type Choice, numberControl, selectControl, tickControl } from '../parts/controls.js';
import { put, putAll, shoot, shown } from '../state/shoot.js';
import { words } from '../words/words.js';
import { moveWords } from './words.js';

/** Sizes that cameras have, by the key of their name. Source: docs/sources.md#sensor-sizes. */
const SIZES = [
  ['full', 36, 24],
  ['wideFull', 36, 20.25],
  ['crop15', 23.5, 15.6],
  ['crop16', 22.3, 14.9],
  ['fourThirds', 17.3, 13],
  ['inch', 13.2, 8.8],
] as const;

const PATH = ['camera', 'sensor'];
const FULL = { widthMm: 36, heightMm: 24 };

/** A lens alone tells nothing: the first number of it brings the common sensor along. */
function putFocal(focalMm: unknown): void {
  const sensor = shown(PATH);
  putAll([
    [['camera', 'lens'], focalMm === undefined ? undefined : { focalMm }],
    ...(focalMm !== undefined && sensor === undefined ? [[PATH, FULL] as const] : []),
  ]);
}

export function opticsFields() {
  const w = moveWords().lens;
  const sensor = shown(PATH) as Partial<Sensor> | undefined;
  const { widthMm = 0, heightMm = 0 } = sensor ?? {};
  const upright = heightMm > widthMm;
  const [long, short] = upright ? [heightMm, widthMm] : [widthMm, heightMm];
  const known = SIZES.find(([, width, height]) => width === long && height === short);
  const choices: Choice<string>[] = [
    ['', words().notSet],
    ...SIZES.map(([name]) => [name, w.sizes[name]] as const),
    ...(sensor === undefined || known !== undefined ? [] : [['own', w.ownSize] as const]),
  ];
  return html`<fieldset class="control group">
    <legend>${w.title}</legend>
    <div class="pair stack">
      ${numberControl({
        path: ['camera', 'lens', 'focalMm'],
        label: w.focal,
        unit: w.mm,
        placeholder: words().notSet,
        choose: putFocal,
      })}
      ${selectControl<string>({
        path: PATH,
        label: w.sensor,
        value: sensor === undefined ? '' : (known?.[0] ?? 'own'),
        choices,
        choose: (name) => {
          const size = SIZES.find(([key]) => key === name);
          if (name === '') put(PATH, undefined);
          if (size === undefined) return;
          const [width, height] = upright ? [size[2], size[1]] : [size[1], size[2]];
          put(PATH, { ...sensor, widthMm: width, heightMm: height });
        },
      })}
    </div>
    <p class="help">${viewText() ?? w.why}</p>
    ${
      sensor === undefined
        ? nothing
        : html`<details class="more">
            <summary>${moveWords().more}</summary>
            <div class="fields">
              ${tickControl({
                path: [...PATH, 'upright'],
                label: w.upright,
                value: upright,
                choose: () => put(PATH, { ...sensor, widthMm: heightMm, heightMm: widthMm }),
              })}
              <div class="pair">
                ${numberControl({ path: [...PATH, 'widthMm'], label: w.width, unit: w.mm, store: some })}
                ${numberControl({ path: [...PATH, 'heightMm'], label: w.height, unit: w.mm, store: some })}
              </div>
              ${numberControl({
                path: [...PATH, 'widthPx'],
                label: w.pixels,
                unit: 'px',
                placeholder: words().notSet,
                help: w.pixelsHelp,
              })}
            </div>
          </details>`
    }
  </fieldset>`;
}

/** An emptied field stays empty, and wrong, until a number is in it: its old value does not come back. */
export const some = (value: unknown) => value ?? '';

function viewText(): string | undefined {
  const { lens, sensor } = shoot.value.camera;
  if (lens === undefined || sensor === undefined) return undefined;
  const view = (side: number) => words().number(fieldOfViewDeg(side, lens.focalMm), 1);
  return moveWords().lens.view(view(sensor.widthMm), view(sensor.heightMm));
}
