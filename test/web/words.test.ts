// What the page says in English of what the library says as data.

import { sentenceOf } from '@evenfall/core';
import { expect, it } from 'vitest';
import { englishWarnings } from '../../packages/core/src/follow/english.js';
import { english } from '../../packages/web/src/words/en.js';

it('in English the times of what following warns of are said as a clock shows them', () => {
  const at = '2027-03-12T19:36:47+00:00';
  const said = { kind: 'out-of-reach', now: false, frame: 11, at, end: 'dark', worstEv: 0.8 } as const;
  const text = sentenceOf(englishWarnings, 'kind', said);
  expect(english.library.warning({ ...said, text })).toBe(
    'From frame 12 on (19:36) the light is too dark for this kit, by up to 0.8 stops beyond tolerance.',
  );
});
