// What a picture's file says of how it was taken. Source: docs/sources.md#exif.

import { type FrameLevel, readingOfFrame, type TakenFrame } from '@evenfall/core';
import exifr from 'exifr';
import { decode } from 'jpeg-js';
import type { PassedOver } from './passed-over.js';
import { beginningOf, type PhotoFile } from './photo-files.js';
import { systemFault } from './system-error.js';

/** Metadata stand at the beginning of nearly every file; those of some TIFF at its end. */
const FIRST_BYTES = 160_000;
const MOST_BYTES = 600_000_000;
/** Larger pictures without a small one inside are not decoded: a second each would be an hour for an evening. */
const MOST_MEGAPIXELS = 3;

type Tags = Readonly<Record<string, unknown>>;

/** A frame, or why the file is passed over. */
export type PhotoRead =
  | { readonly kind: 'ok'; readonly frame: TakenFrame }
  | { readonly kind: 'passed-over'; readonly because: PassedOver };

/** @param withLevel whether its brightness is wanted too, off the small picture inside where it has one */
export async function readPhoto({ path, name }: PhotoFile, withLevel: boolean): Promise<PhotoRead> {
  let bytes: Uint8Array;
  let tags: Tags | undefined;
  try {
    bytes = await beginningOf(path, FIRST_BYTES);
    tags = await tagsOf(bytes);
    if (
      bytes.length === FIRST_BYTES &&
      tags?.ExposureTime === undefined &&
      tags?.ShutterSpeedValue === undefined
    ) {
      bytes = await beginningOf(path, MOST_BYTES);
      tags = await tagsOf(bytes);
    }
  } catch (error) {
    return { kind: 'passed-over', because: { why: 'cannot-read', fault: systemFault(error) } };
  }
  if (tags === undefined) return { kind: 'passed-over', because: { why: 'no-picture' } };
  const at = timeOf(tags);
  if (at === undefined) return { kind: 'passed-over', because: { why: 'no-time' } };
  const shutterS = positive(tags.ExposureTime) ?? apex(tags.ShutterSpeedValue, -1);
  const iso = isoOf(tags);
  if (shutterS === undefined || iso === undefined) {
    return { kind: 'passed-over', because: { why: 'no-exposure' } };
  }
  const fNumber = positive(tags.FNumber) ?? apex(tags.ApertureValue, 0.5);
  const level = withLevel ? await levelOf(path, bytes) : undefined;
  const camera = [tags.Make, tags.Model, tags.BodySerialNumber ?? tags.SerialNumber]
    .filter((part) => typeof part === 'string')
    .map((part) => part.replaceAll(/\p{Cc}/gu, '').trim())
    .join(' ')
    .slice(0, 200);
  return {
    kind: 'ok',
    frame: {
      ...{ file: name, at, shutterS, iso },
      ...(fNumber === undefined ? {} : { fNumber }),
      ...(level === undefined ? {} : { level }),
      ...(camera === '' ? {} : { camera }),
    },
  };
}

/** Undefined where the bytes are no picture, or hold none of these. */
async function tagsOf(bytes: Uint8Array): Promise<Tags | undefined> {
  try {
    // Dates as they are written: revived ones would be in the zone of this machine.
    const parsed: unknown = await exifr.parse(bytes, {
      ...{ tiff: true, exif: true, gps: false, xmp: false, icc: false, iptc: false },
      ...{ reviveValues: false, translateValues: false, mergeOutput: true },
    });
    return typeof parsed === 'object' && parsed !== null ? (parsed as Tags) : {};
  } catch {
    return undefined;
  }
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

/** A level without its pixels: those of a whole evening would fill the memory. */
function meanOf(level: FrameLevel): FrameLevel {
  const { ev100, bound } = readingOfFrame(level, { atMs: 0, settingEv100: 0 }, { greyLevel: 0.5 });
  return { mean: 0.5 * 2 ** ev100, clippedShare: bound === 'atLeast' ? 1 : 0 };
}

async function levelOf(path: string, beginning: Uint8Array): Promise<FrameLevel | undefined> {
  try {
    let jpeg: Uint8Array | undefined;
    try {
      jpeg = await exifr.thumbnail(beginning);
    } catch {
      // None inside.
    }
    jpeg ??= await beginningOf(path, MOST_BYTES);
    if (jpeg[0] !== 0xff || jpeg[1] !== 0xd8) return undefined;
    const { data } = decode(jpeg, {
      ...{ useTArray: true, formatAsRGBA: false },
      ...{ maxResolutionInMP: MOST_MEGAPIXELS, maxMemoryUsageInMB: 200 },
    });
    return data.length === 0 ? undefined : meanOf({ srgbPixels: data, channels: 3 });
  } catch {
    return undefined;
  }
}
