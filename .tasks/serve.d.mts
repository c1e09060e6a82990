import type { Server } from 'node:http';
/** Serves a folder on loopback; port 0 takes any that is free. */
export function serve(folder: string, port?: number): Promise<Server>;
