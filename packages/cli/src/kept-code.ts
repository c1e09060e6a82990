// Compiled code, kept from one run to the next.
//
// What is kept is a copy: where it cannot be read, is not whole, or is another engine's, modules are compiled as they always
// are, and where it cannot be written nothing is said. The engine itself does not look whether the code is whole.

import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { homedir } from 'node:os';
import { dirname, isAbsolute, join, resolve } from 'node:path';
import { cachedDataVersionTag, deserialize, serialize } from 'node:v8';
import { Script } from 'node:vm';

/** Where a user's programs keep what can be made again. Sources: XDG Base Directory 0.8; common practice elsewhere. */
export function keptFolder(): string | undefined {
  const { LOCALAPPDATA, XDG_CACHE_HOME } = process.env;
  const own =
    process.platform === 'win32'
      ? LOCALAPPDATA
      : process.platform === 'darwin'
        ? join(homedir(), 'Library/Caches')
        : XDG_CACHE_HOME;
  const inHome = join(homedir(), '.cache');
  // A path that is not from the root counts as none, as XDG has it, and of no home there is no cache.
  const folder = own !== undefined && isAbsolute(own) ? own : inHome;
  return isAbsolute(folder) ? join(folder, 'evenfall') : undefined;
}

const DIGEST_BYTES = 32;
const digest = (content: Uint8Array) => createHash('sha256').update(content).digest();

/** Code of so many builds is kept, the latest. Our choice. */
const MOST_BUILDS = 4;

/** The modules of one bundle, CommonJS, with what other runs compiled of them. */
export class KeptCode {
  private readonly path: string;
  private readonly code: Map<string, Uint8Array>; // by module
  private readonly fresh = new Map<string, Script>();
  private readonly loaded = new Map<string, { exports: unknown }>();
  private readonly folder: string;
  private readonly require: NodeJS.Require;

  /**
   * @param folder of the bundle; its file `fingerprint` tells it from every other
   * @param keptIn where compiled code is kept
   * @param name of the code that this run keeps, and finds
   * @param require for what is no module of the bundle
   */
  constructor(folder: string, keptIn: string, name: string, require: NodeJS.Require) {
    this.folder = folder;
    this.require = require;
    const build = readFileSync(join(folder, 'fingerprint'), 'utf8').trim();
    this.path = join(keptIn, `${build}-${cachedDataVersionTag()}`, `${name}.code`);
    this.code = readCode(this.path);
    process.on('exit', () => this.keep());
  }

  /** What a module exports. */
  load(path: string): unknown {
    const known = this.loaded.get(path);
    if (known !== undefined) return known.exports;
    const module = { exports: {} as unknown };
    this.loaded.set(path, module);
    const name = path.slice(this.folder.length + 1);
    const source = `(function (exports, require, module, __filename, __dirname) { ${readFileSync(path, 'utf8')}\n})`;
    const cachedData = this.code.get(name);
    const script = new Script(source, { filename: path, cachedData });
    if (cachedData === undefined || script.cachedDataRejected) this.fresh.set(name, script);
    const require = (id: string) =>
      id.startsWith('.') ? this.load(resolve(dirname(path), id)) : this.require(id);
    script.runInThisContext()(module.exports, require, module, path, dirname(path));
    return module.exports;
  }

  /** At the end, when what this run needed has been compiled. */
  private keep(): void {
    if (this.fresh.size === 0) return;
    try {
      for (const [name, script] of this.fresh) this.code.set(name, script.createCachedData());
      const place = dirname(this.path);
      const keptIn = dirname(place);
      // Node's own way to make all of them never ends where the system, as in /proc, refuses one as if another lacked.
      for (const folder of [dirname(keptIn), keptIn, place]) makeFolder(folder);
      const content = serialize(this.code);
      // Another run that reads meanwhile finds the old or the new, whole.
      const unfinished = `${this.path}.${process.pid}`;
      writeFileSync(unfinished, Buffer.concat([digest(content), content]), { mode: 0o600 });
      renameSync(unfinished, this.path);
      throwAwayOld(keptIn);
    } catch {
      // A run without it is as right, and a little later.
    }
  }
}

function readCode(path: string): Map<string, Uint8Array> {
  try {
    const file = readFileSync(path);
    const content = file.subarray(DIGEST_BYTES);
    if (digest(content).equals(file.subarray(0, DIGEST_BYTES))) return deserialize(content);
  } catch {
    // None yet.
  }
  return new Map();
}

function makeFolder(path: string): void {
  if (!existsSync(path)) mkdirSync(path, { mode: 0o700 });
}

function throwAwayOld(keptIn: string): void {
  const builds = readdirSync(keptIn)
    .map((build) => join(keptIn, build))
    .map((place) => ({ place, atMs: statSync(place).mtimeMs }))
    .sort((a, b) => b.atMs - a.atMs);
  for (const { place } of builds.slice(MOST_BUILDS)) rmSync(place, { recursive: true });
}
