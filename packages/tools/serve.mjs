// Serves a folder of built files on loopback, as a strict host would.

import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { createGzip } from 'node:zlib';

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
};

const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; worker-src 'self'; " +
  "connect-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/**
 * @param folder what to serve
 * @param port 0 takes any that is free
 * @returns the server, once it listens
 */
export function serve(folder, port = 0) {
  const server = createServer((request, response) => {
    let path;
    try {
      path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname));
    } catch {
      response.writeHead(400).end();
      return;
    }
    const file = join(folder, path.endsWith('/') ? `${path}index.html` : path);
    const type = TYPES[extname(file)];
    const isFile = statSync(file, { throwIfNoEntry: false })?.isFile() ?? false;
    if (
      !isFile ||
      type === undefined ||
      path.startsWith('..') ||
      !['GET', 'HEAD'].includes(request.method ?? '')
    ) {
      response.writeHead(404, { 'Content-Type': 'text/plain' }).end('There is nothing here.\n');
      return;
    }
    const zip = /\bgzip\b/.test(String(request.headers['accept-encoding'])) && !type.startsWith('image/png');
    response.writeHead(200, {
      'Content-Type': type,
      'Content-Security-Policy': POLICY,
      'X-Content-Type-Options': 'nosniff',
      'Referrer-Policy': 'no-referrer',
      // Names under assets/ change with their content; the rest is asked for again.
      'Cache-Control': path.startsWith('/assets/') ? 'max-age=31536000, immutable' : 'no-cache',
      ...(zip ? { 'Content-Encoding': 'gzip', Vary: 'Accept-Encoding' } : {}),
    });
    if (request.method === 'HEAD') {
      response.end();
      return;
    }
    const content = createReadStream(file);
    if (zip) content.pipe(createGzip()).pipe(response);
    else content.pipe(response);
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => resolve(server));
  });
}
