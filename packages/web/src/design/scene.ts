// What the lens sees: direction, ground, cloud, night and lamps, in words; numbers from a file are kept.

import type { Facing, SceneWords, SurfaceWord } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { loadMoves, moving } from '../moves/load.js';
import { type Choice, numberControl, selectControl } from '../parts/controls.js';
import { inPercent } from '../parts/percent.js';
import { put, putAll, shoot, shown } from '../state/shoot.js';
import { words } from '../words/words.js';

function wordsOf<T extends string>(texts: Readonly<Record<T, string>>): Choice<T>[] {
  return (Object.keys(texts) as T[]).map((word) => [word, texts[word]]);
}

/** Choices in words, and as one more what a file says in numbers. */
function withNumbers<T extends string, N extends object>(
  texts: Readonly<Record<T, string>>,
  value: NoInfer<T> | N,
  inWords: (numbers: N) => string,
): Choice<T | N>[] {
  const list: Choice<T | N>[] = wordsOf(texts);
  return typeof value === 'object' ? [...list, [value, inWords(value)]] : list;
}

type Numbers<T> = Exclude<T, string>;

const percent = (share: number) => `${Math.round(share * 100)} ${words().scene.percent}`;

function nightText(night: Numbers<SceneWords['night']>): string {
  const w = words().scene;
  return 'groundLx' in night
    ? w.nightLx(words().plain(night.groundLx))
    : w.nightMag(words().plain(night.zenithMagArcsec2));
}

export function scenePanel() {
  const w = words().scene;
  const scene = shoot.value.scene;
  const facing = shown(['scene', 'facing']) as Facing;
  const compass = typeof facing === 'object';
  return html`
    ${selectControl<string>({
      path: ['scene', 'facing'],
      label: w.facing,
      value: compass ? 'azimuth' : facing,
      choices: [...wordsOf(w.facings), ['azimuth', w.facingAzimuth]],
      choose: (word) => put(['scene', 'facing'], word === 'azimuth' ? { azimuthDeg: 270 } : word),
    })}
    ${
      compass
        ? numberControl({
            path: ['scene', 'facing', 'azimuthDeg'],
            label: w.azimuth,
            unit: w.azimuthUnit,
            step: 5,
          })
        : nothing
    }
    <div class="pair stack">
      ${numberControl({ path: ['scene', 'viewAltitudeDeg'], label: w.viewAltitude, unit: '°', signed: true })}
      ${numberControl({
        path: ['scene', 'skyShare'],
        label: w.skyShare,
        unit: w.percent,
        step: 5,
        ...inPercent,
      })}
    </div>
    ${numberControl({
      path: ['scene', 'uprightShare'],
      label: w.upright,
      unit: w.uprightUnit,
      step: 5,
      placeholder: '0',
      ...inPercent,
    })}
    <div class="pair">
      ${selectControl<SceneWords['cloud']>({
        path: ['scene', 'cloud'],
        label: w.cloud,
        choices: withNumbers(
          w.clouds,
          shown(['scene', 'cloud']) as SceneWords['cloud'],
          ({ eighths }: Numbers<SceneWords['cloud']>) => w.cloudEighths(words().plain(eighths)),
        ),
      })}
      ${selectControl<SurfaceWord | undefined | number>({
        path: ['scene', 'surface'],
        label: w.surface,
        value: scene.surface ?? (scene.reflectance === 0.18 ? undefined : scene.reflectance),
        choices: [
          [undefined, w.surfaceGrey],
          ...wordsOf(w.surfaces),
          ...(scene.reflectance === undefined || scene.reflectance === 0.18
            ? []
            : [[scene.reflectance, w.reflectance(percent(scene.reflectance))] as const]),
        ],
        choose: (surface) =>
          putAll([
            [['scene', 'surface'], typeof surface === 'string' ? surface : undefined],
            [['scene', 'reflectance'], typeof surface === 'number' ? surface : undefined],
          ]),
      })}
    </div>
    <div class="pair">
      ${selectControl<SceneWords['night']>({
        path: ['scene', 'night'],
        label: w.night,
        choices: withNumbers(w.nights, shown(['scene', 'night']) as SceneWords['night'], nightText),
      })}
      ${selectControl<SceneWords['lamps']>({
        path: ['scene', 'lamps'],
        label: w.lamps,
        choices: withNumbers(
          w.lampsWords,
          shown(['scene', 'lamps']) as SceneWords['lamps'],
          (lamps: Numbers<SceneWords['lamps']>) =>
            'word' in lamps
              ? w.lampsWords[lamps.word]
              : w.lampsEv(words().plain(lamps.ev100), percent(lamps.share)),
        ),
      })}
    </div>
    ${moving.value?.sceneMeanings()}
    <details class="more" @toggle=${loadMoves}>
      <summary>${w.more}</summary>
      ${moving.value?.sceneFields()}
    </details>
  `;
}
