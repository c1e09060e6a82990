// In the page that is one file there is no second file to load a worker from: it travels inside.

import PlanWorker from './worker.ts?worker&inline';

export function newWorker(): Worker {
  return new PlanWorker();
}
