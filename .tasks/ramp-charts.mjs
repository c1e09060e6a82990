// The same evening under different weights, as docs/ramp.md shows it: `node .tasks/ramp-charts.mjs` writes the
// charts beside the page, after a build.

import { readFileSync, writeFileSync } from 'node:fs';
import { parse } from 'yaml';
import { planChart } from '../packages/chart/dist/index.js';
import { planShoot, readShoot } from '../packages/core/dist/index.js';

const root = new URL('..', import.meta.url);
const { shoot } = readShoot(parse(readFileSync(new URL('docs/examples/dusk.yaml', root), 'utf8')));

for (const [name, title, weights] of [
  ['usual', 'The usual weights', {}],
  ['few-cues', 'Error at a quarter of its price', { error: 0.08 }],
  ['clean-iso', 'ISO at eight times its price', { iso: 0.56 }],
]) {
  const plan = planShoot({ ...shoot, title, weights });
  writeFileSync(new URL(`docs/ramp-${name}.svg`, root), `${planChart(plan)}\n`);
  const { cueCount, rmsErrorEv, worstErrorEv } = plan.summary;
  const iso = Math.max(...plan.frames.map((frame) => frame.iso));
  console.log(
    `${title}: ${cueCount} cues, rms ${rmsErrorEv.toFixed(2)}, worst ${worstErrorEv.toFixed(2)}, ISO ${iso}`,
  );
}
