// What "new" asks, and what it writes beside the keys of a shoot file, in German.

import type { NewWords } from './new-en.js';

export const newGerman: NewWords = {
  questions: {
    title: 'Titel',
    at: 'Ort: Breite, Länge in Grad, Süden und Westen negativ, etwa 53.35, -6.26',
    on: 'Datum, an dem es beginnt, JJJJ-MM-TT',
    direction: 'Abend oder Morgen',
    interval: 'Intervall: Sekunden von Bild zu Bild',
    shutter: 'Belichtungszeit, kürzeste bis längste erlaubte',
    iso: 'ISO, kleinste bis größte erlaubte',
    aperture: 'Blende, bleibt immer gleich',
    lens: 'Brennweite in mm, wie an Vollformat',
    nd: 'Graufilter in der Tasche, in Blendenstufen, etwa 3, 6',
    facing: 'Blick: toward-sun (zur Sonne), side (quer), away (von ihr weg) oder eine Himmelsrichtung',
    night: 'Himmel nachts: remote (abgelegen), rural (Land), suburb (Vorort), town (Stadt), city (Großstadt)',
    lamps: 'Lampen im Bild: none (keine), street (Straße), floodlit (angestrahlt), skyline (Hochhäuser)',
  },
  brackets: (fallback) => `[${fallback}]`,
  shown: (fallback) => ({ dusk: 'Abend', none: 'keine' })[fallback] ?? fallback.replace(/ to /, ' bis '),
  next: (command) => `Weiter: ${command}`,
  keep: 'als Datei',
  brokenOff: 'abgebrochen; nichts ist geschrieben',
  notes: {
    plan: (command) => `Planen: ${command}`,
    defaults: 'Jeder Schlüssel, der fehlt, hat einen Vorgabewert; docs/formats.md nennt alle.',
    title: 'steht auf der Karte',
    place: 'Grad; Süden und Westen sind negativ. Die Zeitzone wird nachgeschlagen.',
    date: 'Das Datum am Ort, an dem es beginnt. "dusk": Tag zu Nacht; "dawn": Nacht zu Tag.',
    interval: 'Intervall: Sekunden von Bild zu Bild.',
    dials:
      'Was erlaubt ist, wie es auf den Rädern steht. Längste Zeit und Pause müssen ins Intervall passen.',
    gap: 'Sekunden, die die Kamera zwischen Bildern braucht',
    lens: 'Mit dem Objektiv ist das Licht das Mittel des Himmels im Bild. An kleineren Sensoren beides angeben, wie es ist.',
    supplies: 'Um zu wissen, ob Karte und Akku reichen:',
    filters: 'Graufilter, nach Blendenstufen; "density: 1.8" oder "factor: 64" geht auch.',
    scene: 'Was das Objektiv sieht. Es entscheidet drei Blenden.',
  },
};
