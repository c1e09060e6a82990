// No English in German: what the command, card, chart and calendar say of shoots made at random, good and bad. It knows
// nothing of the tables of words: it looks for common English words, and for those of our own trade that German has not.

import {
  calendarTexts,
  cardHtml,
  cardText,
  faultText,
  lightChart,
  planChart,
  wordsFor,
} from '@evenfall/chart';
import { lightTable, planShoot, readShoot } from '@evenfall/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lightText } from '../../packages/cli/src/light-text.js';
import { infeasibleText, planText } from '../../packages/cli/src/plan-text.js';
import { nextOf } from '../../packages/cli/src/shoot-source.js';
import { speech } from '../../packages/cli/src/words/words.js';
import { shoots } from '../../packages/tools/any-shoot.mjs';
import { german as page } from '../../packages/web/src/words/de.js';
import { brokenArbitrary, endsIn } from '../core/files/broken.js';
import { published } from '../reference/json-schema.js';
import { sliceOf } from '../reference/long.js';

const COUNT = sliceOf(1000, 40);
const SEED = 20260912;

/** Words of English that German writes otherwise: those that hold a sentence together, and our trade's. */
const ENGLISH =
  'the of is are not to from by with for which this that these than more less most least no none without every each and or ' +
  'between before after during be been may would should it its give take turn keep let out up down as at on ' +
  'stop stops frame frames cue cues shutter aperture time times sun moon dusk dawn twilight clock card battery light ' +
  'scene sky skyline dark darker bright brighter error worst change changes start end first last step steps setting ' +
  'settings moving writing settling warning caution note notes second seconds minutes degrees metres lens ' +
  'spare reading readings brings raise allow open shorter longer higher lower fewer path list value key file';
const PATTERN = new RegExp(`(?<![\\p{L}\\d_])(${ENGLISH.split(' ').join('|')})(?![\\p{L}\\d_])`, 'iu');

/** Without what stands in quotes, words and keys of the formats, and without names of commands, zones and files. */
const said = (text: string) =>
  text
    .replaceAll(/"(?:[^"\\]|\\.)*"/g, ' ')
    .replaceAll(/evenfall \w+|npx .*|--?[a-z][\w-]*|\b[A-Z]\w+\/\w+/g, ' ');

/** What a reader sees of a picture or a page: text, and what is read out, without tags, styles and scripts. */
const seen = (markup: string) =>
  markup
    .replaceAll(/<style[\s\S]*?<\/style>|<script[\s\S]*?<\/script>|<\?[^>]*>|<!--[\s\S]*?-->/g, ' ')
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll(/&[#\w]+;/g, ' ');

function check(text: string, what: string): void {
  const words = said(text);
  const found = PATTERN.exec(words);
  const around = found === null ? '' : words.slice(Math.max(0, found.index - 60), found.index + 60);
  expect(found?.[1], `${around.replaceAll(/\s+/g, ' ')} in ${what}`).toBeUndefined();
}

const words = wordsFor({ language: 'de' });
const screen = speech('de');
const plain = { bold: String, dim: String, red: String, yellow: String, columns: 80 };

test(`no English word in what is said in German of ${COUNT} shoots that read`, () => {
  const files = fc.sample(shoots({ able: true }), { seed: SEED, numRuns: COUNT });
  const counts = { made: 0, impossible: 0 };
  for (const file of files) {
    const read = readShoot({ ...file, title: '' });
    if (read.kind === 'wrong') continue;
    const { shoot } = read;
    const what = JSON.stringify(file);
    const plan = planShoot(shoot);
    if (plan.kind === 'infeasible') {
      counts.impossible++;
      check(infeasibleText(plan, screen, plain), what);
      check(page.library.why(plan.infeasible), what);
      for (const remedy of plan.infeasible.remedies) check(page.library.remedy(remedy), what);
    } else {
      counts.made++;
      check(planText(plan, nextOf('abend.yaml', screen), screen, plain), what);
      check(cardText(plan, { words }), what);
      check(seen(cardHtml(plan, { words })), what);
      check(seen(planChart(plan, { words })), what);
      const { setUp, cues, end } = calendarTexts(plan, words);
      for (const { summary, description } of [setUp, ...cues, end]) check(`${summary} ${description}`, what);
      for (const note of plan.notes) check(page.library.note(note), what);
    }
    const light = lightTable(shoot);
    if (light.kind === 'infeasible') continue;
    check(lightText(light, shoot, screen, plain), what);
    check(seen(lightChart(light, { words })), what);
  }
  expect(counts.made).toBeGreaterThan(COUNT / 4);
  expect(counts.impossible).toBeGreaterThan(COUNT / 20);
});

test('no English word in what is wrong with as many broken shoots', () => {
  const broken = brokenArbitrary(shoots(), endsIn(published('shoot')));
  let faults = 0;
  for (const file of fc.sample(broken, { seed: SEED, numRuns: COUNT })) {
    const read = readShoot(file, undefined, 'abend.yaml');
    if (read.kind === 'ok') continue;
    for (const error of read.errors) {
      faults++;
      check(faultText(error, words), JSON.stringify(file));
      check(page.library.fault(error), JSON.stringify(file));
    }
  }
  expect(faults).toBeGreaterThan(COUNT / 2);
});

test('no English word among the texts of the page itself', () => {
  let texts = 0;
  const visit = (value: unknown, path: string): void => {
    if (typeof value === 'string') {
      texts++;
      check(value, path);
    } else if (typeof value === 'object' && value !== null) {
      for (const [key, each] of Object.entries(value)) visit(each, `${path}.${key}`);
    }
  };
  visit(page, 'page');
  visit(screen.plan, 'plan');
  visit(screen.light, 'light');
  visit(screen.newShoot.notes, 'newShoot.notes');
  visit(screen.evenings, 'evenings');
  visit(screen.footage, 'footage');
  expect(texts).toBeGreaterThan(250);
});
