// What the page says of choices, in German.

import type { ChoiceWords } from './words-en.js';

const einsaetze = (count: number) => `${count} ${count === 1 ? 'Einsatz' : 'Einsätze'}`;

export const german: ChoiceWords = {
  help: 'Derselbe Übergang mit anderen Gewichten. Fehler in Blenden: was hinterher zu glätten bleibt.',
  working: 'Die Auswahl wird ausgerechnet …',
  failed: 'Die Auswahl ließ sich hier nicht ausrechnen. Schließen und Öffnen versucht es noch einmal.',
  count: (count) =>
    count === 1
      ? 'Andere Gewichte geben weder weniger Einsätze noch weniger Fehler.'
      : `${count} zur Auswahl, die wenigsten Einsätze zuerst.`,
  columns: {
    cues: 'Ein\u00adsätze',
    filters: 'Filter\u00adwechsel',
    rms: 'Fehler (RMS)',
    worst: 'größter Fehler',
    iso: 'höchste ISO',
  },
  names: {
    'fewest-cues': 'wenigste Einsätze',
    smoothest: 'am nächsten am Licht',
    'cleanest-iso': 'niedrigste ISO',
    'as-asked': 'wie zuvor',
  },
  use: 'Nehmen',
  inUse: 'Gilt',
  spoken: (count, rms) => `${einsaetze(count)}, Fehler ${rms} Blenden (RMS)`,
  taken: (count) => `Jetzt der Plan mit ${count} ${count === 1 ? 'Einsatz' : 'Einsätzen'}.`,
  own: 'Diese Aufnahme hat eigene Gewichte.',
  usual: 'Zurück zu den üblichen Gewichten',
  usualTaken: 'Wieder gelten die üblichen Gewichte.',
};
