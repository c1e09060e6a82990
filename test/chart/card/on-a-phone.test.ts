// The card as HTML on a small phone, by touch, in a real browser: the evening ticked from the first cue to the last.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium, type Page } from 'playwright-core';
import { expect, onTestFinished, test } from 'vitest';
import { cardHtml } from '../../../packages/chart/src/index.js';
import { chromiumPath, FLAGS } from '../../../packages/tools/browser.mjs';
import { planned, shootWith } from '../planned.js';

const SIZE = { width: 360, height: 740 }; // CSS pixels, as small phones have them
const plan = planned(shootWith('dusk'));

async function opened(): Promise<Page> {
  const folder = mkdtempSync(join(tmpdir(), 'evenfall-card-'));
  const path = join(folder, 'card.html');
  writeFileSync(path, cardHtml(plan, { dark: true }));
  const browser = await chromium.launch({ executablePath: chromiumPath(), args: FLAGS });
  onTestFinished(async () => {
    await browser.close();
    rmSync(folder, { recursive: true });
  });
  const context = await browser.newContext({ viewport: SIZE, hasTouch: true, isMobile: true });
  const page = await context.newPage();
  await page.goto(pathToFileURL(path).href);
  return page;
}

test('every cue is ticked by touch, the next one stays in sight, ticks outlast a reload', async () => {
  const page = await opened();
  const boxes = page.locator('.live input');
  const count = await boxes.count();
  expect(count).toBe(plan.cues.length);
  for (let i = 0; i < count; i++) {
    const next = await page.locator('li.next').boundingBox();
    expect(next!.y, `cue ${i + 1}`).toBeGreaterThanOrEqual(0);
    expect(next!.y + next!.height, `cue ${i + 1}`).toBeLessThanOrEqual(SIZE.height);
    expect(await page.locator('li.next').textContent()).toContain(plan.cues[i]!.at.slice(11, 19));
    // A thumb presses the row, not the box.
    await page.touchscreen.tap(next!.x + next!.width / 2, next!.y + next!.height / 2);
    await expect.poll(() => page.locator('.live input:checked').count()).toBe(i + 1);
    if (i === 8) {
      await page.reload();
      expect(await page.locator('.live input:checked').count()).toBe(i + 1);
    }
  }
  expect(await page.locator('li.next').count()).toBe(0);
  // A slip is taken back where it was made.
  await boxes.last().tap();
  expect(await page.locator('li.next').textContent()).toContain(plan.cues.at(-1)!.at.slice(11, 19));
});

test('nothing is wider than the screen, and a value is not broken in two', async () => {
  const page = await opened();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(SIZE.width);
  const lines = await page
    .locator('.live .step b')
    .evaluateAll((steps) => steps.map((step) => [step.textContent, step.getClientRects().length] as const));
  expect(lines).toHaveLength(plan.cues.reduce((sum, { changes }) => sum + changes.length, 0));
  expect(lines.filter(([, count]) => count > 1)).toEqual([]);
});

test('a filter change says so, and has its steps in the order of work', async () => {
  const page = await opened();
  const change = page.locator('.live li', { hasText: 'FILTER CHANGE' });
  expect(await change.count()).toBe(1);
  const steps = await change.locator('.step').allInnerTexts();
  expect(steps.map((step) => step.replaceAll('\u00a0', ' '))).toEqual([
    '1 Take off ND 1.8',
    expect.stringMatching(/^2 Shutter 6 s → 1\/5 15 clicks$/),
  ]);
  expect(await change.textContent()).toMatch(/may cost frames \d+ to \d+/);
});
