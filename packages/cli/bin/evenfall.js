#!/usr/bin/env node
// Starts the built command; says so in one line where it is not built.

import { existsSync } from 'node:fs';
import process from 'node:process';

const main = new URL('../dist/main.js', import.meta.url);
if (existsSync(main)) {
  const { runHere } = await import(main.href);
  await runHere();
} else {
  process.stderr.write('evenfall: not built yet; run "npm run build" in the checkout first\n');
  process.exitCode = 1;
}
