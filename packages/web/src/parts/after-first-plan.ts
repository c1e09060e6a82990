// What the first plan need not wait for, and should not: done in idle time once it is there, one thing after another.

import { answered } from '../state/plan.js';

const idle = (): Promise<unknown> =>
  new Promise((resolve) => {
    if ('requestIdleCallback' in window) requestIdleCallback(resolve, { timeout: 3000 });
    else setTimeout(resolve, 500);
  });

export async function afterFirstPlan(tasks: readonly (() => unknown)[]): Promise<void> {
  await answered();
  for (const task of tasks) {
    await idle();
    await task();
  }
}
