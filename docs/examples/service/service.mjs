// A small HTTP service that answers plans, for programs on this machine alone.
//
//   node service.mjs                                  prints its address
//   curl --json @evening.json 127.0.0.1:8017/plan     a shoot in, a plan out
//
// Planning is computation: a large shoot would hold up everybody else. So plans are made in threads apart
// that may be ended, and there are limits on everything a stranger decides. It asks nobody who they are: do not open
// it to a network as it stands.

import { once } from 'node:events';
import { createServer } from 'node:http';
import { fileURLToPath } from 'node:url';
import { plannerPool } from './pool.mjs';

export const LIMITS = {
  bytes: 64 * 1024, // of a shoot file
  requestMs: 5000, // for a request to arrive, and for a connection on which nothing moves
  planMs: 5000, // for one plan
  frames: 20_000, // in one plan
  memoryMB: 256, // for one plan
  threads: 2, // that plan at the same time
  atOnce: 50, // requests, those that wait for a thread too; more are asked to come again
};

/** A running server; port 0 takes any that is free. `server.close()` ends it. */
export async function startService(port = 0, limits = LIMITS) {
  const { requestMs } = limits;
  const timeouts = { requestTimeout: requestMs, headersTimeout: requestMs, connectionsCheckingInterval: 250 };
  const planners = plannerPool(limits);
  let busy = 0;
  const server = createServer(timeouts, async (request, response) => {
    busy++;
    response.once('close', () => busy--);
    try {
      const { status, body } =
        busy > limits.atOnce ? BUSY : await answer(request, response, planners, limits);
      response.writeHead(status, {
        'content-type': 'application/json; charset=utf-8',
        'x-content-type-options': 'nosniff',
        'cache-control': 'no-store',
        ...(status === 405 ? { allow: 'POST' } : {}),
        ...(status === 503 ? { 'retry-after': '1' } : {}),
        ...(status === 200 ? {} : { connection: 'close' }), // what may still come of the request is not read
      });
      response.end(body);
    } catch {
      response.destroy(); // whoever asked has gone, or took too long
    }
  });
  // A reader who does not read; waiting for a thread, the last may stand behind all others.
  server.setTimeout(requestMs + limits.planMs * Math.ceil(limits.atOnce / limits.threads));
  server.once('close', planners.end);
  server.maxConnections = 64;
  server.listen(port, '127.0.0.1');
  await once(server, 'listening');
  return server;
}

const refusal = (status, error) => ({ status, body: `${JSON.stringify({ errors: [error] })}\n` });
const BUSY = refusal(503, 'busy; ask again in a second');

async function answer(request, response, planners, limits) {
  const { headers, method, socket, url } = request;
  // A page of another site may reach this port by a name of its own, or by a form: neither gets past these two.
  if (![`127.0.0.1:${socket.localPort}`, `localhost:${socket.localPort}`].includes(headers.host)) {
    return refusal(421, 'ask for 127.0.0.1');
  }
  if (url !== '/plan') return refusal(404, 'there is /plan, and nothing else');
  if (method !== 'POST') return refusal(405, 'POST a shoot file');
  if (!/^application\/json\b/i.test(headers['content-type'] ?? '')) {
    return refusal(415, 'content-type must be application/json');
  }
  const body = await bodyOf(request, limits.bytes);
  if (body === undefined) return refusal(413, `a shoot file of at most ${limits.bytes} bytes, please`);
  let text;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(body);
  } catch {
    return refusal(400, 'the body is not UTF-8');
  }
  return planners.plan(text, () => response.destroyed);
}

/** The whole body, or nothing where it is too long. */
async function bodyOf(request, bytes) {
  if (Number(request.headers['content-length'] ?? 0) > bytes) return undefined;
  const parts = [];
  let size = 0;
  for await (const part of request.iterator({ destroyOnReturn: false })) {
    size += part.length;
    if (size > bytes) return undefined;
    parts.push(part);
  }
  return Buffer.concat(parts);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await startService(8017);
  console.log('Plans are answered at http://127.0.0.1:8017/plan');
}
