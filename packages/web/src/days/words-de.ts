// What the page says of the days to come, in German.

import type { DayWords } from './words-en.js';

const abenden = { dusk: 'Abenden', dawn: 'Morgen' };

export const german: DayWords = {
  help: {
    dusk: 'Jeder Abend mit dieser Ausrüstung und diesem Motiv geplant: der Mond am Ende, und an wie vielen von 100 Abenden das Licht in der Reserve bleibt. Ein Druck übernimmt das Datum.',
    dawn: 'Jeder Morgen mit dieser Ausrüstung und diesem Motiv geplant: der Mond am Ende, und an wie vielen von 100 Morgen das Licht in der Reserve bleibt. Ein Druck übernimmt das Datum.',
  },
  list: { dusk: 'Abende zur Auswahl', dawn: 'Morgen zur Auswahl' },
  working: 'Jeder wird geplant …',
  failed: 'Sie ließen sich hier nicht planen. Schließen und Öffnen versucht es noch einmal.',
  count: (can, all) => `${can} von ${all} sind möglich.`,
  no: 'nein',
  between: ', ',
  horizon: { dusk: (at) => `Sonnenuntergang ${at}`, dawn: (at) => `Sonnenaufgang ${at}` },
  noHorizon: { dusk: 'kein Sonnenuntergang', dawn: 'kein Sonnenaufgang' },
  steepest: (at, ev) => `am steilsten um ${at} mit ${ev} EV in der Minute`,
  moon: (percent, waxing, altitudeDeg) => {
    const phase =
      percent === 0
        ? 'Neumond'
        : percent === 100
          ? 'Vollmond'
          : `Mond zu ${percent} % beleuchtet, ${waxing ? 'zunehmend' : 'abnehmend'}`;
    return `${phase}, am Ende ${altitudeDeg < 0 ? 'unter dem Horizont' : `${altitudeDeg}° hoch`}`;
  },
  stops: (stops) => `${stops} Blenden Verlauf`,
  cues: (count) => `${count} ${count === 1 ? 'Einsatz' : 'Einsätze'}`,
  error: (stops) => `höchstens ${stops} Blenden daneben`,
  reserve: (dark, bright, share, direction) =>
    `${dark} Blenden Reserve ins Dunkle und ${bright} ins Helle, wie an ${share} von 100 ${abenden[direction]}`,
  taken: (day) => `Jetzt der Plan für ${day}.`,
  earlier: (days) => `${days} Tage früher`,
  later: (days) => `${days} Tage später`,
};
