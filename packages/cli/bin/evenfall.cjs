#!/usr/bin/env node
// Starts the built command; says so in one line where it is not built.

const { existsSync } = require('node:fs');
const { join } = require('node:path');
const { setFlagsFromString } = require('node:v8');

const [command = ''] = process.argv.slice(2);

// Most runs are over before what the engine optimizes has paid for itself. Begun thirty times later a plan takes two fifths
// less of the processor; many plans in one run do best with seven. Tried with this version alone, whose engine knows the
// flag.
const PLANS_MANY = ['evenings', 'follow', 'review'];
if (process.versions.node.startsWith('20.')) {
  setFlagsFromString(`--interrupt-budget=${PLANS_MANY.includes(command) ? 1_000_000 : 4_000_000}`);
}

const bundle = join(__dirname, '../bundle');
if (existsSync(join(bundle, 'start.cjs'))) {
  void require('../bundle/start.cjs').runOf(bundle, /^[a-z]+$/.test(command) ? command : 'evenfall')();
} else {
  process.stderr.write('evenfall: not built yet; run "npm run build" in the checkout first\n');
  process.exitCode = 1;
}
