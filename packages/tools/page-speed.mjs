// How fast the page answers, in a real browser on the built page: from a key to the picture drawn, with a camera that
// moves and without; the longest task while a handle is dragged; the cursor. Run it on a machine with nothing else to do.
//
//   node packages/tools/page-speed.mjs [--times 30]

import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { chromium } from 'playwright-core';
import { parse } from 'yaml';
import { chromiumPath, FLAGS } from './browser.mjs';
import { buildPage, PAGE } from './build-page.mjs';
import { build, fail, install, root } from './ready.mjs';
import { serve } from './serve.mjs';

const { values } = parseArgs({ options: { times: { type: 'string', default: '30' } } });
const TIMES = Number(values.times);
if (!Number.isInteger(TIMES) || TIMES < 1) fail('--times: give a whole number of 1 or more');

/** The example of the README; the second one pans. */
const STILL = parse(readFileSync(`${root}/docs/examples/dusk.yaml`, 'utf8'));
const PAN = { ...STILL, moves: [{ axis: 'pan', by: { deg: 60 }, gear: { topSpeedDegPerS: 3 } }] };

/** @param {number[]} all */
const median = (all) => [...all].sort((a, b) => a - b)[Math.floor(all.length / 2)] ?? Number.NaN;

/**
 * Runs in the page: every key and every move of the pointer is followed to the paint after it.
 *
 * @returns {void}
 */
function watch() {
  const seen = /** @type {any} */ (globalThis);
  seen.painted = [];
  seen.moved = [];
  seen.tasks = [];
  let sinceMs = 0;
  /** @param {() => void} then */
  const afterPaint = (then) =>
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = then;
      port2.postMessage(undefined);
    });
  const start = () => {
    sinceMs = performance.now();
  };
  // A key in a field changes something only where it changes what stands there.
  addEventListener('keydown', ({ target }) => target instanceof HTMLInputElement || start(), true);
  addEventListener('input', start, true);
  addEventListener(
    'pointermove',
    ({ timeStamp }) => afterPaint(() => seen.moved.push(performance.now() - timeStamp)),
    true,
  );
  const picture = /** @type {Element} */ (document.querySelector('.picture'));
  new MutationObserver(() => {
    if (picture.getAttribute('aria-busy') !== 'false') return;
    const fromMs = sinceMs;
    afterPaint(() => seen.painted.push(performance.now() - fromMs));
  }).observe(picture, { attributeFilter: ['aria-busy'] });
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) seen.tasks.push(duration);
  }).observe({ type: 'longtask', buffered: false });
}

/**
 * @param {import('playwright-core').Page} page
 * @param {'painted' | 'moved' | 'tasks'} what
 * @returns {Promise<number[]>} what was seen since the last call, in ms
 */
const taken = (page, what) => page.evaluate((name) => /** @type {any} */ (globalThis)[name].splice(0), what);

/** @param {import('playwright-core').Page} page */
async function idle(page) {
  await page.waitForFunction(() => document.querySelector('.picture')?.getAttribute('aria-busy') === 'false');
  await page.waitForTimeout(120);
}

/**
 * @param {string} name
 * @param {number[]} all
 */
function print(name, all) {
  const most = Math.max(0, ...all);
  console.log(
    `${name.padEnd(44)} median ${median(all).toFixed(1).padStart(6)} ms   most ${most.toFixed(1)} ms`,
  );
}

install();
build();
buildPage();
const server = await serve(PAGE);
const browser = await chromium.launch({ executablePath: chromiumPath(), args: FLAGS });
for (const [name, shoot] of /** @type {const} */ ([
  ['still', STILL],
  ['pan', PAN],
])) {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' });
  const fragment = Buffer.from(JSON.stringify(shoot)).toString('base64url');
  await page.goto(`http://127.0.0.1:${server.address().port}/#shoot=${fragment}`);
  await idle(page);
  await page.waitForTimeout(1000);
  await page.evaluate(watch);

  for (const slider of ['Interval of the shoot', 'Start of the shoot', 'Room about the target']) {
    await page.getByRole('slider', { name: slider }).focus();
    await taken(page, 'painted');
    for (let i = 0; i < TIMES; i++) {
      await page.keyboard.press(i % 2 === 0 ? 'ArrowRight' : 'ArrowLeft');
      await idle(page);
    }
    print(`${name}: ${slider}, a key`, await taken(page, 'painted'));
  }

  const longitude = page.getByLabel('Longitude', { exact: true });
  await page.getByText('Coordinates and time zone').click();
  await longitude.focus();
  await taken(page, 'painted');
  for (let i = 0; i < TIMES; i++) {
    await longitude.fill(i % 2 === 0 ? '4.4' : '4.3');
    await page.keyboard.press('Enter');
    await idle(page);
  }
  print(`${name}: longitude typed`, await taken(page, 'painted'));

  const handle = page.getByRole('slider', { name: 'End of the shoot' });
  await handle.scrollIntoViewIfNeeded();
  const box = await handle.boundingBox();
  if (box === null) throw new Error('no handle on the picture');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await taken(page, 'tasks');
  await page.mouse.down();
  for (let i = 0; i < TIMES; i++) await page.mouse.move(x - 4 * i, y, { steps: 2 });
  await page.mouse.up();
  await idle(page);
  const tasks = await taken(page, 'tasks');
  console.log(
    `${`${name}: long tasks while dragging`.padEnd(44)} ${tasks.length} of 50 ms or more${tasks.length > 0 ? `, the longest ${Math.max(...tasks)} ms` : ''}`,
  );

  const sweep = await page.getByRole('slider', { name: 'Time', exact: true }).boundingBox();
  if (sweep === null) throw new Error('no picture');
  await taken(page, 'moved');
  for (let i = 0; i < TIMES; i++) {
    await page.mouse.move(sweep.x + 100 + 10 * i, sweep.y + 150);
    await page.waitForTimeout(40);
  }
  print(`${name}: cursor`, await taken(page, 'moved'));
  await page.close();
}
await browser.close();
server.close();
