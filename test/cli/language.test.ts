// The command's own screens and refusals in German: the same facts as in English, in other words.

import { describe, expect, test } from 'vitest';
import { EVENING, evenfall, folder } from './run.js';

/** Numbers of a text, as English writes them; a minus is a hyphen. Times count as their parts. */
const numbers = (text: string) =>
  text
    .replaceAll('−', '-')
    .replaceAll(/(\d),(\d)/g, '$1.$2')
    .match(/-?\d+(\.\d+)?/g) ?? [];

const sorted = (found: readonly string[]) => [...found].sort();

const german = async (argv: readonly string[], stdin = EVENING) =>
  evenfall([...argv, '--language', 'de'], stdin);

describe('the same numbers in both languages', () => {
  test.each([
    [['plan', '-'], 'Sonne und Mond'],
    [['plan', '-', '--choices'], 'wie verlangt'],
    [['light', '-'], 'Am steilsten\n(*) um'],
    [['evenings', '-', '--days', '3'], '3 von 3 Abenden gehen mit dieser Ausrüstung.'],
    [
      ['frames', '--record', '90m', '--clip', '12.5', '--subject', 'clouds'],
      '3 Autoren, jeder aus Erfahrung',
    ],
  ])('%j', async (argv, words) => {
    const [en, de] = [await evenfall(argv, EVENING), await german(argv)];
    expect(de.status).toBe(en.status);
    expect(de.out).toContain(words);
    // "500 rule" is "500er-Regel"; a date ends in a full stop; the clock stands in notes as well.
    expect(sorted(numbers(de.out.replaceAll(/(\d)\. (?=[A-Z])/g, '$1 ')))).toEqual(sorted(numbers(en.out)));
    expect(de.out.split('\n').filter((line) => line.length > 80)).toEqual([]);
  });
});

test('where no ramp exists, German says when, by how much, and every cure', async () => {
  const dark = EVENING.replace('highest: 3200', 'highest: 100');
  expect(dark).not.toBe(EVENING);
  const [en, de] = [await evenfall(['plan', '-'], dark), await german(['plan', '-'], dark)];
  expect(de.status).toBe(2);
  expect(de.out).toContain('ist die Szene zu dunkel für diese Ausrüstung');
  expect(de.out.match(/^ {2}- /gm)?.length).toBe(en.out.match(/^ {2}- /gm)?.length);
});

describe('refused in German', () => {
  test.each([
    [
      EVENING.replace('latitudeDeg: 57.05', 'latitudeDeg: 95'),
      'Standardeingabe:5: place.latitudeDeg: 95 geht hier nicht; richtig: Grad von −90 bis 90',
    ],
    [
      EVENING.replace('3200 }', '3200'),
      'Standardeingabe:11: nicht als YAML oder JSON lesbar: ein { ist nicht geschlossen; am Ende der Gruppe ein } setzen\n  11 |   iso: { lowest: 100, highest: 3200',
    ],
  ])('a file %#', async (text, message) => {
    expect(await german(['plan', '-'], text)).toEqual({ status: 1, out: '', err: `evenfall: ${message}\n` });
  });

  test.each([
    [
      ['plan', 'none.yaml'],
      'none.yaml: nicht zu lesen: diese Datei oder diesen Ordner gibt es nicht; den Pfad prüfen',
    ],
    [
      ['card', '-', '-o', 'card.docx'],
      '-o card.docx: endet auf ".docx", was hier nicht bekannt ist; eine Datei mit der Endung .pdf, .svg, .html, .txt angeben',
    ],
    [['frames', '--clip', '2'], 'zwei von --record, --interval und --clip angeben, oder --subject allein'],
    [['plan', '-', '--json'], '--language geht nicht zusammen mit --json; eines weglassen'],
    [['evenings', '-', '--csv'], '--language geht nicht zusammen mit --csv; eines weglassen'],
  ])('%j', async (argv, message) => {
    expect(await german(argv)).toEqual({ status: 1, out: '', err: `evenfall: ${message}\n` });
  });
});

test('what is written says so in German', async () => {
  const dir = folder({ 'evening.yaml': EVENING });
  const { out } = await german(['cues', dir.at('evening.yaml'), '-o', dir.at('cues.ics')]);
  expect(out).toBe(`geschrieben: ${dir.at('cues.ics')}\n`);
});

// A parser's own words are told by its code and the text: none of these reads them.
describe('slips told by code and text', () => {
  test.each([
    [
      'a quote doubled inside quotes',
      "title: 'it''s dusk",
      "text in ' is not closed; give another ' after it",
    ],
    [
      'two texts behind one key',
      'title: "Slipway" "gulls"',
      'something follows a text after its end; put all of it in one pair of quotes',
    ],
    ['two commas', 'place: { latitudeDeg: 57,, longitudeDeg: 9 }', 'a , too many; leave it out'],
    ['text against a comment', 'title: "Slipway"# quay', 'a space is missing before "#"; give one'],
    [
      'quoted entries side by side',
      'filters: [ "a" "b" ]',
      'two entries are not parted; give a comma between them',
    ],
  ])('%s', async (_what, line, message) => {
    const { status, err } = await evenfall(['plan', '-'], `${line}\n`);
    expect(status).toBe(1);
    expect(err).toBe(`evenfall: standard input:1: not readable as YAML or JSON: ${message}\n  1 | ${line}\n`);
  });
});
