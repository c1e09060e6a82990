// The four scenes of docs/examples/light side by side, as a table.
//
//   npx tsc -b packages/core && node packages/tools/light-examples.mjs            prints it
//   npx tsc -b packages/core && node packages/tools/light-examples.mjs --write    writes it into docs/light.md

import { readFileSync } from 'node:fs';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { markdownTable, partBetween, writeBetween } from './marked-table.mjs';

const root = new URL('../..', import.meta.url);
const DOC = fileURLToPath(new URL('docs/light.md', root));
const OPEN = '<!-- scenes: written by packages/tools/light-examples.mjs -->';
const CLOSE = '<!-- end of scenes -->';

export const EXAMPLES = ['beach', 'city', 'snowfield', 'harbour'];

/** @typedef {typeof import('../core/src/index.js')} Core */

/**
 * What one example gives: a row of the table. `settled`: from here on less than 0.05 EV a minute.
 *
 * @param {Core} core
 * @param {string} name
 */
export function exampleFacts(core, name) {
  const text = readFileSync(new URL(`docs/examples/light/${name}.yaml`, root), 'utf8');
  const read = core.readShoot(parse(text));
  if (read.kind !== 'ok') throw new Error(`${name}: ${read.errors.map(({ message }) => message).join('; ')}`);
  const plan = core.planShoot(read.shoot);
  if (plan.kind === 'infeasible') throw new Error(`${name}: ${plan.infeasible.text}`);
  const light = core.lightTable(read.shoot);
  if (light.kind === 'infeasible') throw new Error(`${name}: ${light.infeasible.text}`);
  const { rows } = light;
  const steepest = rows.reduce((a, b) => (Math.abs(b.slopeEvPerMin) > Math.abs(a.slopeEvPerMin) ? b : a));
  const sunset = rows.find(({ sunAltitudeDeg }) => sunAltitudeDeg <= -0.833);
  if (sunset === undefined) throw new Error(`${name}: no sunset`);
  const settled = rows.find((_, i) =>
    rows.slice(i).every(({ slopeEvPerMin }) => Math.abs(slopeEvPerMin) < 0.05),
  );
  return { name, plan, rows, steepest, sunset, settled };
}

/**
 * The examples as a Markdown table, a line each.
 *
 * @param {Core} core
 */
export function examplesTable(core) {
  const number = (value, digits = 1) =>
    value
      .toFixed(digits)
      .replace('-', '−')
      .replace(/^−(0\.?0*)$/, '$1');
  const lines = EXAMPLES.map((name) => {
    const { plan, rows, steepest, sunset, settled } = exampleFacts(core, name);
    const { summary } = plan;
    const [first, last] = [rows[0], rows[rows.length - 1]];
    return [
      `[${name}](examples/light/${name}.yaml)`,
      `${number(first.sceneEv100)} → ${number(sunset.sceneEv100)} → ${number(last.sceneEv100)}`,
      `${number(Math.abs(steepest.slopeEvPerMin), 2)} at ${number(steepest.sunAltitudeDeg, 0)}°`,
      settled === undefined ? 'not by −14°' : `${number(settled.sunAltitudeDeg, 0)}°`,
      `${Math.round((Date.parse(last.at) - Date.parse(first.at)) / 60_000)}`,
      `${summary.cueCount}`,
      `${number(summary.reserveDarkEv)} / ${number(summary.reserveBrightEv)}`,
      `${Math.round(100 * summary.eveningsHeldShare)} %`,
    ];
  });
  const head = [
    'scene',
    'EV 100 at sun 6° → sunset → −14°',
    'steepest, EV/min',
    'settled from',
    'minutes',
    'cues',
    'reserve dark / bright, stops',
    'evenings held',
  ];
  return markdownTable(head, lines);
}

/** The table as it stands in docs/light.md. */
export function writtenExamples() {
  return partBetween(DOC, OPEN, CLOSE);
}

if (argv[1] === fileURLToPath(import.meta.url)) {
  const table = examplesTable(await import(new URL('packages/core/dist/index.js', root).href));
  if (argv.includes('--write')) {
    writeBetween(DOC, OPEN, CLOSE, table);
  } else {
    console.log(table);
  }
}
