// The rule for readings on the card, on evenings that run one way and on one that turns back.

import { cardText, wordsFor } from '@evenfall/chart';
import { planShoot, type Shoot } from '@evenfall/core';
import { expect, test } from 'vitest';
import { shootFrom } from '../../core/shoots.js';

function cardOf(shoot: Shoot, language: 'en' | 'de' = 'en'): string {
  const plan = planShoot(shoot);
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  return cardText(plan, { words: wordsFor({ language }) }).replaceAll('\n', ' ');
}

test('on an evening that only gets darker the next cues are what a darker reading asks for', () => {
  expect(cardOf(shootFrom({}))).toContain('the cue whose EV is nearest the reading');
});

test('under lamps, where a later cue sets for more light, the rule counts marks instead', () => {
  const lamps = shootFrom({
    place: { latitudeDeg: 52.52, longitudeDeg: 13.4, timeZone: 'Europe/Berlin' },
    date: '2026-11-28',
    intervalS: 4,
    camera: {
      shutter: { shortest: '1/4000', longest: '2.5' },
      iso: { lowest: 100, highest: 3200 },
      aperture: '5.6',
    },
    scene: { cloud: 'overcast', surface: 'city', night: 'city', lamps: 'street' },
  });
  const card = cardOf(lamps);
  expect(card).not.toContain('nearest the reading');
  expect(card).toContain('3 marks a stop');
  expect(cardOf(lamps, 'de')).toContain('3 Marken je Blende');
});
