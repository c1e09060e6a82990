// A plan that never comes.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { EVENING, fragmentFor, planned, planOn, type Site, textOf, violations } from './build.js';

/** A worker that plans as always, but never a shoot with an interval of 9 s. */
const STUCK = `import './planner.js?as-it-is';
const plan = self.onmessage;
self.onmessage = (event) => event.data.shoot.intervalS === 9 || plan(event);
`;

async function stuckAtNine(page: Page): Promise<void> {
  await page.clock.install({ time: '2026-09-12T12:00:00+02:00' });
  await page.route(/planner\.js$/, (route) => route.fulfill({ contentType: 'text/javascript', body: STUCK }));
}

export function givenUp(site: () => Site): void {
  describe('a plan that does not come', () => {
    it('is given up after some seconds, says which key to look at, and is gone with it', async () => {
      const page = await site().open({
        path: fragmentFor(EVENING),
        serviceWorkers: 'block',
        before: stuckAtNine,
      });
      await page.getByLabel('Interval', { exact: true }).fill('9');
      await page.clock.runFor(1000);
      expect(await page.locator('.summary').getAttribute('aria-busy')).toBe('true');
      await page.clock.runFor(16_000);
      await page.getByRole('heading', { name: 'Planning was given up' }).waitFor();
      expect(await textOf(page.locator('.problem'))).toContain('Look at intervalS.');
      expect(await page.getByRole('button', { name: 'Go to the field' }).isDisabled()).toBe(true);
      expect(await violations(page)).toEqual([]);
      // Nor is it planned for ever after a reload.
      await page.reload();
      await page.clock.runFor(17_000);
      await page.getByRole('heading', { name: 'Planning was given up' }).waitFor();
      await page.getByLabel('Interval', { exact: true }).fill('12');
      await page.clock.runFor(1000);
      await planned(page);
      expect(await page.locator('.problem').count()).toBe(0);
      expect((await planOn(page)).shoot.intervalS).toBe(12);
      await page.context().close();
    });
  });
}
