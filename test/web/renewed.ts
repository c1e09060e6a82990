// A new build on the server under a page that is open, and parts that do not come.

import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { serve } from '../../packages/tools/serve.mjs';
import { EVENING, fragmentFor, planned, SIZES, type Site, violations } from './build.js';

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

/** Makes of a built page the next one: every part under another name, as a change of its content would give it. */
function renew(folder: string): void {
  const assets = join(folder, 'assets');
  const names = new Map(
    readdirSync(assets).map((name) => [name, name.replace(/\.\w+$/, (end) => `-renewed${end}`)] as const),
  );
  for (const [before, after] of names) renameSync(join(assets, before), join(assets, after));
  const texts = [
    'index.html',
    'planner.js',
    'offline.js',
    ...[...names.values()].map((name) => `assets/${name}`),
  ];
  for (const path of texts) {
    let text = readFileSync(join(folder, path), 'utf8');
    for (const [before, after] of names) text = text.replaceAll(before, after);
    if (path === 'offline.js') text = text.replace(/evenfall-\w{12}/, 'evenfall-renewed00000');
    writeFileSync(join(folder, path), text);
  }
}

const scriptOf = (page: Page) => page.locator('script[type=module]').first().getAttribute('src');

/** The script of the page as it is a moment after it is opened again: it may reload itself once more. */
async function reopened(page: Page): Promise<string | null> {
  await page.reload();
  await page.waitForTimeout(1000);
  return scriptOf(page);
}

export function renewed(site: () => Site): void {
  describe('a new build on the server', () => {
    it('leaves an open page all its parts, and comes when that has been closed and is opened again', async () => {
      const folder = mkdtempSync(join(tmpdir(), 'evenfall-'));
      cpSync(site().folder, folder, { recursive: true });
      const server = await serve(folder);
      const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
      try {
        const page = await site().open({ url, path: fragmentFor(EVENING), ...SIZES.phone });
        await page.evaluate(() => navigator.serviceWorker.ready);
        const old = await scriptOf(page);
        renew(folder);
        // The browser looks for a newer worker, gets it, and puts it where it belongs.
        await page.evaluate(async () => {
          const registration = await navigator.serviceWorker.ready;
          await registration.update();
          const { installing } = registration;
          if (installing !== null) {
            await new Promise<void>((resolve) => {
              installing.addEventListener(
                'statechange',
                () => installing.state !== 'installing' && resolve(),
              );
            });
          }
        });
        await page.waitForTimeout(500);
        await button(page, 'Go to the field').click();
        await page.locator('.field-next').waitFor();
        await page.reload();
        await page.locator('.field-next').waitFor();
        expect(await scriptOf(page)).toBe(old);
        await button(page, 'Leave').click();
        const [download] = await Promise.all([
          page.waitForEvent('download'),
          button(page, 'Shoot (YAML)').click(),
        ]);
        expect(download.suggestedFilename()).toMatch(/\.yaml$/);
        await button(page, 'End the running shoot').click();
        await button(page, 'End it').click();
        // A page that is still on its way out counts as open; then the build comes the next time.
        await expect.poll(() => reopened(page).catch(() => old), { interval: 2000 }).not.toBe(old);
        await planned(page);
        expect(await page.getByLabel('Title on the card').inputValue()).toBe(EVENING.title);
        await page.context().close();
      } finally {
        await new Promise((resolve) => server.close(resolve));
        rmSync(folder, { recursive: true });
      }
    });

    it('says what to do where a part does not come, at the desk and in the field', async () => {
      const page = await site().open({
        path: fragmentFor(EVENING),
        ...SIZES.phone,
        serviceWorkers: 'block',
        mayComplain: true,
        before: (opened) => opened.route(/assets\/(view|file-work)-[^/]*\.js$/, (route) => route.abort()),
      });
      const missing = page.getByText('A part of this page did not load.');
      await button(page, 'Shoot (YAML)').click();
      await missing.waitFor();
      await button(page, 'Go to the field').click();
      await missing.waitFor();
      expect(await violations(page)).toEqual([]);
      await page.unrouteAll();
      await button(page, 'Reload').click();
      await page.locator('.field-next').waitFor();
      expect(await missing.count()).toBe(0);
      await page.context().close();
    });
  });
}
