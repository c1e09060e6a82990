// docs/formats.md and the example shoots are true: every example reads, and every key is told.

import { readdirSync, readFileSync } from 'node:fs';
import { planShoot, readPlan, readShoot, writePlan } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { published, schemaReader } from '../../reference/json-schema.js';
import { checkPlan } from '../../reference/plan-checker.js';
import { LEAST, shootOf } from './sample.js';

const text = (path: string) => readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8');
const formats = text('docs/formats.md');
const moves = text('docs/moves.md');

/** Code blocks of one language: what stands after it, and the block parsed. */
const blocks = (language: string) =>
  [...formats.matchAll(new RegExp(`^\`\`\`${language}(.*)\n([^]*?)^\`\`\`$`, 'gm'))].map(
    ([, info, code]) => ({
      info: info!.trim(),
      value: parse(code!),
    }),
  );

describe('docs/formats.md', () => {
  const yaml = blocks('yaml');
  const [least, full] = yaml.filter(({ info }) => info === '');
  const parts = yaml.filter(({ info }) => info !== '');

  test('the least shoot file, with every default written out, is the full one', () => {
    expect(shootOf(least!.value)).toEqual(full!.value);
  });

  test('has an example of each part that has several shapes', () => {
    expect(parts.map(({ info }) => info)).toEqual([
      'part=span',
      'part=span',
      'part=camera',
      'part=moves',
      'part=filters',
      'part=scene',
      'part=scene',
      'part=look',
    ]);
  });

  test.each(parts)('$info reads', ({ info, value }) => {
    const key = info.replace('part=', '');
    const read = readShoot({
      ...LEAST,
      place: { ...LEAST.place, timeZone: 'Europe/Copenhagen' },
      [key]: value,
    });
    expect(read.kind === 'wrong' ? read.errors : []).toEqual([]);
    expect(read.kind === 'ok' && read.shoot).toMatchObject({ [key]: value });
  });

  const json = blocks('json').map(({ value }) => value);

  test('its plans read', () => {
    const plans = json.filter(({ format }) => format === 'evenfall-plan/1');
    expect(plans).toHaveLength(2);
    for (const plan of plans) {
      const read = readPlan(plan);
      expect(read.kind === 'wrong' ? read.errors : []).toEqual([]);
    }
  });

  test('its light table satisfies the published schema', () => {
    const [table] = json.filter(({ format }) => format === 'evenfall-light/1');
    expect(schemaReader(published('light'))(table)).toEqual([]);
  });

  test('tells every key of every published schema', () => {
    let keys = 0;
    for (const format of ['shoot', 'plan', 'light']) {
      const schema = text(`packages/core/schema/evenfall-${format}-1.schema.json`);
      for (const key of keysOf(JSON.parse(schema))) {
        keys++;
        expect(formats + moves, key).toMatch(new RegExp(`\\b${key}\\b`));
      }
    }
    expect(keys).toBeGreaterThan(80);
  });

  test('moves.md has a shoot with moves that reads, and says their defaults truly', () => {
    const [, code] = /^```yaml\n([\s\S]*?)^```$/m.exec(moves)!;
    const block = parse(code!);
    const shoot = shootOf({ ...LEAST, ...block, camera: { ...LEAST.camera, ...block.camera } });
    expect(shoot.moves).toMatchObject(block.moves);
    const { moves: plain } = shootOf({
      ...LEAST,
      moves: [
        { axis: 'tilt', by: { deg: -3 }, gear: { moveS: 2 } },
        { axis: 'slide', by: { m: 1 }, gear: { moveS: 2 } },
      ],
    });
    const usual = { mode: 'stopped', ease: 'smoothstep', gear: { settleS: 1, moveS: 2 } };
    expect(plain).toEqual([
      { axis: 'tilt', by: { deg: -3 }, ...usual },
      { axis: 'slide', by: { m: 1 }, ...usual, toward: 'side' },
    ]);
  });
});

describe('docs/examples', () => {
  const names = readdirSync(new URL('../../../docs/examples/', import.meta.url))
    .filter((name) => name.endsWith('.yaml'))
    .sort();
  const answers = Object.fromEntries(
    names.map((name) => [name, planShoot(shootOf(parse(text(`docs/examples/${name}`))))]),
  );

  test('are a dusk, a dawn, a pan and those that cannot be done', () => {
    expect(names).toEqual(['dawn.yaml', 'dusk.yaml', 'impossible.yaml', 'pan.yaml', 'slide.yaml']);
    expect(answers['dusk.yaml']).toMatchObject({ shoot: { direction: 'dusk' } });
    expect(answers['dawn.yaml']).toMatchObject({ shoot: { direction: 'dawn' } });
    expect(answers['impossible.yaml']).toMatchObject({ infeasible: { reason: 'too-dark' } });
    expect(answers['pan.yaml']).toMatchObject({ move: { findings: [{ kind: 'too-fast' }, {}] } });
    expect(answers['slide.yaml']).toMatchObject({ infeasible: { reason: 'too-dark' } });
  });

  test.each(['dusk.yaml', 'dawn.yaml'])('%s has a plan in which a filter changes', (name) => {
    const plan = answers[name]!;
    if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
    expect(checkPlan(JSON.parse(writePlan(plan)))).toEqual([]);
    const controls = plan.cues.flatMap(({ changes }) => changes.map(({ control }) => control));
    expect(new Set(controls)).toEqual(new Set(['shutter', 'iso', 'filter']));
  });
});

/** Names of properties anywhere in a schema. */
function keysOf(schema: unknown): string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  return Object.entries(schema).flatMap(([keyword, value]) => [
    ...(keyword === 'properties' ? Object.keys(value) : []),
    ...keysOf(value),
  ]);
}
