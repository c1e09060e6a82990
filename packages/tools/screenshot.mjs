// Makes the pictures in the README: docs/page.png, an evening in the design view, in a real browser; docs/card-1.svg and
// docs/card-3.svg, two pages of its card in the size they are carried in.
//
//   node packages/tools/screenshot.mjs

import { copyFileSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { chromium } from 'playwright-core';
import { parse } from 'yaml';
import { chromiumPath, FLAGS } from './browser.mjs';
import { buildPage, PAGE } from './build-page.mjs';
import { build, fail, install, root, run } from './ready.mjs';
import { serve } from './serve.mjs';

/** The first page, and one with a filter change. */
const CARD_PAGES = [1, 3];

install();
build();
try {
  const folder = mkdtempSync(join(tmpdir(), 'evenfall-card-'));
  const bin = `${root}/packages/cli/bin/evenfall.cjs`;
  const example = `${root}/docs/examples/dusk.yaml`;
  run('drawing the card', process.execPath, [bin, 'card', example, '-o', join(folder, 'card.svg')]);
  for (const page of CARD_PAGES)
    copyFileSync(join(folder, `card-${page}.svg`), `${root}/docs/card-${page}.svg`);
  rmSync(folder, { recursive: true });
  buildPage();
  const shoot = parse(readFileSync(example, 'utf8'));
  const fragment = Buffer.from(JSON.stringify(shoot)).toString('base64url');
  const server = await serve(PAGE);
  const browser = await chromium.launch({ executablePath: chromiumPath(), args: FLAGS });
  const page = await browser.newPage({ viewport: { width: 1280, height: 860 }, locale: 'en-GB' });
  await page.goto(`http://127.0.0.1:${server.address().port}/#shoot=${fragment}`);
  await page.waitForFunction(() => document.querySelector('.picture')?.getAttribute('aria-busy') === 'false');
  await page.getByRole('button', { name: 'Close' }).click();
  const time = page.getByRole('slider', { name: 'Time' });
  const box = await time.boundingBox();
  if (box === null) throw new Error('the chart is not on the screen');
  await page.mouse.move(box.x + box.width * 0.55, box.y + 200);
  await page.screenshot({ path: `${root}/docs/page.png` });
  await browser.close();
  server.close();
  console.log('docs/page.png and docs/card-1.svg, docs/card-3.svg are new.');
} catch (error) {
  fail(error.message);
}
