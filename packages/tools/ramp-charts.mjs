// The same evening under different weights, as docs/ramp.md shows it: `node packages/tools/ramp-charts.mjs` writes the
// charts beside the page, after a build.

import { readFileSync, writeFileSync } from 'node:fs';
import { parse } from 'yaml';
import { planChart } from '../chart/dist/index.js';
import { planShoot, readShoot } from '../core/dist/index.js';

const root = new URL('../..', import.meta.url);
const read = readShoot(parse(readFileSync(new URL('docs/examples/dusk.yaml', root), 'utf8')));
if (read.kind === 'wrong') throw new Error('docs/examples/dusk.yaml does not read');

for (const { name, title, weights } of [
  { name: 'usual', title: 'The usual weights', weights: {} },
  { name: 'few-cues', title: 'Error at a quarter of its price', weights: { error: 0.08 } },
  { name: 'clean-iso', title: 'ISO at eight times its price', weights: { iso: 0.56 } },
]) {
  const plan = planShoot({ ...read.shoot, title, weights });
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  writeFileSync(new URL(`docs/ramp-${name}.svg`, root), `${planChart(plan)}\n`);
  const { cueCount, rmsErrorEv, worstErrorEv } = plan.summary;
  const iso = Math.max(...plan.frames.map((frame) => frame.iso));
  console.log(
    `${title}: ${cueCount} cues, rms ${rmsErrorEv.toFixed(2)}, worst ${worstErrorEv.toFixed(2)}, ISO ${iso}`,
  );
}
