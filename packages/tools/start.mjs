// npm start: plans the demo evening, from nothing to a plan, a chart and a cue card.

import { mkdirSync } from 'node:fs';
import { build, install, run } from './ready.mjs';

const shoot = 'docs/examples/dusk.yaml';
const evenfall = 'packages/cli/bin/evenfall.cjs';

install();
build();
mkdirSync('out', { recursive: true });
console.log(`\nPlanning ${shoot}\n`);
run(`evenfall plan ${shoot}`, 'node', [evenfall, 'plan', shoot]);
console.log('');
run(`evenfall chart ${shoot} -o out/chart.svg`, 'node', [evenfall, 'chart', shoot, '-o', 'out/chart.svg']);
run(`evenfall card ${shoot} -o out/card.pdf`, 'node', [evenfall, 'card', shoot, '-o', 'out/card.pdf']);
console.log(
  '\nThe chart and the cue card are in the folder out/. Open out/chart.svg and print out/card.pdf.\n' +
    `Next: copy ${shoot}, change place, date and kit, and run  npx evenfall plan YOUR-FILE.yaml`,
);
