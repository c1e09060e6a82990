// One process at a time: a name that the system takes back when its holder ends, however it ends.

import { unlinkSync } from 'node:fs';
import { connect, createServer, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A name that is held until `release`, or the end of the process. */
export interface Held {
  release(): void;
}

/**
 * Holds a name. A lock file would outlive a process that was killed, and its number may be another's after a start of
 * the machine; a local socket is answered as long as its process lives, and no longer.
 *
 * @param name letters and digits
 * @returns undefined where another process of this user holds it
 */
export async function hold(name: string): Promise<Held | undefined> {
  const path =
    process.platform === 'win32'
      ? `\\\\.\\pipe\\evenfall-${name}`
      : join(tmpdir(), `evenfall-${process.getuid?.() ?? 0}-${name}.sock`);
  for (let tries = 0; tries < 3; tries++) {
    const server = await listening(path);
    if (typeof server === 'object') return { release: () => server.close() };
    // Where there are no sockets nothing can be held, and an evening is not refused for it.
    if (server !== 'EADDRINUSE') return { release: () => {} };
    if (await isAnswered(path)) return undefined;
    try {
      unlinkSync(path); // of a process that was killed
    } catch {
      // Another was quicker.
    }
  }
  return undefined;
}

function listening(path: string): Promise<Server | string> {
  return new Promise((resolve) => {
    const server = createServer((socket) => socket.destroy());
    server.once('error', (error: NodeJS.ErrnoException) => resolve(error.code ?? 'unknown'));
    server.listen(path, () => resolve(server));
    server.unref();
  });
}

function isAnswered(path: string): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect(path);
    socket.once('connect', () => {
      socket.destroy();
      resolve(true);
    });
    socket.once('error', () => resolve(false));
  });
}
