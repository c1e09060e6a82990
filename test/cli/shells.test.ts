// Completion scripts in the shells themselves, the man page in a reader of man pages, and what a program reads.

import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { stripVTControlCharacters } from 'node:util';
import { describe, expect, test } from 'vitest';
import { EXIT_STATUS } from '../../packages/cli/src/commands/described.js';
import { EVENING, evenfall, eveningPlan, folder, IMPOSSIBLE } from './run.js';

const has = (program: string) => spawnSync('sh', ['-c', `command -v ${program}`]).status === 0;
const COMMANDS = ['new', 'plan', 'card', 'chart', 'cues', 'light', 'evenings', 'follow', 'review', 'frames'];

async function script(shell: string) {
  const { status, out } = await evenfall(['completion', shell]);
  expect(status).toBe(0);
  return folder({ script: out }).at('script');
}

describe.skipIf(!has('bash'))('bash', () => {
  /** What bash would offer for the last of these words. */
  async function offered(...words: string[]): Promise<string[]> {
    const ask = `source "$0"; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _evenfall; printf '%s\\n' "\${COMPREPLY[@]}"`;
    const { stdout, stderr } = spawnSync('bash', ['-c', ask, await script('bash'), ...words], {
      encoding: 'utf8',
    });
    expect(stderr).toBe('');
    return stdout.split('\n').filter((each) => each !== '');
  }

  test('completes commands, options, and the words an option takes', async () => {
    expect(await offered('evenfall', '')).toEqual(expect.arrayContaining(COMMANDS));
    expect(await offered('evenfall', 'c')).toEqual(['card', 'chart', 'cues', 'completion']);
    expect(await offered('evenfall', 'card', '--p')).toEqual(['--paper']);
    expect(await offered('evenfall', 'card', '--paper', '')).toEqual(['a6', 'a5', 'a4', 'letter']);
    expect(await offered('evenfall', 'plan', '--language', 'd')).toEqual(['de']);
    expect(await offered('evenfall', 'completion', '')).toEqual(['bash', 'zsh', 'fish']);
    expect(await offered('evenfall', 'help', 'pl')).toEqual(['plan']);
  });

  test('leaves names of files to the shell', async () => {
    expect(await offered('evenfall', 'plan', 'eve')).toEqual([]);
    expect(await offered('evenfall', 'card', '-o', '')).toEqual([]);
  });

  test('is registered for the command', async () => {
    const { stdout } = spawnSync('bash', ['-c', 'source "$0"; complete -p evenfall', await script('bash')], {
      encoding: 'utf8',
    });
    expect(stdout.trim()).toBe('complete -o default -F _evenfall evenfall');
  });
});

test.skipIf(!has('zsh'))('zsh reads its script', async () => {
  const ask = 'autoload -U compinit; compinit -D; source "$0"; print $_comps[evenfall]';
  const { stdout, stderr } = spawnSync('zsh', ['-f', '-c', ask, await script('zsh')], { encoding: 'utf8' });
  expect({ stdout, stderr }).toEqual({ stdout: '_evenfall\n', stderr: '' });
});

test.skipIf(!has('fish'))('fish completes commands, options, and their words', async () => {
  const path = await script('fish');
  const offered = (line: string) =>
    spawnSync('fish', ['--no-config', '-c', `source ${path}; complete -C '${line}'`], { encoding: 'utf8' })
      .stdout.trim()
      .split('\n')
      .map((each) => each.split('\t')[0]);
  expect(offered('evenfall ch')).toEqual(['chart']);
  expect(offered('evenfall card --paper ')).toEqual(expect.arrayContaining(['a5', 'letter']));
  expect(offered('evenfall card --pap')).toEqual(['--paper']);
});

test('any other shell is refused with those there are', async () => {
  const { status, err } = await evenfall(['completion', 'tcsh']);
  expect(status).toBe(1);
  expect(err).toMatch(/^evenfall: .*Allowed choices are bash, zsh, fish\.\n$/);
});

describe('the man page', () => {
  test('has every command and every option of the help', async () => {
    const { out } = await evenfall(['man']);
    const text = out.replaceAll('\\-', '-');
    for (const command of COMMANDS) {
      expect(text).toContain(`.SS evenfall ${command} `);
      const { out: help } = await evenfall([command, '--help']);
      for (const [, long] of help.matchAll(/^ {2}(?:-\w, )?(--[\w-]+)/gm)) expect(text).toContain(long);
    }
    for (const means of EXIT_STATUS) expect(text).toContain(means);
  });

  test.skipIf(!has('groff'))('is set by groff without a warning', async () => {
    const { out } = await evenfall(['man']);
    const { stdout, stderr } = spawnSync('groff', ['-man', '-Tutf8', '-ww', '-Kutf8', '-P-bu'], {
      input: out,
      encoding: 'utf8',
    });
    expect(stderr).toBe('');
    const plain = stripVTControlCharacters(stdout);
    expect(plain).toContain('evenfall plan --at 53.35,-6.26');
    expect(plain).toContain('EXIT STATUS');
  });

  test.skipIf(!has('mandoc'))('is found in order by mandoc', async () => {
    const { out } = await evenfall(['man']);
    const { stdout } = spawnSync('mandoc', ['-T', 'lint', '-W', 'warning'], { input: out, encoding: 'utf8' });
    // No date: the page says the version it is of.
    const told = stdout.split('\n').filter((line) => line !== '' && !/missing date/.test(line));
    expect(told).toEqual([]);
  });
});

describe('exit status', () => {
  test('is as docs/command.md has it', async () => {
    const page = readFileSync(new URL('../../docs/command.md', import.meta.url), 'utf8');
    const rows = [...page.matchAll(/^\| (\d) \| (.*) \|$/gm)].map(([, status, means]) => [
      Number(status),
      means,
    ]);
    expect(rows).toEqual(EXIT_STATUS.map((means, status) => [status, means]));
  });

  test.each([
    [0, ['plan', '-'], EVENING],
    [0, ['--version'], ''],
    [1, ['plan', 'nowhere.yaml'], ''],
    [1, ['plan', '-', '--what'], EVENING],
    [1, ['nothing'], ''],
    [1, ['cues', '-'], EVENING],
    [2, ['plan', '-'], IMPOSSIBLE],
    [2, ['card', '-', '-o', '-'], IMPOSSIBLE],
    [2, ['plan', '-', '--json'], IMPOSSIBLE],
    [2, ['evenings', '-', '--days', '1'], IMPOSSIBLE],
  ])('is %i of %j', async (status, argv, stdin) => {
    expect((await evenfall(argv, stdin)).status).toBe(status);
  });
});

describe('--json', () => {
  test('is known to every command that has an answer', async () => {
    for (const command of COMMANDS) expect((await evenfall([command, '--help'])).out).toContain('--json');
  });

  test('of cues is the list of the plan file', async () => {
    const { out } = await evenfall(['cues', '-', '--json'], EVENING);
    expect(JSON.parse(out)).toEqual(eveningPlan().cues);
  });

  test('of frames is numbers', async () => {
    // By hand: 90 minutes in 12 s of 24 frames a second are 288 frames, and 287 intervals of 5400 / 287 s.
    const argv = ['frames', '--record', '90m', '--clip', '12', '--subject', 'clouds', '--json'];
    const { frameCount, intervalS, longestShutter, advice } = JSON.parse((await evenfall(argv)).out);
    expect(frameCount).toBe(288);
    expect(intervalS).toBeCloseTo(5400 / 287, 9);
    expect(longestShutter).toEqual({ label: '15', timeS: 16 });
    expect(advice.rows.length).toBeGreaterThan(1);
  });

  test('of what is written names the files', async () => {
    const { at } = folder();
    const { out } = await evenfall(['card', '-', '-o', at('card.svg'), '--json'], EVENING);
    const { wrote } = JSON.parse(out);
    expect(wrote.length).toBeGreaterThan(1);
    for (const path of wrote) expect(existsSync(path)).toBe(true);
  });

  test('of new is a shoot file', async () => {
    const { out } = await evenfall(['new', '-', '--at', '53.35,-6.26', '--yes', '--json']);
    expect((await evenfall(['plan', '-', '--json'], out)).status).toBe(0);
  });
});
