// Finds Chromium for tests and pictures; on a Debian machine it installs it, elsewhere it says what to do.

import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const NAMES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/** What the page is driven with: nothing that asks another host for anything. */
export const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const found = () => NAMES.find((path) => existsSync(path));

/** Path of Chromium. Ends with an error of one line where there is none and none can be installed. */
export function chromiumPath() {
  const given = process.env.CHROMIUM_PATH;
  if (given !== undefined) {
    if (existsSync(given)) return given;
    throw new Error(`CHROMIUM_PATH is ${given}, and there is no such file.`);
  }
  const path = found();
  if (path !== undefined) return path;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log('Installing Chromium …');
    /** @type {import('node:child_process').SpawnSyncOptions} */
    const quiet = { stdio: ['ignore', 'ignore', 'inherit'] };
    const { status } = spawnSync('apt-get', ['update', '-qq'], quiet);
    if (status === 0) spawnSync('apt-get', ['install', '-y', '-qq', 'chromium'], quiet);
    const installed = found();
    if (installed !== undefined) return installed;
  }
  throw new Error('Chromium is needed: install it, or set CHROMIUM_PATH to where it is.');
}
