// What follow says to a person at a terminal, in German.

import { quotedText } from '@evenfall/core';
import type { FollowWords } from './follow-en.js';

const fixed = (value: number) => value.toFixed(1).replace('-', '−').replace('.', ',');

export const followGerman: FollowWords = {
  hello: ({ title, date, start, end }) => `${title}: ${date}, ${start} bis ${end}.`,
  invite: 'Den Messwert tippen, etwa 9,9 oder 1/15; Enter für jetzt; ? für mehr.',
  now: 'JETZT',
  set: 'STELLEN',
  next: 'DANN',
  ring: 'GLEICH',
  light: ({ ev, low, high }) => `EV ${fixed(ev)} (${fixed(low)} bis ${fixed(high)})`,
  asPlanned: 'wie geplant',
  offPlan: (ev) => `${fixed(Math.abs(ev))} ${ev < 0 ? 'dunkler' : 'heller'}`,
  inTime: (seconds) =>
    seconds < 1 ? 'jetzt' : seconds < 100 ? `in ${seconds} s` : `in ${Math.round(seconds / 60)} min`,
  noneSoon: 'kein Einsatz in den nächsten 20 Minuten',
  noneLeft: 'kein Einsatz mehr',
  clicks: (count) => `${count} ${count === 1 ? 'Raste' : 'Rasten'}`,
  taken: (first, last) =>
    `als getan genommen: ${first === last ? `Einsatz ${first}` : `Einsätze ${first} bis ${last}`}; wenn nicht, verpasst ${last} tippen`,
  cue: (number, at, changes) => `${number}. ${at} ${changes}`,
  affected: 'Hand am Objektiv: dieses Bild kann verdorben sein',
  readAgain: 'noch einmal messen; stimmt es, sicher tippen',
  undone: (what) => `zurückgenommen: ${what}`,
  nothingToUndo: 'nichts zurückzunehmen',
  notDoubted: 'keine Messung steht in Zweifel',
  notTaken: 'das ändert nichts',
  help: [
    ['9,9', 'eine Messung: EV bei ISO 100'],
    ['1/15', 'eine Messung: die Zeit, die die Kamera misst, sonst wie sie steht'],
    ['2s f/4 iso 800', 'dasselbe mit anderen Werten'],
    ['17:31 9,9', 'eine Messung von dieser Zeit'],
    ['Enter, 17:31', 'was jetzt gilt, oder dann'],
    ['weiter', 'die Einsätze der nächsten 20 Minuten'],
    ['fertig, fertig 3', 'der Einsatz ist an der Kamera'],
    ['verpasst, verpasst 3', 'der Einsatz wurde nicht getan'],
    ['steht 1/15 iso 200', 'worauf die Kamera stattdessen steht'],
    ['verloren nd 6', 'ein Filter ist weg; gefunden nd 6: er ist wieder da'],
    ['sicher', 'die bezweifelte Messung stimmt'],
    ['zurück', 'nimmt die letzte Meldung zurück'],
    ['w, z, s, fe, verp', 'der Anfang eines Wortes genügt: weiter, zurück, sicher, fertig, verpasst'],
    ['18:14 fertig', 'eine Meldung von dieser Zeit'],
    ['ende', 'hört auf; neu begonnen geht es von hier weiter'],
  ],
  ended: ({ frame, of, readings, cues }) =>
    `Bild ${frame} von ${of}; ${readings} ${readings === 1 ? 'Messung' : 'Messungen'} benutzt, ${cues} ${cues === 1 ? 'Einsatz' : 'Einsätze'}.`,
  kept: 'Neu begonnen geht es von hier weiter.',
  faults: {
    unknown: ({ given }) => `${quotedText(given)} ist nicht verstanden; ? zeigt, was geht`,
    'time-needed': () => 'die Uhr ist nicht die dieser Aufnahme; die Zeit dazu geben, etwa 17:31 9,9',
    'no-such-filter': ({ given, filters }) =>
      filters.length === 0
        ? 'diese Aufnahme hat keine Filter'
        : `${quotedText(given)} ist keiner der Filter; richtig: ${filters.map(quotedText).join(' oder ')}`,
    'no-cue': () => 'kein Einsatz wurde angesagt; die Nummer dazu geben, etwa fertig 3',
  },
};
