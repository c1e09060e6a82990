// Runs the command inside this process with its own folder and streams.

import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type PlanMade, planShoot, readShoot } from '@evenfall/core';
import { onTestFinished } from 'vitest';
import { parse } from 'yaml';
import { run } from '../../packages/cli/src/main.js';

/** What the command printed, and its exit status. */
export interface Ran {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** What the clock on the wall shows, wherever nobody says otherwise. */
export const NOW_MS = Date.UTC(2020, 0, 1, 12);

export async function evenfall(
  argv: readonly string[],
  stdin = '',
  color = false,
  columns = 80,
  errColumns?: number,
): Promise<Ran> {
  let out = '';
  let err = '';
  const status = await run(argv, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    async *stdinBytes() {
      yield new TextEncoder().encode(stdin);
    },
    async *stdinLines() {
      if (stdin !== '') yield* stdin.replace(/\n$/, '').split('\n');
    },
    nowMs: () => NOW_MS,
    columns,
    ...(errColumns === undefined ? {} : { errColumns }),
    color,
  });
  return { status, out, err };
}

/**
 * The same with a person at a terminal, who types these lines, or waits; what was said before the first of them, two
 * pieces, then after each.
 */
export async function typing(
  argv: readonly string[],
  lines: readonly (string | (() => Promise<unknown>))[],
  stdin = '',
  columns = 80,
  startMs = Date.UTC(2020, 0, 1), // what the clock shows then
): Promise<{ readonly status: number; readonly out: readonly string[]; readonly err: string }> {
  const out: string[] = [];
  let err = '';
  const begunMs = Date.now();
  const say = (text: string) => {
    out[out.length - 1] += text;
  };
  const status = await run(argv, {
    out: (text) => out.push(String(text)),
    err: (text) => {
      err += text;
    },
    async *stdinBytes() {},
    async *stdinLines() {
      if (stdin !== '') yield* stdin.replace(/\n$/, '').split('\n');
    },
    nowMs: () => startMs + (Date.now() - begunMs),
    columns,
    color: false,
    terminal() {
      out.push('');
      return {
        async *lines() {
          out.push('');
          for (const line of lines) {
            if (typeof line === 'function') await line();
            else {
              out.push('');
              yield line;
            }
          }
          out.push('');
        },
        say,
        ask: say,
        close() {},
        columns: () => columns,
        nowMs: () => startMs + (Date.now() - begunMs),
      };
    },
  });
  return { status, out, err };
}

/** A folder that goes when the test ends, with these files in it. */
export function folder(files: Readonly<Record<string, string | Uint8Array>> = {}) {
  const path = mkdtempSync(join(tmpdir(), 'evenfall-'));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) writeFileSync(join(path, name), content);
  return {
    at: (name: string) => join(path, name),
    names: () => readdirSync(path).sort(),
  };
}

/** A commented evening that has a plan, a frame a minute so that it is quick to make. */
export const EVENING = `# a quick evening
format: evenfall-shoot/1
title: "Slipway & gulls"
place:
  latitudeDeg: 57.05
  longitudeDeg: 9.92
date: 2026-09-12
intervalS: 60
camera:
  shutter: { shortest: 1/4000, longest: 30 }
  iso: { lowest: 100, highest: 3200 }
  aperture: 5.6
  frameMB: 30
  cardGB: 64
  batteryFrames: 100
filters:
  - { name: ND 1.8, density: 1.8 }
`;

/** The same with a kit that cannot do it. */
export const IMPOSSIBLE = EVENING.replace('highest: 3200', 'highest: 100').replace(
  'aperture: 5.6',
  'aperture: 16',
);

/** The plan the library makes of the evening, its zone written in by hand. */
export function eveningPlan(more: object = {}): PlanMade {
  const value = parse(EVENING);
  value.place.timeZone = 'Europe/Copenhagen';
  const read = readShoot({ ...value, ...more });
  if (read.kind === 'wrong') throw new Error(read.errors[0]?.message);
  const answer = planShoot(read.shoot);
  if (answer.kind === 'infeasible') throw new Error(answer.infeasible.text);
  return answer;
}
