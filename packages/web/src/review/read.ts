// Reads of each file how it was taken, and where wanted how bright it came out. Nothing leaves the device.

import { type FrameLevel, frameOfTags, meanLevel, type TakenFrame } from '@evenfall/core';
import exifr from 'exifr';
import type { PhotoFile } from './files.js';

export type PassedOver = 'cannot-read' | 'no-picture' | 'no-time' | 'no-exposure';

export interface FramesRead {
  readonly frames: readonly TakenFrame[];
  readonly passedOver: readonly { readonly name: string; readonly why: PassedOver }[];
}

/** Metadata stand at the beginning of nearly every file; those of some TIFF at its end. */
const FIRST_BYTES = 160_000;
const MOST_BYTES = 600_000_000;
/** Larger pictures without a small one inside are not decoded: it would take as long as the evening did. */
const MOST_PIXELS = 3_000_000;
const AT_ONCE = 8;

/** @param isWanted told how many are done, and asked whether the rest is wanted still */
export async function readFrames(
  files: readonly PhotoFile[],
  withLevels: boolean,
  isWanted: (done: number) => boolean,
): Promise<FramesRead> {
  const frames: TakenFrame[] = [];
  const passedOver: { name: string; why: PassedOver }[] = [];
  let next = 0;
  let done = 0;
  const work = async () => {
    for (let file = files[next++]; file !== undefined; file = files[next++]) {
      const read = await readFrame(file, withLevels);
      if (typeof read === 'string') passedOver.push({ name: file.name, why: read });
      else frames.push(read);
      if (!isWanted(++done)) return;
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
  return { frames, passedOver: passedOver.sort((a, b) => (a.name < b.name ? -1 : 1)) };
}

async function readFrame({ name, file }: PhotoFile, withLevels: boolean): Promise<TakenFrame | PassedOver> {
  let bytes: Uint8Array;
  try {
    bytes = await beginningOf(file, FIRST_BYTES);
  } catch {
    return 'cannot-read';
  }
  let tags = await tagsOf(bytes);
  const isTold = tags?.ExposureTime !== undefined || tags?.ShutterSpeedValue !== undefined;
  if (!isTold && file.size > FIRST_BYTES) {
    bytes = await beginningOf(file, MOST_BYTES).catch(() => bytes);
    tags = await tagsOf(bytes);
  }
  if (tags === undefined) return 'no-picture';
  const read = frameOfTags(name, tags);
  if (read.kind === 'passed-over') return read.why;
  const level = withLevels ? await levelOf(file, bytes) : undefined;
  return level === undefined ? read.frame : { ...read.frame, level };
}

async function beginningOf(file: File, most: number): Promise<Uint8Array> {
  return new Uint8Array(await file.slice(0, most).arrayBuffer());
}

/** Undefined where the bytes are no picture, or hold none of these. */
async function tagsOf(bytes: Uint8Array): Promise<Readonly<Record<string, unknown>> | undefined> {
  try {
    // Dates as they are written: revived ones would be in the zone of this device.
    return (
      (await exifr.parse(bytes, {
        ...{ tiff: true, exif: true, gps: false, xmp: false, icc: false, iptc: false },
        ...{ reviveValues: false, translateValues: false, mergeOutput: true },
      })) ?? {}
    );
  } catch {
    return undefined;
  }
}

let canvas: HTMLCanvasElement | undefined;

/** Off the small picture inside, else off the JPEG itself. */
async function levelOf(file: File, beginning: Uint8Array): Promise<FrameLevel | undefined> {
  const inside = await exifr.thumbnail(beginning).catch(() => undefined);
  if (inside === undefined && !(beginning[0] === 0xff && beginning[1] === 0xd8)) return undefined;
  try {
    const jpeg = inside === undefined ? file : new Blob([new Uint8Array(inside)], { type: 'image/jpeg' });
    // The numbers as they stand in the file, whatever the screen is.
    const picture = await createImageBitmap(jpeg, { colorSpaceConversion: 'none' });
    const { width, height } = picture;
    if (width * height > MOST_PIXELS) return undefined;
    canvas ??= document.createElement('canvas');
    canvas.width = width;
    canvas.height = height;
    const pen = canvas.getContext('2d', { willReadFrequently: true });
    pen?.drawImage(picture, 0, 0);
    picture.close();
    const pixels = pen?.getImageData(0, 0, width, height).data;
    return pixels && meanLevel({ srgbPixels: pixels, channels: 4 });
  } catch {
    return undefined;
  }
}
