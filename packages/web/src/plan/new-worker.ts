/**
 * A worker of the built page. The build writes planner.js as an entry of its own, so that page and worker share
 * what both need instead of loading it twice.
 */
export function newWorker(): Worker {
  const script = import.meta.env.DEV ? 'src/plan/worker.ts' : 'planner.js';
  return new Worker(new URL(script, document.baseURI), { type: 'module' });
}
