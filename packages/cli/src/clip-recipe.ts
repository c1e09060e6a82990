// A preview clip by FFmpeg, a general-purpose video program: the frames in their order, and what is to be done to each, as the
// two files that it reads. In linear light a stop is a factor of two; the curve is sRGB's. Source: docs/sources.md#srgb.

import { dirname, extname, relative, resolve } from 'node:path';
import type { PlanMade, Review } from '@evenfall/core';
import { exactFps } from '@evenfall/core';
import type { OutputFile } from './write-files.js';

/** Pictures wider than this are made smaller: it is a preview. */
const MOST_PIXELS = 1920;
/** What FFmpeg's exposure filter takes at once, stops. */
const MOST_EV = 3;

/**
 * The list of frames at `path`, `clip.ffconcat`, and beside it `clip.filter`.
 *
 * @param pathOf where a frame lies, by its name in the review
 */
export function clipRecipe(
  { frames }: Review,
  { shoot }: Pick<PlanMade, 'shoot'>,
  { path, pathOf }: { readonly path: string; readonly pathOf: (file: string) => string },
): OutputFile[] {
  const shown = frames.filter(({ doubled }) => doubled !== true);
  const fps = exactFps(shoot.clipFps);
  const [over, under] = Number.isInteger(fps) ? [fps, 1] : [Math.round(fps * 1001), 1001];
  const folder = dirname(resolve(path));
  const list = shown.flatMap(({ file, shows = file }) => [
    `file '${relative(folder, resolve(pathOf(shows)))
      .replaceAll('\\', '/')
      .replaceAll("'", "'\\''")}'`,
    `duration ${(under / over).toFixed(6)}`,
  ]);
  // Half a frame ahead, so that rounding never has an offset come a frame late.
  const commands = shown.map(({ file, offsetEv, exposures }, i) => {
    // Where the middle exposure of a bracket is missing, what is shown is another.
    const byEv = exposures?.find((exposure) => exposure.file === file)?.byEv ?? 0;
    const atS = Math.max(0, ((i - 0.5) * under) / over).toFixed(6);
    const [first, rest] = halves(offsetEv - byEv);
    return `${atS} exposure@one exposure ${first}, exposure@two exposure ${rest};`;
  });
  const filter = [
    `settb=${under}/${over},setpts=N`,
    `scale='min(${MOST_PIXELS},trunc(iw/2)*2)':-2`,
    `sendcmd=c='\n${commands.join('\n')}\n'`,
    'zscale=pin=709:tin=iec61966-2-1:p=709:t=linear',
    'format=gbrpf32le',
    'exposure@one=0',
    'exposure@two=0',
    'zscale=m=709:r=limited:t=iec61966-2-1',
    'format=yuv420p',
    `fps=${over}/${under}`,
  ];
  const stem = path.slice(0, path.length - extname(path).length);
  return [
    { path, content: `ffconcat version 1.0\n${list.join('\n')}\n` },
    { path: `${stem}.filter`, content: `${filter.join(',\n')}\n` },
  ];
}

function halves(offsetEv: number): [string, string] {
  const first = Math.min(MOST_EV, Math.max(-MOST_EV, offsetEv));
  const rest = Math.min(MOST_EV, Math.max(-MOST_EV, offsetEv - first));
  return [first.toFixed(4), rest.toFixed(4)];
}
