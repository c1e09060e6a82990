// Each command on a real evening, its output read back by something that knows the form.

import { readFileSync } from 'node:fs';
import { type PlanMade, readPlan } from '@evenfall/core';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { checkPlan } from '../reference/plan-checker.js';
import { EVENING, evenfall, eveningPlan, folder } from './run.js';

const clock = (at: string) => at.slice(11, 19);
// The evening begins on a whole minute and has a frame a minute: the card leaves the seconds out.
const clockOnCard = (at: string) => clock(at).replace(/:00$/, '');

let plan: PlanMade;
beforeAll(() => {
  plan = eveningPlan();
  expect(plan.cues.length).toBeGreaterThan(10);
});

describe('plan', () => {
  test('prints what a person needs, in 80 columns', async () => {
    const { status, out, err } = await evenfall(['plan', '-'], EVENING);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    const lines = out.split('\n');
    expect(lines.slice(0, 3)).toEqual([
      'Slipway & gulls',
      'Saturday 12 September 2026, dusk',
      '57.0500° N, 9.9200° E, Europe/Copenhagen',
    ]);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
    const { summary, frames } = plan;
    expect(out).toContain(`Start, end     ${clock(summary.startAt)} to ${clock(summary.endAt)}`);
    expect(out).toContain(`Frames         ${summary.frameCount}, one every 60 s`);
    expect(out).toContain(
      `Card           ${((summary.frameCount * 30) / 1000).toFixed(1)} of 64 GB, room for 2133 frames\n`,
    );
    // Frame 101 of one a minute starts 100 minutes after the first.
    const spent = minutesOf(clock(summary.startAt)) + 100;
    const at = `${String(Math.floor(spent / 60)).padStart(2, '0')}:${String(Math.floor(spent % 60)).padStart(2, '0')}`;
    expect(out).toContain(`Battery        ${summary.frameCount} of 100 frames: not enough, spent at ${at}\n`);
    expect(out).toMatch(/^Sun and moon {3}.*sunset 19:47/m);
    expect(out).toContain(`First setting  ${frames[0]!.shutter}, ISO ${frames[0]!.iso}, f/5.6, ND 1.8`);
  });

  // Of 60 s less 1 s of gap and 0.6 s of pauses 58.4 s / 5.25 are 11.1 s; "10" is 10.08 s, its longest 40.3 s. But the longest
  // of all is "30", 32 s: the middle one ends at 8 s, whose others and pauses are 4.25 * 8 + 0.6 s.
  test('says what a bracket comes to, and which end of it limits the night', async () => {
    const bracket = 'bracket: { frames: 3, stepEv: 2, betweenS: 0.3 }';
    const shoot = EVENING.replace(/^camera:\n/m, `camera:\n  ${bracket}\n`);
    const { status, out } = await evenfall(['plan', '-'], shoot);
    expect(status).toBe(0);
    const text = out.replaceAll(/\s+/g, ' ');
    const { frameCount } = plan.summary;
    expect(text).toMatch(
      new RegExp(
        `Bracket 3 exposures a frame, 2 stops apart, ${3 * frameCount} in all, 1/\\d+ to 30 s; the longest shutter limits the night`,
      ),
    );
    expect(text).toContain('shutter 8 s, rest of the bracket 34.6 s, writing 1 s');
    const german = (await evenfall(['plan', '-', '--language', 'de'], shoot)).out.replaceAll(/\s+/g, ' ');
    expect(german).toContain('Reihe 3 Belichtungen je Bild im Abstand von 2 Blenden');
    expect(german).toContain('übrige Reihe 34,6 s');
    expect((await evenfall(['plan', '-'], EVENING)).out).not.toContain('Bracket');
  });

  test('says below its title, first of all, what puts it in doubt', async () => {
    // The span of that shoot begins at 19:00.
    const at = plan.frames[30]!.at;
    const read = `${EVENING}\nreadings:\n  - { at: ${at}, ev100: ${plan.frames[30]!.sceneEv100.toFixed(1)} }\n`;
    const { status, out } = await evenfall(['plan', '-'], read);
    expect(status).toBe(0);
    const [, , , blank, ...rest] = out.split('\n');
    expect(blank).toBe('');
    expect(rest.join(' ').replaceAll(/\s+/g, ' ')).toMatch(
      new RegExp(
        `^ warning: This plans the shoot from its start at ${clock(plan.summary.startAt).slice(0, 5)}, .*evenfall follow`,
      ),
    );
    const notes = out.slice(out.indexOf('\nNotes\n'));
    expect(notes).not.toContain('warning:');
  });

  test('is set up by twenty minutes before the start, down to five', async () => {
    const { out } = await evenfall(['plan', '-'], EVENING);
    const [, hours, minutes] = /^Be set up by {3}(\d\d):(\d\d)$/m.exec(out)!;
    const lead = minutesOf(clock(plan.summary.startAt)) - (Number(hours) * 60 + Number(minutes));
    expect(Number(minutes) % 5).toBe(0);
    expect(lead).toBeGreaterThanOrEqual(20);
    expect(lead).toBeLessThan(25 + 1);
  });

  test('lists every cue with its clock, minutes since the last, frame from 1, change and setting', async () => {
    const { out } = await evenfall(['plan', '-'], EVENING);
    const table = out.split(/^clock .*then$/m)[1]!.split('\n\n')[0]!;
    const rows = table
      .replaceAll(/\n {20,}/g, ' ')
      .trim()
      .split('\n');
    expect(rows).toHaveLength(plan.cues.length);
    let before = plan.summary.startAt;
    for (const [i, { at, frame, changes }] of plan.cues.entries()) {
      const minutes = (Date.parse(at) - Date.parse(before)) / 60_000;
      const after = plan.frames[frame]!;
      expect(rows[i]).toMatch(new RegExp(`^${clock(at)} +\\+${minutes.toFixed(1)} +${frame + 1} `));
      for (const { from, to } of changes)
        expect(rows[i]).toMatch(new RegExp(`${from}( s)? → (f/)?${to.replace('none', 'no filter')}`));
      expect(rows[i]).toContain(`, ISO ${after.iso}, f/${after.aperture}`);
      before = at;
    }
  });

  test('--json and -o give the plan file, the zone of the coordinates written in', async () => {
    const dir = folder({ 'evening.yaml': EVENING });
    const printed = await evenfall(['plan', dir.at('evening.yaml'), '--json']);
    expect(readPlan(JSON.parse(printed.out))).toEqual({ kind: 'ok', plan });
    expect(checkPlan(JSON.parse(printed.out))).toEqual([]);
    const saved = await evenfall(['plan', dir.at('evening.yaml'), '-o', dir.at('plan.json')]);
    expect(saved).toEqual({ status: 0, out: `wrote ${dir.at('plan.json')}\n`, err: '' });
    expect(readFileSync(dir.at('plan.json'), 'utf8')).toBe(printed.out);
    expect(dir.names()).toEqual(['evening.yaml', 'plan.json']);
  });

  test('reads JSON as it reads YAML', async () => {
    const dir = folder({ 'evening.json': JSON.stringify(parse(EVENING), null, '\t') });
    const { status, out } = await evenfall(['plan', dir.at('evening.json'), '--json']);
    expect(status).toBe(0);
    expect(JSON.parse(out).cues).toEqual(plan.cues);
  });

  test('keeps a zone that the file names', async () => {
    const named = EVENING.replace('  longitudeDeg', '  timeZone: UTC\n  longitudeDeg');
    const { out } = await evenfall(['plan', '-', '--json'], named);
    expect(JSON.parse(out).shoot.place.timeZone).toBe('UTC');
    expect(JSON.parse(out).summary.startAt).toMatch(/\+00:00$/);
  });

  test('colours on a screen alone', async () => {
    const paint = '\u001b[';
    expect((await evenfall(['plan', '-'], EVENING, true)).out).toContain(paint);
    expect((await evenfall(['plan', '-'], EVENING, false)).out).not.toContain(paint);
    expect((await evenfall(['plan', '-', '--json'], EVENING, true)).out).not.toContain(paint);
  });

  test('writes its frames as a table', async () => {
    const dir = folder();
    await evenfall(['plan', '-', '-o', dir.at('frames.csv')], EVENING);
    const rows = readFileSync(dir.at('frames.csv'), 'utf8').split('\r\n');
    expect(rows).toHaveLength(1 + plan.frames.length + 1);
  });
});

describe('card', () => {
  test('is a PDF of A6 pages with every cue on it', async () => {
    const dir = folder();
    const { status } = await evenfall(['card', '-', '-o', dir.at('card.pdf')], EVENING);
    expect(status).toBe(0);
    const bytes = readFileSync(dir.at('card.pdf'));
    const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
    let text = '';
    for (let number = 1; number <= pdf.numPages; number++) {
      const page = await pdf.getPage(number);
      const [, , width, height] = page.view;
      // A6 is 105 by 148 mm (ISO 216); a point is 1/72 inch.
      expect((width! / 72) * 25.4).toBeCloseTo(105, 1);
      expect((height! / 72) * 25.4).toBeCloseTo(148, 1);
      const content = await page.getTextContent();
      text += content.items.map((item) => ('str' in item ? item.str : '')).join(' ');
    }
    expect(pdf.numPages).toBeGreaterThan(1);
    for (const { at } of plan.cues) expect(text).toContain(clockOnCard(at));
    expect(text).toContain('Slipway & gulls');
    expect(text).toContain('→');
    const { info } = (await pdf.getMetadata()) as { info: { Title?: string } };
    expect(info.Title).toBe('Slipway & gulls');
    // Letters are embedded, so that the card prints alike everywhere.
    expect(bytes.toString('latin1')).toMatch(/\/FontFile2/);
    expect(bytes.length).toBeLessThan(300_000);
  });

  test('the same evening gives the same PDF, byte for byte', async () => {
    const dir = folder();
    await evenfall(['card', '-', '-o', dir.at('a.pdf')], EVENING);
    await evenfall(['card', '-', '-o', dir.at('b.pdf')], EVENING);
    expect(readFileSync(dir.at('a.pdf')).equals(readFileSync(dir.at('b.pdf')))).toBe(true);
  });

  test.each(['card.html', 'card.txt'])('%s has every cue on it', async (name) => {
    const dir = folder();
    const { out } = await evenfall(['card', '-', '-o', dir.at(name)], EVENING);
    expect(out).toBe(`wrote ${dir.at(name)}\n`);
    const text = readFileSync(dir.at(name), 'utf8');
    for (const { at } of plan.cues) expect(text).toContain(clockOnCard(at));
  });

  test('pages as SVG are numbered', async () => {
    const dir = folder();
    const { out } = await evenfall(['card', '-', '-o', dir.at('card.SVG')], EVENING);
    const names = dir.names();
    expect(names.length).toBeGreaterThan(1);
    expect(names).toEqual(names.map((_, i) => `card-${i + 1}.SVG`));
    for (const name of names) {
      expect(out).toContain(dir.at(name));
      expect(readFileSync(dir.at(name), 'utf8')).toMatch(/^<svg .*<\/svg>\s*$/s);
    }
  });
});

describe('chart, cues and light', () => {
  test('the chart is an SVG', async () => {
    const dir = folder();
    const { status } = await evenfall(['chart', '-', '-o', dir.at('chart.svg')], EVENING);
    expect(status).toBe(0);
    expect(readFileSync(dir.at('chart.svg'), 'utf8')).toMatch(/^<svg .*<\/svg>\s*$/s);
  });

  test('cues are a calendar, a table, or the list of the plan file', async () => {
    const dir = folder();
    for (const name of ['cues.ics', 'cues.csv', 'cues.json']) {
      const argv = [
        'cues',
        '-',
        '-o',
        dir.at(name),
        ...(name.endsWith('.ics') ? ['--ahead', '30', '--travel', '1h30m'] : []),
      ];
      expect((await evenfall(argv, EVENING)).status).toBe(0);
    }
    const ics = readFileSync(dir.at('cues.ics'), 'utf8');
    // One for each cue, one for setting up, one for the end.
    expect(ics.match(/^BEGIN:VEVENT\r$/gm)).toHaveLength(plan.cues.length + 2);
    expect(ics.match(/^TRIGGER:-PT30S\r$/gm)).toHaveLength(plan.cues.length);
    expect(ics.match(/^TRIGGER:-PT5400S\r$/gm)).toHaveLength(1);
    expect(readFileSync(dir.at('cues.csv'), 'utf8').split('\r\n')).toHaveLength(1 + plan.cues.length + 1);
    expect(JSON.parse(readFileSync(dir.at('cues.json'), 'utf8'))).toEqual(plan.cues);
  });

  test('light prints events and a screenful of the curve', async () => {
    const { status, out } = await evenfall(['light', '-'], EVENING);
    expect(status).toBe(0);
    expect(out).toMatch(/^sunset {14}2026-09-12 19:47:\d\d {2}sun -0\.8°$/m);
    const rows = out.split('EV/min\n')[1]!.trimEnd().split('\n');
    expect(rows.length).toBeGreaterThan(20);
    expect(rows.length).toBeLessThanOrEqual(38);
    expect(rows[0]).toMatch(new RegExp(`^${clock(plan.summary.startAt)} `));
    expect(rows.at(-1)).toMatch(new RegExp(`^${clock(plan.summary.endAt)} `));
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  test.each([41, 43, 47])(
    'the printed curve ends with the span, at one row every %i s too',
    async (intervalS) => {
      const evening = EVENING.replace('intervalS: 60', `intervalS: ${intervalS}`);
      const { rows } = JSON.parse((await evenfall(['light', '-', '--json'], evening)).out);
      const { out } = await evenfall(['light', '-'], evening);
      expect(out.trimEnd().split('\n').at(-1)).toMatch(new RegExp(`^${clock(rows.at(-1).at)} `));
    },
  );

  test('light gives its table to a program, and a chart', async () => {
    const dir = folder();
    const { out } = await evenfall(['light', '-', '--json'], EVENING);
    const table = JSON.parse(out);
    expect(table.format).toBe('evenfall-light/1');
    expect(table.rows).toHaveLength(plan.frames.length);
    await evenfall(['light', '-', '-o', dir.at('light.json')], EVENING);
    expect(readFileSync(dir.at('light.json'), 'utf8')).toBe(out);
    await evenfall(['light', '-', '-o', dir.at('light.svg')], EVENING);
    expect(readFileSync(dir.at('light.svg'), 'utf8')).toMatch(/^<svg .*<\/svg>\s*$/s);
  });
});

describe('help', () => {
  test('alone, the command teaches', async () => {
    const { status, out, err } = await evenfall([]);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toBe((await evenfall(['--help'])).out);
    for (const command of ['plan', 'card', 'chart', 'cues', 'light']) expect(out).toContain(`  ${command} `);
  });

  test('its shoot file is one that plans', async () => {
    const { out } = await evenfall(['--help']);
    const [, shoot] = /The least one:\n((?: {2}.*\n)+)/.exec(out)!;
    const { status } = await evenfall(['plan', '-'], shoot!.replaceAll(/^ {2}/gm, ''));
    expect(status).toBe(0);
  });

  test.each(['plan', 'card', 'chart', 'cues', 'light'])(
    '%s has an example, in 80 columns',
    async (command) => {
      const { status, out } = await evenfall([command, '--help']);
      expect(status).toBe(0);
      expect(out).toContain(`Example:\n  evenfall ${command} evening.yaml`);
      for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    },
  );

  test('help before a command is the same as --help after it', async () => {
    expect(await evenfall(['help', 'cues'])).toEqual(await evenfall(['cues', '--help']));
    expect((await evenfall(['help', 'nothing'])).status).toBe(1);
  });

  test('the version is that of the package', async () => {
    const { version } = JSON.parse(readFileSync('packages/cli/package.json', 'utf8')) as { version: string };
    expect(await evenfall(['--version'])).toEqual({ status: 0, out: `${version}\n`, err: '' });
  });
});

function minutesOf(time: string): number {
  const [hours, minutes, seconds] = time.split(':').map(Number);
  return hours! * 60 + minutes! + seconds! / 60;
}
