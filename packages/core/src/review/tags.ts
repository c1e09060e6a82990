// What a picture's tags say of how it was taken. Whoever reads the tags gives them as they are written.
// Source: docs/sources.md#exif.

import type { FrameLevel } from '../follow/frame-level.js';
import { readingOfFrame } from '../follow/frame-reading.js';
import { aGroup, hold, text } from '../hold.js';
import type { TakenFrame } from './types.js';

/** A frame, or what its file does not tell. */
export type TagsRead =
  | {
      readonly kind: 'ok';
      /** Without its level. */
      readonly frame: TakenFrame;
    }
  | {
      readonly kind: 'passed-over';
      /** No date of its own, or no shutter or ISO. */
      readonly why: 'no-time' | 'no-exposure';
    };

type Tags = Readonly<Record<string, unknown>>;

const MOST_CAMERA = 200;

/**
 * A frame from the tags of its file: Exif by its names, numbers as numbers and dates as they are written, for a date that a
 * reader has turned into an instant is in the zone of the machine. Unknown tags and values that make no sense are passed
 * over; never throws. Source: Exif 2.32, CIPA DC-008.
 *
 * @param file its name
 * @param tags by name; `ExposureTime` in seconds, `ShutterSpeedValue` and `ApertureValue` in stops
 * @returns the frame, or what the tags lack
 * @example
 * ```ts
 * import { frameOfTags } from '@evenfall/core';
 *
 * const tags = { DateTimeOriginal: '2026:10:14 18:07:31', SubSecTimeOriginal: '25', ExposureTime: 0.008, ISO: 100, FNumber: 8 };
 * frameOfTags('IMG_1.JPG', tags);
 * // → { kind: 'ok', frame: { file: 'IMG_1.JPG', at: '2026-10-14T18:07:31.25', shutterS: 0.008, iso: 100, fNumber: 8 } }
 * frameOfTags('IMG_1.JPG', { ...tags, ISO: undefined }); // → { kind: 'passed-over', why: 'no-exposure' }
 * ```
 */
export function frameOfTags(file: string, tags: Readonly<Record<string, unknown>>): TagsRead {
  hold('file', file, text);
  hold('tags', tags, aGroup);
  const at = timeOf(tags);
  if (at === undefined) return { kind: 'passed-over', why: 'no-time' };
  const shutterS = positive(tags.ExposureTime) ?? apex(tags.ShutterSpeedValue, -1);
  const iso = isoOf(tags);
  if (shutterS === undefined || iso === undefined) return { kind: 'passed-over', why: 'no-exposure' };
  const fNumber = positive(tags.FNumber) ?? apex(tags.ApertureValue, 0.5);
  const camera = [tags.Make, tags.Model, tags.BodySerialNumber ?? tags.SerialNumber]
    .filter((part) => typeof part === 'string')
    .map((part) => part.replaceAll(/\p{Cc}/gu, '').trim())
    .join(' ')
    .slice(0, MOST_CAMERA);
  return {
    kind: 'ok',
    frame: {
      ...{ file, at, shutterS, iso },
      ...(fNumber === undefined ? {} : { fNumber }),
      ...(camera === '' ? {} : { camera }),
    },
  };
}

/** "2026:10:14 18:07:31", with part of a second and zone where there are any, as RFC 3339 writes it. */
function timeOf(tags: Tags): string | undefined {
  const pairs = [
    ['DateTimeOriginal', 'SubSecTimeOriginal', 'OffsetTimeOriginal'],
    ['CreateDate', 'SubSecTimeDigitized', 'OffsetTimeDigitized'],
    ['DateTimeDigitized', 'SubSecTimeDigitized', 'OffsetTimeDigitized'],
  ] as const;
  for (const [time, part, zone] of pairs) {
    const [, date, clock] =
      /^(\d{4}[:-]\d{2}[:-]\d{2})[ T](\d{2}:\d{2}:\d{2})/.exec(textOf(tags[time])) ?? [];
    if (date === undefined || clock === undefined || date.startsWith('0000')) continue;
    const digits = /^\d{1,9}/.exec(textOf(tags[part]).trim())?.[0];
    const [offset = ''] = /^[+-]\d{2}:\d{2}$/.exec(textOf(tags[zone]).trim()) ?? [];
    return `${date.replaceAll(':', '-')}T${clock}${digits === undefined ? '' : `.${digits}`}${offset}`;
  }
  return undefined;
}

/** Above 65535 the old tag holds just that, and a newer one the number. */
function isoOf(tags: Tags): number | undefined {
  const iso = positive(tags.ISO);
  if (iso !== undefined && iso < 65_535) return iso;
  return (
    positive(tags.RecommendedExposureIndex) ??
    positive(tags.StandardOutputSensitivity) ??
    positive(tags.ISOSpeed) ??
    iso
  );
}

const textOf = (value: unknown) =>
  typeof value === 'string' ? value : typeof value === 'number' ? String(value) : '';

function positive(value: unknown): number | undefined {
  const number = Array.isArray(value) ? value[0] : value;
  return typeof number === 'number' && number > 0 && Number.isFinite(number) ? number : undefined;
}

/** Of a tag that counts stops: 2^(stops · factor). */
function apex(value: unknown, factor: number): number | undefined {
  return typeof value === 'number' && Math.abs(value) < 40 ? 2 ** (value * factor) : undefined;
}

/**
 * A level without its pixels: those of a whole evening would fill the memory.
 *
 * @param level of one frame
 * @returns its mean and whether it is clipped, which is all that a review asks of it
 * @throws RangeError on a level that is none: no pixels, or values out of range
 * @example
 * ```ts
 * import { meanLevel } from '@evenfall/core';
 *
 * meanLevel({ srgbPixels: [255, 255, 255, 0, 0, 0], channels: 3 }); // → { mean: 0.5, clippedShare: 1 }
 * ```
 */
export function meanLevel(level: FrameLevel): FrameLevel {
  const { ev100, bound } = readingOfFrame(level, { atMs: 0, settingEv100: 0 }, { greyLevel: 0.5 });
  return { mean: 0.5 * 2 ** ev100, clippedShare: bound === 'atLeast' ? 1 : 0 };
}
