// Threads that plan, kept for the next request: starting one takes longer than most plans, and each has the library to
// itself in memory. Requests wait in their order.

import { Worker } from 'node:worker_threads';

/**
 * `plan` answers a shoot file's text with `{ status, body }`; one whose `isGone()` says so is not planned any more. `end`
 * ends the threads.
 */
export function plannerPool(limits) {
  const idle = [];
  const waiting = [];
  let busy = 0;
  let ended = false;

  function start() {
    const worker = new Worker(new URL('./plan.mjs', import.meta.url), {
      resourceLimits: { maxOldGenerationSizeMb: limits.memoryMB },
    });
    worker.unref(); // an idle one keeps no process alive
    return worker.on('error', () => {}); // told where it happens, below
  }

  function next() {
    if (busy >= limits.threads) return;
    const asked = waiting.shift();
    if (asked === undefined) return;
    if (asked.isGone()) {
      asked.resolve({ status: 503, body: '' });
      return next();
    }
    busy++;
    const worker = idle.pop() ?? start();
    const answered = (answer) => finish(answer, true);
    const failed = () => finish(refusal(500, 'planning failed'), false);
    const timer = setTimeout(
      () => finish(refusal(503, `no plan within ${limits.planMs / 1000} s`), false),
      limits.planMs,
    );
    worker.once('message', answered).once('error', failed);
    worker.postMessage({ text: asked.text, frames: limits.frames });

    function finish(answer, isSound) {
      clearTimeout(timer);
      worker.off('message', answered).off('error', failed);
      if (isSound && !ended) idle.push(worker);
      else void worker.terminate();
      busy--;
      asked.resolve(answer);
      next();
    }
  }

  return {
    plan: (text, isGone = () => false) =>
      new Promise((resolve) => {
        waiting.push({ text, isGone, resolve });
        next();
      }),
    end() {
      ended = true;
      for (const worker of idle.splice(0)) void worker.terminate();
    },
  };
}

const refusal = (status, error) => ({ status, body: `${JSON.stringify({ errors: [error] })}\n` });
