// The review command on files that other programs wrote: FFmpeg the pictures, exiftool what they say of themselves.

import { copyFileSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type PlanFrame, type Review, writePlan } from '@evenfall/core';
import Papa from 'papaparse';
import { beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { progressOf } from '../../packages/cli/src/progress.js';
import { published, schemaReader } from '../reference/json-schema.js';
import { exifTime, GREY, HEIGHT, photographed, ran, type Shot, WIDTH } from './photographed.js';
import { EVENING, evenfall, eveningPlan, folder, IMPOSSIBLE } from './run.js';

const plan = eveningPlan();
const nameOf = (frame: number) => `DSC0${String(9950 + frame).slice(-4)}.JPG`;

/** The settings with cue 3 two frames late and cue 8 never done. */
function withMistakes(frame: number): PlanFrame {
  let setting = plan.frames[0]!;
  for (const [index, cue] of plan.cues.entries()) {
    const late = { 2: 2, 7: Number.POSITIVE_INFINITY }[index] ?? 0;
    if (frame >= cue.frame + late) setting = plan.frames[cue.frame]!;
  }
  return setting;
}

const shot = (frame: PlanFrame, setting: PlanFrame, more: Partial<Shot> = {}): Shot => ({
  name: nameOf(frame.frame),
  time: exifTime(frame.at),
  setting,
  sceneEv100: frame.sceneEv100,
  ...more,
});

let dir: { at: (name: string) => string };
let frames = '';
beforeAll(() => {
  dir = keptFolder();
  frames = dir.at('frames');
  mkdirSync(frames);
  writeFileSync(dir.at('plan.json'), writePlan(plan));
  photographed(
    frames,
    plan.frames.map((frame) => shot(frame, withMistakes(frame.frame))),
  );
}, 600_000);

/** A folder for all tests of this file. */
function keptFolder() {
  const path = ran('mktemp', ['-d']).trim();
  return { at: (name: string) => join(path, name) };
}

const review = async (...more: string[]) => {
  const { status, out, err } = await evenfall(['review', dir.at('plan.json'), frames, '--json', ...more]);
  expect({ status, err }).toEqual({ status: 0, err: '' });
  return JSON.parse(out) as Review;
};

describe('a folder of frames', () => {
  test('is read for what the files say, and the counter that starts over changes no order', async () => {
    const found = await review();
    expect(schemaReader(published('review'))(found)).toEqual([]);
    expect(found.frames.map(({ file }) => file)).toEqual(plan.frames.map(({ frame }) => nameOf(frame)));
    expect(found.missingFrames).toEqual([]);
    const off = found.cues.filter(({ lateS }) => lateS !== 0);
    expect(off.map(({ cue, lateS }) => [cue, lateS])).toEqual([
      [3, 120],
      [8, null],
    ]);
    const stands = found.frames[plan.cues[2]!.frame]!;
    expect(stands.settingEv100).toBeCloseTo(withMistakes(plan.cues[2]!.frame).settingEv100, 9);
  });

  test('is told to a person, in either language', async () => {
    const english = await evenfall(['review', dir.at('plan.json'), frames]);
    expect(english.out).toContain('Slipway & gulls');
    expect(english.out).toMatch(/^ +3 {2}.* 120 s late$/m);
    expect(english.out).toMatch(/^ +8 {2}.* never$/m);
    expect(english.out).toContain('warning: Cue 8 was never done.');
    const german = await evenfall(['review', dir.at('plan.json'), frames, '--language', 'de']);
    expect(german.out).toContain('Warnung: Einsatz 8 wurde nie ausgeführt.');
    for (const line of [...english.out.split('\n'), ...german.out.split('\n')]) {
      expect(line.length).toBeLessThanOrEqual(80);
    }
  });

  test('gives offsets by file name, as a table that others read', async () => {
    const { frames: found } = await review();
    const { out } = await evenfall(['review', dir.at('plan.json'), frames, '-o', dir.at('offsets.csv')]);
    expect(out).toBe(`wrote ${dir.at('offsets.csv')}\n`);
    const { data, errors } = Papa.parse(readFileSync(dir.at('offsets.csv'), 'utf8'), {
      header: true,
      skipEmptyLines: true,
    });
    expect(errors).toEqual([]);
    expect(data).toHaveLength(found.length);
    for (const [i, row] of data.entries()) {
      expect(row.file).toBe(found[i]!.file);
      expect(Math.abs(Number(row.offsetEv) - found[i]!.offsetEv)).toBeLessThanOrEqual(0.0005);
    }
  });

  test('is drawn', async () => {
    const { status } = await evenfall(['review', dir.at('plan.json'), frames, '-o', dir.at('review.svg')]);
    expect(status).toBe(0);
    const svg = readFileSync(dir.at('review.svg'), 'utf8');
    expect(svg).toContain('2 cues not on time');
    expect(svg.match(/<circle [^>]*fill="none"/g)).toHaveLength(2);
  });

  test('is opened for reading alone', async () => {
    const before = statSync(join(frames, nameOf(0)));
    await review('--levels');
    const { mtimeMs, size } = statSync(join(frames, nameOf(0)));
    expect({ mtimeMs, size }).toEqual({ mtimeMs: before.mtimeMs, size: before.size });
  });

  test('read for its brightness has the light as it was', async () => {
    const found = await review('--levels');
    expect(found.summary.lightFrom).toBe('levels');
    // The scene's mean is 0.12 of white where it is exposed as metered: log2 (0.12 / 0.18) below grey.
    const clear = found.frames.filter(({ clipped }) => clipped !== true);
    expect(clear.length).toBeGreaterThan(90);
    const off = clear.map(({ readEv100, frame }) => readEv100! - plan.frames[frame!]!.sceneEv100);
    for (const ev of off) expect(Math.abs(ev - Math.log2(GREY / 0.18))).toBeLessThan(0.05);
    expect(found.forecast!.offsetEv).toBeCloseTo(Math.log2(GREY / 0.18), 1);
  });
});

describe('what the evening taught', () => {
  test('goes into the next shoot at that place as readings', async () => {
    const at = folder({ 'next.yaml': EVENING.replace('2026-09-12', '2026-09-19') });
    const argv = ['review', dir.at('plan.json'), frames, '--levels', '--next', at.at('next.yaml')];
    const { status, err } = await evenfall([...argv, '-o', at.at('readings.yaml')]);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    const text = readFileSync(at.at('readings.yaml'), 'utf8');
    const { readings } = parse(text) as { readings: { at: string; ev100: number }[] };
    expect(readings.length).toBeGreaterThan(10);
    expect(readings.every((reading) => reading.at.startsWith('2026-09-19T'))).toBe(true);
    writeFileSync(at.at('both.yaml'), `${EVENING.replace('2026-09-12', '2026-09-19')}${text}`);
    const planned = await evenfall(['plan', at.at('both.yaml'), '--json']);
    expect({ status: planned.status, err: planned.err }).toEqual({ status: 0, err: '' });
  });

  test.each([
    { change: ['longitudeDeg: 9.92', 'longitudeDeg: 8.5'], levels: true, said: 'another place' },
    { change: ['intervalS: 60', 'intervalS: 60'], levels: false, said: 'the light was not read' },
    {
      change: ['intervalS: 60', 'intervalS: 60\nspan: { fromSunAltitudeDeg: 30, toSunAltitudeDeg: 20 }'],
      levels: true,
      said: 'passes none of the altitudes',
    },
  ])('or says why not: $said', async ({ change: [from, to], levels, said }) => {
    const at = folder({ 'next.yaml': EVENING.replace(from!, to!) });
    const argv = [
      'review',
      dir.at('plan.json'),
      frames,
      ...(levels ? ['--levels'] : []),
      '--next',
      at.at('next.yaml'),
    ];
    const { status, err } = await evenfall([...argv, '-o', at.at('readings.yaml')]);
    expect(status).toBe(1);
    expect(err).toContain(`nothing written: `);
    expect(err).toContain(said);
  });
});

describe('the preview clip', () => {
  /** Mean linear light of every frame of a clip, sRGB undone. */
  const meansOf = (clip: string) => {
    const raw = ran('ffmpeg', [
      '-v',
      'error',
      '-i',
      clip,
      '-f',
      'rawvideo',
      '-pix_fmt',
      'gray',
      `${clip}.raw`,
    ]);
    expect(raw).toBe('');
    const pixels = readFileSync(`${clip}.raw`);
    const size = WIDTH * HEIGHT;
    return Array.from({ length: pixels.length / size }, (_, i) => {
      let sum = 0;
      for (let k = i * size; k < (i + 1) * size; k++) {
        const v = pixels[k]! / 255;
        sum += v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
      }
      return sum / size;
    });
  };

  test('made by the documented command follows the target within 0.05 stop', async () => {
    const found = await review();
    const { out } = await evenfall(['review', dir.at('plan.json'), frames, '-o', dir.at('clip.ffconcat')]);
    expect(out).toBe(`wrote ${dir.at('clip.ffconcat')}, ${dir.at('clip.filter')}\n`);
    const documented = readFileSync(new URL('../../docs/review.md', import.meta.url), 'utf8');
    const command = /^ffmpeg .* clip\.mp4$/m.exec(documented)![0];
    ran('sh', ['-c', `cd ${dir.at('.')} && ${command} -y -loglevel error`]);
    const means = meansOf(dir.at('clip.mp4'));
    expect(means).toHaveLength(plan.frames.length);
    let compared = 0;
    let worstBefore = 0;
    for (const [i, { targetEv100, settingEv100, beyondEv }] of found.frames.entries()) {
      const scene = plan.frames[i]!.sceneEv100;
      // White in the brightest part of the frame, as it was taken or as it is shown.
      const brightest = GREY * 1.9 * 2 ** Math.max(scene - settingEv100, scene - targetEv100);
      if (brightest > 0.95 || beyondEv !== undefined) continue;
      compared++;
      const shownEv = Math.log2(means[i]! / GREY);
      expect(Math.abs(shownEv - (scene - targetEv100)), `frame ${i}`).toBeLessThan(0.05);
      worstBefore = Math.max(worstBefore, Math.abs(settingEv100 - targetEv100));
    }
    expect(compared).toBeGreaterThan(60);
    expect(worstBefore).toBeGreaterThan(0.5);
    const rate = ran('ffprobe', [
      '-v',
      'error',
      '-show_entries',
      'stream=r_frame_rate',
      '-of',
      'csv=p=0',
      dir.at('clip.mp4'),
    ]);
    expect(rate.trim()).toBe('24/1');
  });
});

describe('files of other kinds', () => {
  test('TIFF, DNG by its ending, HEIF; parts of a second, a zone, another camera', async () => {
    const other = dir.at('kinds');
    mkdirSync(other);
    const [first, second, third, fourth] = plan.frames as [PlanFrame, PlanFrame, PlanFrame, PlanFrame];
    photographed(dir.at('kinds'), [
      shot(first, first, { tags: { Model: 'One' } }),
      shot(second, second, {
        tags: { Model: 'One', SubSecTimeOriginal: '25', OffsetTimeOriginal: '+02:00' },
      }),
      shot(third, third, { tags: { Model: 'One' } }),
      shot(fourth, fourth, { tags: { Model: 'Two' } }),
    ]);
    const source = join(other, nameOf(2));
    const exif = ['-q', '-overwrite_original', '-tagsfromfile', source, '-exif:all'];
    for (const [name, coding] of [
      ['three.tif', []],
      ['three.avif', ['-c:v', 'libaom-av1', '-still-picture', '1']],
    ] as const) {
      ran('ffmpeg', ['-v', 'error', '-i', source, ...coding, join(other, name)]);
      ran('exiftool', [...exif, join(other, name)]);
    }
    copyFileSync(join(other, 'three.tif'), join(other, 'three.dng'));
    writeFileSync(join(other, 'broken.jpg'), readFileSync(source).subarray(0, 150));
    writeFileSync(join(other, 'notes.txt'), 'not a picture');
    ran('exiftool', ['-q', '-ISO=', '-o', join(other, 'no-iso.jpg'), source]);
    const { status, out, err } = await evenfall(['review', dir.at('plan.json'), other, '--json']);
    expect(status).toBe(0);
    expect(err.trim().split('\n')).toEqual([
      expect.stringMatching(/broken\.jpg: passed over: /),
      expect.stringMatching(/no-iso\.jpg: passed over: it does not say its shutter and ISO$/),
    ]);
    const { frames: found, notes } = JSON.parse(out) as Review;
    const files = found.map(({ file }) => file);
    expect(files.sort()).toEqual([nameOf(0), nameOf(1), nameOf(2), 'three.avif'].sort());
    expect(notes.find(({ kind }) => kind === 'other-camera')).toMatchObject({ count: 1, camera: 'Two' });
    expect(found.find(({ file }) => file === nameOf(1))?.at).toMatch(/\.25/);
    const setting = found.find(({ file }) => file === 'three.avif')!;
    expect([setting.shutter, setting.iso, setting.aperture]).toEqual([
      third.shutter,
      third.iso,
      third.aperture,
    ]);
  });
});

test('a HEIC file as phones write it says as much', async () => {
  const at = folder({ 'plan.json': writePlan(plan) });
  copyFileSync(new URL('../data/review/phone.heic', import.meta.url), at.at('phone.heic'));
  const { status, out, err } = await evenfall([
    'review',
    at.at('plan.json'),
    at.at('phone.heic'),
    '--json',
    '--clock-fast',
    '0',
  ]);
  expect({ status, err }).toEqual({ status: 0, err: '' });
  const [frame] = (JSON.parse(out) as Review).frames;
  expect(frame).toMatchObject({ file: 'phone.heic', shutter: '1/60', iso: 100, aperture: '5.6' });
  expect(Date.parse(frame!.at)).toBe(Date.parse('2026-09-12T19:30:00.25+02:00'));
});

test('the journal of a followed evening tells the light, and what was on the lens, also where a cue was refused', async () => {
  const at = folder({ 'plan.json': writePlan(plan) });
  const answersTo = async (lines: readonly string[], ...more: string[]) => {
    const { out } = await evenfall(['follow', at.at('plan.json'), ...more], `${lines.join('\n')}\n`);
    const answers = out.trimEnd().split('\n').slice(0, -1);
    return answers.map((line) => JSON.parse(line));
  };
  // A stop darker than forecast all evening.
  const lines = plan.frames.map(({ at: time, sceneEv100 }) =>
    JSON.stringify({ at: time, ev100: sceneEv100 - 1 }),
  );
  const told = await answersTo(lines);
  const refused = told.findIndex(({ setting }) => setting.filters.length === 0);
  expect(refused).toBeGreaterThan(0);
  // The filter's cue has not been done, says the frame after it: its own frame was taken as the one before.
  const missed = JSON.stringify({ frame: refused + 1, missed: told[refused].cue.cue });
  const stood = await answersTo(
    [...lines.slice(0, refused + 1), missed, ...lines.slice(refused + 2)],
    '--start-over',
  );
  const rows = stood.map(({ frame, at: time, setting }) => {
    const { shutter, iso, aperture } = frame === refused ? told[refused - 1].setting : setting;
    return [`${frame}.jpg`, time, shutter, iso, aperture].join(',');
  });
  writeFileSync(at.at('frames.csv'), ['file,at,shutter,iso,aperture', ...rows].join('\n'));
  const run = (journal: string) =>
    evenfall(['review', at.at('plan.json'), at.at('frames.csv'), '--json', '--journal', journal]);
  const { status, out, err } = await run(at.at('plan.json.journal'));
  expect({ status, err }).toEqual({ status: 0, err: '' });
  const { summary, forecast, frames: found, notes } = JSON.parse(out) as Review;
  expect(summary.lightFrom).toBe('readings');
  expect(forecast!.offsetEv).toBeCloseTo(-1, 9);
  expect(notes.map(({ kind }) => kind)).not.toContain('filters-assumed');
  for (const { targetEv100, frame } of found)
    expect(targetEv100).toBeCloseTo(plan.frames[frame!]!.targetEv100 - 1, 6);
  const lens = (frame: number) => found.find((each) => each.frame === frame)!.filters;
  expect(lens(refused - 1)).toEqual(plan.frames[0]!.filters);
  expect(lens(refused)).toEqual(plan.frames[0]!.filters);
  expect(found.at(-1)!.filters).toEqual([]);

  // One of another plan, and what is none.
  writeFileSync(
    at.at('other.journal'),
    `${JSON.stringify({ format: 'evenfall-journal/1', plan: 'another' })}\n`,
  );
  for (const path of [at.at('other.journal'), at.at('frames.csv')]) {
    expect(await run(path)).toMatchObject({
      status: 1,
      err: `evenfall: ${path}: no journal of this plan; give the one that evenfall follow wrote beside it, its name with .journal\n`,
    });
  }
});

describe('a table of frames', () => {
  const table = (...lines: string[]) =>
    folder({ 'frames.csv': lines.join('\n'), 'plan.json': writePlan(plan) });
  const run = (at: { at: (name: string) => string }) =>
    evenfall(['review', at.at('plan.json'), at.at('frames.csv'), '--json']);

  test('serves where no file can be read', async () => {
    const rows = plan.frames.map(({ frame, at, shutter, iso, aperture, filters }) =>
      [`${frame}.raw`, at.slice(0, 19), shutter, iso, aperture, filters.join(' + ')].join(','),
    );
    const { status, out } = await run(table('file,at,shutter,iso,aperture,filters', ...rows));
    expect(status).toBe(0);
    const found = JSON.parse(out) as Review;
    expect(
      found.frames.every(({ frame, offsetEv }) => Math.abs(offsetEv - plan.frames[frame!]!.errorEv) < 1e-9),
    ).toBe(true);
    expect(found.cues.every(({ lateS }) => lateS === 0)).toBe(true);
  });

  test.each([
    {
      lines: ['file,at,shutter', 'a,b,c'],
      said: 'frames.csv:1: no column "iso"; give a header row with file, at, shutter, iso',
    },
    {
      lines: ['file,at,shutter,iso', '1,noon,1/60,100'],
      said: 'frames.csv:2: at: "noon" is not right; give a time such as 2026-10-14T18:07:31',
    },
    {
      lines: ['file,at,shutter,iso', '1,2026-09-12T19:00:00,fast,100'],
      said: 'frames.csv:2: shutter: "fast" is not right; give seconds, such as 1/60 or 4',
    },
    {
      lines: ['file,at,shutter,iso,filters', '1,2026-09-12T19:00:00,1,100,ND 9'],
      said: 'frames.csv:2: filters: "ND 9" is not right; give names of the shoot, ND 1.8, joined by " + "',
    },
  ])('that is wrong: $said', async ({ lines, said }) => {
    const { status, err } = await run(table(...lines));
    expect({ status, err }).toEqual({ status: 1, err: `evenfall: ${said}\n` });
  });
});

describe('what cannot be done is said in one line', () => {
  test.each([
    { argv: ['nowhere'], said: /nowhere: cannot be read: / },
    { argv: ['.', '-o', 'x.gif'], said: /-o x\.gif: ends in ".gif"/ },
    { argv: ['.', '--json', '-o', 'x.csv'], said: /-o does not go with --json/ },
    { argv: ['.', '--dark'], said: /--dark would change nothing on the screen/ },
    { argv: ['.', '--next', 'x.yaml'], said: /--next would change nothing on the screen/ },
    { argv: ['.', '--even-flicker'], said: /--even-flicker would change nothing/ },
    { argv: ['.', '--most', '9'], said: /Give stops from 0\.01 to 6/ },
  ])('$argv', async ({ argv, said }) => {
    const at = folder({ 'plan.json': writePlan(plan) });
    const [first, ...more] = argv;
    const { status, err } = await evenfall(['review', at.at('plan.json'), at.at(first!), ...more]);
    expect(status).toBe(1);
    expect(err).toMatch(said);
    expect(err.trim().split('\n')).toHaveLength(1);
  });

  test('an empty folder, and a plan without frames', async () => {
    const at = folder({
      'plan.json': writePlan(plan),
      'impossible.yaml': IMPOSSIBLE,
      'evening.yaml': EVENING,
    });
    mkdirSync(at.at('empty'));
    const { status, err } = await evenfall(['review', at.at('plan.json'), at.at('empty')]);
    expect({ status, err }).toEqual({
      status: 1,
      err: `evenfall: ${at.at('empty')}: no frame there that says when and how it was taken; give a folder of JPEG, TIFF, DNG or HEIF files, or a table ending in .csv\n`,
    });
    const { out } = await evenfall(['plan', at.at('impossible.yaml'), '--json']);
    writeFileSync(at.at('impossible.json'), out);
    const refused = await evenfall(['review', at.at('impossible.json'), at.at('empty')]);
    expect(refused.status).toBe(2);
    expect(refused.err).toContain('holds no ramp, so nothing can be held against it');
  });
});

describe('progress', () => {
  test('is shown where somebody watches, and wiped', () => {
    const shown: string[] = [];
    const progress = progressOf('reading', 4, { status: (text) => shown.push(text) });
    progress.step();
    progress.end();
    expect(shown[0]).toBe('\rreading [########......................] 1/4');
    expect(shown.at(-1)).toMatch(/^\r +\r$/);
  });
});
