// What a picture's file says of how it was taken. Source: docs/sources.md#exif.

import { type FrameLevel, frameOfTags, meanLevel, type TakenFrame } from '@evenfall/core';
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
  const read = frameOfTags(name, tags);
  if (read.kind === 'passed-over') return { kind: 'passed-over', because: { why: read.why } };
  const level = withLevel ? await levelOf(path, bytes) : undefined;
  return level === undefined ? read : { kind: 'ok', frame: { ...read.frame, level } };
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
    return data.length === 0 ? undefined : meanLevel({ srgbPixels: data, channels: 3 });
  } catch {
    return undefined;
  }
}
