// Makes docs/page.png, the picture in the README: an evening in the design view, in a real browser.
//
//   node packages/tools/screenshot.mjs

import { readFileSync } from 'node:fs';
import { chromium } from 'playwright-core';
import { parse } from 'yaml';
import { chromiumPath, FLAGS } from './browser.mjs';
import { buildPage, PAGE } from './build-page.mjs';
import { fail, install, root } from './ready.mjs';
import { serve } from './serve.mjs';

install();
try {
  buildPage();
  const shoot = parse(readFileSync(`${root}/docs/examples/dusk.yaml`, 'utf8'));
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
  console.log('docs/page.png is new.');
} catch (error) {
  fail(error.message);
}
