// The HTTP service of docs/examples: a plan for who asks well, one line for everyone else, and it goes on.
// Status codes are those of RFC 9110.

import { once } from 'node:events';
import type { Server } from 'node:http';
import { type AddressInfo, connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { type PlanMade, planShoot, readShoot, writePlan } from '@evenfall/core';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { LAKE } from '../../docs/examples/rig-loop.mjs';
import { LIMITS, startService } from '../../docs/examples/service/service.mjs';
import { checkPlan } from '../reference/plan-checker.js';

const FAR: typeof LIMITS = { ...LIMITS, planMs: 60_000 }; // where the machine is busy, time is not what is tested
const GOOD = {
  ...LAKE,
  intervalS: 60,
  camera: { ...LAKE.camera, shutter: { shortest: '1/4000', longest: '8' } },
};

let server: Server;
beforeAll(async () => {
  server = await startService(0, FAR);
});
afterAll(() => server.close());

const portOf = (at: Server) => (at.address() as AddressInfo).port;

async function ask(body: string | Uint8Array<ArrayBuffer>, init: RequestInit = {}, at = server) {
  const response = await fetch(`http://127.0.0.1:${portOf(at)}/plan`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body,
    ...init,
  });
  return { status: response.status, headers: response.headers, text: await response.text() };
}

/** What comes back on a connection of one's own, until the service ends it. */
async function raw(text: string, at = server): Promise<string> {
  const socket = connect(portOf(at), '127.0.0.1');
  let said = '';
  socket.setEncoding('utf8').on('data', (part) => {
    said += part;
  });
  socket.on('error', () => {});
  socket.write(text);
  await once(socket, 'close');
  return said;
}

/** The same service with other limits, closed when the test ends. */
async function another(limits: Partial<typeof LIMITS>): Promise<Server> {
  const made = await startService(0, { ...FAR, ...limits });
  onTestFinished(() => {
    made.closeAllConnections();
    made.close();
  });
  return made;
}

async function answersStill(at = server): Promise<void> {
  expect((await ask(JSON.stringify(GOOD), {}, at)).status).toBe(200);
}

describe('a good request', () => {
  test('is answered by the plan that the library makes', async () => {
    const { status, text, headers } = await ask(JSON.stringify(GOOD));
    expect(status).toBe(200);
    expect(headers.get('content-type')).toBe('application/json; charset=utf-8');
    const read = readShoot(GOOD);
    if (read.kind === 'wrong') throw new Error(read.errors[0]!.message);
    expect(text).toBe(writePlan(planShoot(read.shoot) as PlanMade));
    expect(checkPlan(JSON.parse(text))).toEqual([]);
  });

  test('that no kit can do is answered too, with remedies', async () => {
    const { status, text } = await ask(
      JSON.stringify({ ...GOOD, camera: { ...GOOD.camera, iso: { lowest: 100, highest: 100 } } }),
    );
    expect(status).toBe(200);
    expect(JSON.parse(text).infeasible).toMatchObject({ reason: 'too-dark' });
    expect(JSON.parse(text).infeasible.remedies.length).toBeGreaterThan(0);
  });
});

describe('where it listens', () => {
  test('is loopback alone', async () => {
    expect(server.address()).toMatchObject({ address: '127.0.0.1', family: 'IPv4' });
    // A link-local address of IPv6 needs its interface named; the others will do.
    const others = Object.values(networkInterfaces())
      .flatMap((each) => each ?? [])
      .filter(({ internal, address }) => !internal && !address.startsWith('fe80'))
      .map(({ address }) => address);
    for (const address of ['::1', ...others]) {
      const socket = connect(portOf(server), address);
      const outcome = await Promise.race([
        once(socket, 'connect').then(() => 'connected'),
        new Promise((resolve) => socket.once('error', ({ code }: NodeJS.ErrnoException) => resolve(code))),
      ]);
      socket.destroy();
      expect(outcome, address).not.toBe('connected');
    }
  });
});

describe('a request that is wrong is refused in a line', () => {
  test.each([
    ['half a file', '{"format":', 400, /^the body is not JSON$/],
    ['nothing', '', 400, /^the body is not JSON$/],
    ['bytes that are no UTF-8', new Uint8Array([0x22, 0xff, 0x22]), 400, /^the body is not UTF-8$/],
    ['a key that is no key', JSON.stringify({ ...GOOD, intervall: 3 }), 422, /^intervall: no such key/],
    ['a number out of range', JSON.stringify({ ...GOOD, intervalS: 1e308 }), 422, /^intervalS: 1e\+308/],
    ['no object', '[]', 422, /./],
  ])('%s', async (_, body, status, line) => {
    const answer = await ask(body);
    expect(answer.status).toBe(status);
    const { errors } = JSON.parse(answer.text);
    expect(errors[0]).toMatch(line);
    for (const error of errors) expect(error).not.toMatch(/\n/);
  });

  test.each([
    ['another path', { path: '/' }, 404],
    ['another method', { method: 'GET' }, 405],
    ['another type of content', { type: 'text/plain' }, 415],
    ["another site's name for this address", { host: 'plans.example:80' }, 421],
  ])(
    '%s',
    async (_, {
      path = '/plan',
      method = 'POST',
      type = 'application/json',
      host = '',
    }: { path?: string; method?: string; type?: string; host?: string }, status) => {
      const said = await raw(
        `${method} ${path} HTTP/1.1\r\nHost: ${host || `127.0.0.1:${portOf(server)}`}\r\nContent-Type: ${type}\r\nContent-Length: 2\r\n\r\n{}`,
      );
      expect(said).toMatch(new RegExp(`^HTTP/1.1 ${status} `));
      expect(said).not.toMatch(/access-control/i);
      if (status === 405) expect(said).toMatch(/^allow: POST\r$/im);
    },
  );
});

describe('too large', () => {
  const large = JSON.stringify({ ...GOOD, title: 'x'.repeat(LIMITS.bytes) });

  test('by what the request says', async () => {
    expect((await ask(large)).status).toBe(413);
    await answersStill();
  });

  test('by what comes, where the request says nothing', async () => {
    const parts = large.match(/.{1,20000}/g)!.map((part) => `${part.length.toString(16)}\r\n${part}\r\n`);
    const said = await raw(
      `POST /plan HTTP/1.1\r\nHost: 127.0.0.1:${portOf(server)}\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n${parts.join('')}`,
    );
    expect(said).toMatch(/^HTTP\/1.1 413 /);
    await answersStill();
  });

  test('a plan of too many frames', async () => {
    const small = await another({ frames: 50 });
    const { status, text } = await ask(JSON.stringify(GOOD), {}, small);
    expect(status).toBe(422);
    expect(JSON.parse(text).errors[0]).toMatch(/^the shoot has \d+ frames; this service plans at most 50$/);
  });

  test('a plan that takes more memory than there is for one', async () => {
    const small = await another({ frames: 100_000, memoryMB: 12 });
    const { status, text } = await ask(
      JSON.stringify({
        ...LAKE,
        intervalS: 0.9,
        camera: {
          ...LAKE.camera,
          gapS: 0.1,
          shutter: { shortest: '1/4000', longest: '1/4' },
          aperture: '2.8',
          iso: { lowest: 100, highest: 102400 },
        },
      }),
      {},
      small,
    );
    expect({ status, text }).toEqual({ status: 500, text: '{"errors":["planning failed"]}\n' });
    expect((await ask('{}', {}, small)).status).toBe(422);
  });
});

describe('too slow', () => {
  test('a request that never ends is ended', async () => {
    const hasty = await another({ requestMs: 300 });
    const said = await raw(
      `POST /plan HTTP/1.1\r\nHost: 127.0.0.1:${portOf(hasty)}\r\nContent-Type: application/json\r\nContent-Length: 500\r\n\r\n{`,
      hasty,
    );
    expect(said).toMatch(/^HTTP\/1.1 408 /);
  });

  test('headers that never end are ended', async () => {
    const hasty = await another({ requestMs: 300 });
    expect(await raw('POST /plan HTTP/1.1\r\nHost: a', hasty)).toMatch(/^HTTP\/1.1 408 /);
  });

  test('a plan that takes too long is given up, and the next is made', async () => {
    const limits = { ...FAR, planMs: 1 };
    const hasty = await startService(0, limits);
    onTestFinished(() => void hasty.close());
    const { status, text, headers } = await ask(JSON.stringify(GOOD), {}, hasty);
    expect({ status, text }).toEqual({ status: 503, text: '{"errors":["no plan within 0.001 s"]}\n' });
    expect(headers.get('retry-after')).toBe('1');
    limits.planMs = 60_000;
    await answersStill(hasty);
  });
});

describe('too many at once', () => {
  test('are asked to come again, and may', async () => {
    const narrow = await another({ atOnce: 1 });
    const socket = connect(portOf(narrow), '127.0.0.1');
    socket.on('error', () => {});
    const body = JSON.stringify(GOOD);
    // The first has begun and is not yet whole when the second comes.
    const begun = once(narrow, 'request');
    socket.write(
      `POST /plan HTTP/1.1\r\nHost: 127.0.0.1:${portOf(narrow)}\r\nContent-Type: application/json\r\nContent-Length: ${body.length}\r\n\r\n`,
    );
    await begun;
    const second = await ask(body, {}, narrow);
    expect(second.status).toBe(503);
    expect(second.headers.get('retry-after')).toBe('1');
    const answered = once(socket, 'data');
    socket.write(body);
    expect(String((await answered)[0])).toMatch(/^HTTP\/1.1 200 /);
    socket.destroy();
    await expect.poll(async () => (await ask(body, {}, narrow)).status).toBe(200);
  });
});

describe('fifty at once', () => {
  test('wait for the threads there are, and each has its own plan', async () => {
    const wide = await another({ threads: 2, atOnce: 50 });
    const titles = Array.from({ length: 50 }, (_, i) => `Evening ${i}`);
    const plans = await Promise.all(
      titles.map(async (title) => JSON.parse((await ask(JSON.stringify({ ...GOOD, title }), {}, wide)).text)),
    );
    expect(plans.map(({ shoot }) => shoot.title)).toEqual(titles);
  });

  test('a thread that fails is replaced, and those who wait are answered', async () => {
    const one = await another({ threads: 1, memoryMB: 12, frames: 100_000 });
    const heavy = {
      ...LAKE,
      intervalS: 0.9,
      camera: { ...LAKE.camera, gapS: 0.1, shutter: { shortest: '1/4000', longest: '1/4' }, aperture: '2.8' },
    };
    heavy.camera.iso = { lowest: 100, highest: 102400 };
    const answers = await Promise.all([
      ask(JSON.stringify(heavy), {}, one),
      ask('{}', {}, one),
      ask('[]', {}, one),
    ]);
    expect(answers.map(({ status }) => status)).toEqual([500, 422, 422]);
  });
});

describe('hostile', () => {
  test.each([
    ['deep nesting', `${'['.repeat(30_000)}${']'.repeat(30_000)}`, 422],
    ['keys of the prototype', '{"__proto__":{"format":"evenfall-shoot/1"},"constructor":{}}', 422],
    ['a million frames', JSON.stringify({ ...GOOD, intervalS: 0.001 }), 422],
    ['a number beyond numbers', JSON.stringify(GOOD).replace('57.05', '1e999'), 422],
    ['a name of control characters', JSON.stringify({ ...GOOD, title: '\u0000\u001b[2J' }), 422],
  ])('%s', async (_, body, status) => {
    const answer = await ask(body);
    expect(answer.status).toBe(status);
    for (const error of JSON.parse(answer.text).errors) expect(error.length).toBeLessThan(400);
    await answersStill();
  });

  test('who hangs up half way', async () => {
    const socket = connect(portOf(server), '127.0.0.1');
    const begun = once(server, 'request');
    socket.write(
      `POST /plan HTTP/1.1\r\nHost: 127.0.0.1:${portOf(server)}\r\nContent-Type: application/json\r\nContent-Length: 900\r\n\r\n{"format"`,
    );
    await begun;
    socket.destroy();
    await answersStill();
  });

  test('who speaks no HTTP', async () => {
    expect(await raw('\u0016\u0003\u0001\r\n\r\n')).toMatch(/^HTTP\/1.1 400 /);
    await answersStill();
  });
});
