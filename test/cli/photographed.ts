// An evening photographed: JPEG by FFmpeg, Exif by exiftool, so that none of it is of our own writing. What the frames show is
// made up here: a scene of some parts, in linear light, exposed by APEX and put on the curve of sRGB (IEC 61966-2-1).

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { PlanFrame } from '@evenfall/core';
import { needed } from '../../packages/tools/programs.mjs';

needed('ffmpeg', 'ffmpeg');
needed('exiftool', 'libimage-exiftool-perl');

export const WIDTH = 64;
export const HEIGHT = 48;

/** One press of the shutter. */
export interface Shot {
  readonly name: string;
  /** Local time as Exif writes it, "2026:10:14 18:07:31". */
  readonly time: string;
  readonly setting: Pick<PlanFrame, 'shutter' | 'iso' | 'aperture' | 'settingEv100'>;
  /** Light before the lens. */
  readonly sceneEv100: number;
  /** More tags, by name. */
  readonly tags?: Readonly<Record<string, string>>;
}

/** Relative light of a pixel: a sky that is brighter at the horizon, dark ground below; its mean is 1. */
function relativeLight(x: number, y: number): number {
  const sky = y < 0.6 ? 0.7 + y : 0.25 + 0.2 * Math.sin(12 * x) ** 2;
  return sky / 0.8;
}

const MEAN = (() => {
  let sum = 0;
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++) sum += relativeLight(x / WIDTH, y / HEIGHT);
  return sum / WIDTH / HEIGHT;
})();

const encoded = (light: number) => {
  const v = Math.min(1, light);
  return Math.round(255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055));
};

/** Grey level of a frame exposed as metered: the mean of linear light. */
export const GREY = 0.12;

function pixelsOf({ sceneEv100, setting }: Shot): Buffer {
  const level = (GREY * 2 ** (sceneEv100 - setting.settingEv100)) / MEAN;
  const pixels = Buffer.alloc(WIDTH * HEIGHT * 3);
  for (let y = 0; y < HEIGHT; y++) {
    for (let x = 0; x < WIDTH; x++) {
      pixels.fill(
        encoded(level * relativeLight(x / WIDTH, y / HEIGHT)),
        3 * (y * WIDTH + x),
        3 * (y * WIDTH + x) + 3,
      );
    }
  }
  return pixels;
}

/** Runs a program that must succeed. */
export function ran(program: string, args: readonly string[], input?: string | Buffer): string {
  const { status, stderr, stdout, error } = spawnSync(program, args, {
    ...(input === undefined ? {} : { input }),
    maxBuffer: 2 ** 28,
  });
  if (error || status !== 0) throw new Error(`${program}: ${error?.message ?? stderr.toString()}`);
  return stdout.toString();
}

/** Writes the frames into a folder, JPEG or what the ending says that FFmpeg and exiftool can write. */
export function photographed(folder: string, shots: readonly Shot[]): void {
  const work = mkdtempSync(join(tmpdir(), 'evenfall-shots-'));
  const raw = ['-f', 'rawvideo', '-pix_fmt', 'rgb24', '-s', `${WIDTH}x${HEIGHT}`, '-i', '-'];
  ran(
    'ffmpeg',
    ['-v', 'error', ...raw, '-q:v', '1', join(work, '%05d.jpg')],
    Buffer.concat(shots.map(pixelsOf)),
  );
  const names = [...new Set(shots.flatMap(({ tags = {} }) => Object.keys(tags)))];
  const lines = shots.map(({ name, time, setting: { shutter, iso, aperture }, tags = {} }, i) => {
    const from = join(work, `${String(i + 1).padStart(5, '0')}.jpg`);
    return [
      ...[`-DateTimeOriginal=${time}`, `-ExposureTime=${shutter}`, `-ISO=${iso}`, `-FNumber=${aperture}`],
      ...names.flatMap((tag) => (tags[tag] === undefined ? [] : [`-${tag}=${tags[tag]}`])),
      ...['-o', join(folder, name), from, '-execute'],
    ].join('\n');
  });
  const args = join(work, 'args');
  writeFileSync(args, `${lines.join('\n')}\n`);
  ran('exiftool', ['-q', '-@', args]);
  rmSync(work, { recursive: true });
}

/** "2026:10:14 18:07:31" of "2026-10-14T18:07:31+01:00", so many seconds later. */
export function exifTime(at: string, laterS = 0): string {
  const local = new Date(Date.parse(`${at.slice(0, 19)}Z`) + 1000 * laterS).toISOString();
  return local.slice(0, 19).replaceAll('-', ':').replace('T', ' ');
}
