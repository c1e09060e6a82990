// What is wrong with a file, in German: what was found, then after a semicolon what would be right. Words and keys of the
// formats stand in quotes.

import {
  type Entries,
  type Give,
  type Given,
  type NumberHint,
  type Phrase,
  quotedText,
  type Sentences,
  sentenceOf,
  type Unit,
} from '@evenfall/core';
import type { LibrarySentences } from './library.js';
import { comma } from './parts-de.js';

const SORTS = { nothing: 'nichts', list: 'eine Liste', keys: 'eine Gruppe', function: 'eine Funktion' };
const BOOLEANS = { true: '"true"', false: '"false"' };

function givenText(given: Given): string {
  if (typeof given === 'object') return SORTS[given.sort];
  if (typeof given === 'boolean') return BOOLEANS[`${given}`];
  return typeof given === 'string' ? quotedText(given) : comma(given);
}

const quoted = (words: readonly string[]) => words.map((word) => `"${word}"`);
const listed = (words: readonly string[]) => quoted(words).join(', ');
const together = (keys: readonly string[]) => quoted(keys).join(' und ');

const UNITS: Readonly<Record<Unit, string>> = {
  number: 'eine Zahl',
  whole: 'eine ganze Zahl',
  degrees: 'Grad',
  'degrees-from-north': 'Grad von Nord im Uhrzeigersinn,',
  'degrees-of-true-sun': 'Grad der wahren Sonnenhöhe',
  'degrees-per-s': 'Grad je Sekunde',
  'degrees-per-s2': 'Grad je Sekunde im Quadrat',
  metres: 'Meter',
  'metres-per-s': 'Meter je Sekunde',
  'metres-per-s2': 'Meter je Sekunde im Quadrat',
  'degrees-or-metres': 'Grad oder Meter',
  'degrees-or-metres-per-s': 'Grad oder Meter je Sekunde',
  'degrees-or-metres-per-s2': 'Grad oder Meter je Sekunde im Quadrat',
  millimetres: 'Millimeter',
  pixels: 'Pixel',
  seconds: 'Sekunden',
  minutes: 'Minuten',
  stops: 'Blenden',
  ev: 'EV',
  'ev-darker-below-0': 'EV',
  ev100: 'EV bei ISO 100',
  'ev-per-min': 'EV je Minute',
  density: 'eine optische Dichte',
  factor: 'ein Faktor',
  megabytes: 'Megabyte',
  gigabytes: 'Gigabyte',
  eighths: 'Achtel',
  lux: 'Lux',
  'cd-per-m2': 'Candela je Quadratmeter',
  'mag-per-arcsec2': 'Größenklassen je Quadratbogensekunde',
  'frames-per-s': 'Bilder je Sekunde',
  'widths-per-s': 'Bildbreiten je Sekunde des Clips',
  'share-of-time': 'ein Anteil der Zeit',
  'share-of-disc': 'ein Anteil der Scheibe',
  price: 'ein Preis',
  'sum-of-costs': 'die Summe der Kosten',
  'marked-iso': 'eine ISO der Skala',
  'exact-iso': 'eine genaue ISO',
  'exact-f-number': 'eine genaue Blendenzahl',
};

const ENTRIES: Readonly<Record<Entries, string>> = {
  filters: 'Filtern',
  moves: 'Bewegungen',
  readings: 'Messungen mit "at" und "ev100"',
  'look-rows': 'Zeilen mit "sunAltitudeDeg" und "offsetEv"',
  'skyline-points': 'Punkten der Geländelinie',
  events: 'Ereignissen',
  missing: 'Einträgen mit "name" und "why"',
  rows: 'Zeilen',
  names: 'Namen',
  changes: 'Änderungen',
  frames: 'Bildern',
  cues: 'Einsätzen',
  'shutter-times': 'Verschlusszeiten',
  exposures: 'Belichtungen',
  notes: 'Hinweisen',
  travels: 'Wegen',
  findings: 'Befunden',
  lines: 'Zeilen',
  remedies: 'Abhilfen',
  lengths: 'Längen',
  'changed-lengths': 'geänderten Längen',
  evenings: 'Abenden',
};

const PHRASES: Readonly<Record<Phrase, string>> = {
  value: 'ein Wert',
  'true-or-false': '"true" oder "false"',
  'whether-it-lasts': '"true" oder "false", je nachdem, ob es reicht',
  date: 'ein Datum wie 2026-09-12',
  'plain-date': 'ein Datum wie 2026-09-12',
  time: 'eine Zeit mit Zeitversatz wie "2026-09-12T19:04:00+02:00"',
  zone: 'ein IANA-Name wie "Europe/Lisbon"',
  line: 'eine Zeile',
  'plan-file': 'eine Plandatei',
  'bracket-frames': '3, 5, 7 oder 9',
  'steps-per-stop': '3 für ein Rad in Dritteln, 2 für Hälften',
  'shortest-shutter': 'die kürzeste Zeit der Skala, etwa "1/4000"',
  'longest-shutter': 'die längste Zeit der Skala, etwa "15"',
  'f-number': 'eine Blendenzahl der Skala, etwa "5.6"',
  'f-number-or-range': 'eine Blendenzahl der Skala, etwa "5.6", oder "widest" und "narrowest"',
  iso: 'eine ISO der Skala, etwa 100',
  'dial-mark': 'eine Marke der Skala als Text',
  filter: 'ein Name und "stops", "density" oder "factor"',
  skyline: 'Grad, oder Punkte je Richtung',
  look: '"nightEv", oder Zeilen mit "sunAltitudeDeg" und "offsetEv"',
  'track-or-metres': '"m", oder "trackM" mit "carriageM" und "marginM"',
  move: '"axis" mit "pan", "tilt" oder "slide", und "by" mit dem Weg',
  'lamps-on': '"always", Sonnenhöhen, oder "fromAt" und "overMin"',
  curve: 'der Name einer Kurve, oder "trapezoid"',
};

const gives: Sentences<Give, 'give'> = {
  range: ({ unit, from, to }) =>
    `${UNITS[unit]} von ${comma(from)} bis ${comma(to)}${unit === 'ev-darker-below-0' ? ', negativ ist dunkler' : ''}`,
  'above-zero': ({ unit, to }) =>
    `${UNITS[unit]} über 0${to === undefined ? '' : `, höchstens ${comma(to)}`}`,
  'at-least': ({ unit, from }) => `${UNITS[unit]} ab ${comma(from)}`,
  number: ({ unit }) => UNITS[unit],
  text: ({ least, most }) => `eine Zeile von ${least === 0 ? 'höchstens' : `${least} bis`} ${most} Zeichen`,
  list: ({ of }) => `eine Liste von ${ENTRIES[of]}`,
  word: ({ words }) => quoted(words).join(' oder '),
  shapes: ({ words, groups }) =>
    [...(words.length === 0 ? [] : [listed(words)]), ...groups.map(together)].join(', oder '),
  keys: ({ keys }) => listed(keys),
  'keys-by': ({ key }) => `eine Gruppe mit "${key}"`,
  phrase: ({ phrase }) => PHRASES[phrase],
};
const giveText = (give: Give) => sentenceOf(gives, 'give', give);

const hints: Sentences<NumberHint, 'hint'> = {
  'no-quotes': () => ', ohne Anführungszeichen',
  'no-unit': () => ', ohne Einheit',
  point: ({ number }) => `, mit Punkt: ${number}`,
};

const DIALS = { shutter: 'Zeiten', iso: 'ISO', aperture: 'Blenden' };
const AXES = { pan: 'zweiter Schwenk', tilt: 'zweite Neigung', slide: 'zweite Fahrt' };
const SECOND = { pan: 'ein', tilt: 'eine', slide: 'eine' };

const moveFaults = {
  'second-move': ({ axis }) =>
    `${SECOND[axis]} ${AXES[axis]}; richtig: höchstens je eine Bewegung für "pan", "tilt" und "slide"`,
  'bearings-turn-a-pan': () =>
    'Kompassrichtungen drehen nur einen Schwenk; richtig: "deg", Punkte, oder "sizeM" und "distanceM"',
  'points-need-lens': () =>
    'Punkte brauchen "camera.lens" und "camera.sensor"; beide angeben, oder stattdessen "deg"',
  'track-too-short': ({ trackM }) =>
    `${comma(trackM)} m lassen neben Wagen und Rändern keinen Weg; richtig: eine längere Schiene`,
  'goes-nowhere': () => 'führt nirgendwohin; richtig: ein längerer Weg, oder keine Bewegung',
  'no-step-time': ({ speedKey }) =>
    `eine Bewegung mit Halt braucht Zeit für ihre Schritte; richtig: "${speedKey}" oder "moveS"`,
} satisfies Partial<LibrarySentences['faults']>;

const savedFaults = {
  'saved-by-another-version': ({ given, ours }) =>
    `${givenText(given)} gehört nicht zu dieser Version; richtig: ein Abend, gesichert als "${ours}"`,
  'saved-not-whole': () =>
    'dieser gesicherte Abend ist nicht vollständig; einen früheren nehmen, oder neu beginnen',
  'saved-with-another-plan': () =>
    'er wurde zu einem anderen Plan gesichert; jenen Plan nehmen, oder neu beginnen',
} satisfies Partial<LibrarySentences['faults']>;

/** Faults of files, and of saved evenings. */
export const faults: LibrarySentences['faults'] = {
  ...moveFaults,
  ...savedFaults,
  'wrong-value': ({ given, give, hint }) =>
    `${givenText(given)} geht hier nicht; richtig: ${giveText(give)}${
      hint === undefined ? '' : sentenceOf(hints, 'hint', hint)
    }`,
  'not-text': ({ given }) => `${givenText(given)} ist kein Text; in Anführungszeichen setzen`,
  'unknown-word': ({ given, words, nearest }) =>
    nearest === undefined
      ? `${givenText(given)} geht hier nicht; richtig: ${quoted(words).join(' oder ')}`
      : `${givenText(given)} ist keines von ${listed(words)}; am nächsten liegt "${nearest}"`,
  'later-format': ({ given, ours }) =>
    `${givenText(given)} ist ein späteres Format als "${ours}"; eine neuere Version liest es`,
  'empty-list': ({ of, least }) =>
    `eine leere Liste; richtig: mindestens ${least} ${least === 1 ? 'Eintrag' : 'Einträge'} in der Liste von ${ENTRIES[of]}`,
  'long-list': ({ count, most }) => `${count} sind zu viele; richtig: höchstens ${most}`,
  'missing-key': ({ give }) => `fehlt; richtig: ${giveText(give)}`,
  'unknown-key': ({ nearest }) => `diesen Schlüssel gibt es nicht; am nächsten liegt "${nearest}"`,
  'key-without-space': ({ right }) =>
    `diesen Schlüssel gibt es nicht; richtig: ${givenText(right)}, mit Leerzeichen nach dem Doppelpunkt`,
  'number-cut-at-comma': () =>
    'diesen Schlüssel gibt es nicht; wurde hier eine Zahl am Komma getrennt, einen Punkt setzen',
  'not-together': ({ keys }) => `geht nicht zusammen mit ${together(keys)}; eines davon weglassen`,
  'no-group': ({ given, keys }) =>
    `${givenText(given)} steht, wo Schlüssel hingehören; richtig: ${listed(keys)}`,
  'too-deep': ({ most }) =>
    `ist mehr als ${most} Ebenen tief verschachtelt; richtig: eine Datei, wie ihr Format sie beschreibt`,
  'too-large': ({ most }) =>
    `enthält mehr als ${most} Werte; richtig: eine Datei, wie ihr Format sie beschreibt`,
  'not-on-dial': ({ given, control, stepsPerStop, nearest, first, last }) =>
    `${givenText(given)} steht nicht auf der Skala der ${DIALS[control]} in ${stepsPerStop === 3 ? 'Dritteln' : 'Hälften'}; ${
      nearest.length === 0
        ? `sie geht von "${first}" bis "${last}"`
        : nearest.length === 1
          ? `am nächsten liegt "${nearest[0]}"`
          : `am nächsten liegen ${together(nearest)}`
    }`,
  'range-reversed': ({ control, mark, other }) => {
    const side = {
      shutter: `ist kürzer als die kürzeste Zeit, ${other}`,
      iso: `liegt unter der niedrigsten, ${other}`,
      aperture: `ist weiter offen als die weiteste Blende, ${comma(other)}`,
    }[control];
    return `${comma(mark)} ${side}; die beiden vertauschen oder anders wählen`;
  },
  'unknown-zone': ({ given }) =>
    `${givenText(given)} ist hier als Zeitzone nicht bekannt; richtig: ${PHRASES.zone}`,
  'no-such-date': ({ given }) =>
    `${givenText(given)} steht in keinem Kalender; richtig: ein wirkliches Datum wie 2026-09-12`,
  'no-such-time': ({ given, fromYear, toYear }) =>
    `${givenText(given)} ist keine Zeit der Jahre ${fromYear} bis ${toYear}; richtig: eine wie "2026-09-12T19:04:00+02:00"`,
  'year-out-of-reach': ({ given, fromYear, toYear }) =>
    `${givenText(given)} liegt zu weit weg; richtig: ein Jahr von ${fromYear} bis ${toYear}`,
  'date-skipped': ({ given, zone }) =>
    `${givenText(given)} wurde im Kalender von ${zone} ausgelassen; richtig: der Tag davor oder danach`,
  'sun-goes-the-other-way': ({ direction, from, to }) =>
    direction === 'dusk'
      ? `${comma(to)} liegt nicht unter ${comma(from)}, und abends sinkt die Sonne; die beiden vertauschen, oder Morgen ("dawn") wählen`
      : `${comma(to)} liegt nicht über ${comma(from)}, und morgens steigt die Sonne; die beiden vertauschen, oder Abend ("dusk") wählen`,
  'end-before-start': ({ given, startAt }) =>
    `${givenText(given)} liegt vor dem ersten Bild, ${givenText(startAt)}; richtig: eine spätere Zeit`,
  'another-day': ({ given, day, date }) =>
    `${givenText(given)} fällt am Ort auf ${day}, nicht auf ${date}; beiden denselben Tag geben`,
  'too-many-frames': ({ intervalS, most, leastS }) =>
    `${comma(intervalS)} ergibt mehr als ${most} Bilder; richtig: ${comma(leastS)} oder mehr`,
  'interval-too-short': ({ intervalS, shutter, darkFrame, exposures, pausesS, gapS, leastS }) => {
    const open =
      exposures === 1
        ? `die kürzeste Zeit, ${shutter}${darkFrame ? ' mit ihrem Dunkelbild' : ''}`
        : `eine Belichtungsreihe aus ${exposures} Belichtungen, die kürzeste ${shutter}${darkFrame ? ', mit ihren Dunkelbildern' : ''}, ${comma(Number(pausesS.toFixed(3)))} s Pausen dazwischen`;
    return `${comma(intervalS)} ist zu kurz für ${open}, und eine Pause von ${comma(gapS)} s; richtig: ${comma(leastS)} oder mehr`;
  },
  'too-much-work': ({ intervalS, frameCount, stacks, apertures, isos, leastS, byChanges }) => {
    const kit = `${stacks} Filterstapeln, ${apertures} ${apertures === 1 ? 'Blende' : 'Blenden'} und ${isos} ISO`;
    const right = [
      ...(leastS === undefined ? [] : [`${comma(leastS)} oder mehr`]),
      'weniger Filter oder ein engerer Bereich',
      ...(byChanges ? ['ein kleineres "maxFilterChanges"'] : []),
    ];
    return `${comma(intervalS)} ergibt ${frameCount} Bilder, zu viele, um sie mit ${kit} zu planen; richtig: ${right.join(', oder ')}`;
  },
  'bracket-off-dial': ({ stepEv, stepsPerStop }) =>
    `${comma(stepEv)} ist keine ganze Zahl von Rasten; richtig: ein Vielfaches von ${stepsPerStop === 3 ? 'einem Drittel: 0,3333333333, 0,6666666667, 1, 2' : 'einer Hälfte: 0,5, 1, 2'}`,
  'bracket-too-wide': ({ wideEv, kitEv }) =>
    `Eine Belichtungsreihe über ${comma(Number(wideEv.toFixed(2)))} Blenden passt nicht zwischen kürzeste und längste Zeit, die ${comma(Number(kitEv.toFixed(2)))} Blenden auseinanderliegen; weniger Belichtungen oder kleinere Schritte nehmen`,
  'bulb-needs-rig': () =>
    'frei abgemessen wird die Zeit nur von einer Steuerung ("rig"); eine Steuerung wählen, oder die Zeit am Rad lassen',
  'filter-named-twice': ({ given }) =>
    `${givenText(given)} heißt auch ein anderer Filter; jedem einen eigenen Namen geben`,
  'filter-misread': ({ given }) =>
    `${givenText(given)} würde in einem Einsatz falsch gelesen; richtig: ein Name ohne ein "+", das allein steht, und ohne Leerzeichen am Rand, nicht "none"`,
  'unknown-start-filter': ({ given, nearest }) =>
    `${givenText(given)} ist nicht unter den Filtern; ${
      nearest === undefined
        ? 'dort hinzufügen oder hier weglassen'
        : `am nächsten liegt ${givenText(nearest)}`
    }`,
  'lamps-on-by-rising-sun': ({ from, to }) =>
    `${comma(to)} liegt nicht unter ${comma(from)} von "fromSunAltitudeDeg"; Lampen gehen an, während die Sonne sinkt`,
  'look-not-rising': ({ altitudeDeg, beforeDeg }) =>
    `${comma(altitudeDeg)} liegt nicht über der Zeile davor, ${comma(beforeDeg)}; die Zeilen nach steigender Sonnenhöhe ordnen`,
  'reading-of-another-time': ({ given, side, frameAt, mostHours }) =>
    `${givenText(given)} liegt ${side === 'after-last' ? 'nach dem letzten' : 'lange vor dem ersten'} Bild, ${frameAt}; richtig: eine Zeit während der Aufnahme oder bis ${mostHours} Stunden davor`,
  'count-differs': ({ got, right }) => `${got} passt nicht zum Rest des Plans; richtig: ${right}`,
  'frame-at-another-time': ({ given, intervalS }) =>
    `${givenText(given)} ist nicht der Beginn dieses Bildes; richtig: der Beginn des ersten und ${comma(intervalS)} s für jedes weitere`,
  'frame-out-of-order': ({ frame, after, before }) =>
    `${frame} ist kein Bild nach ${after} und vor ${before}; richtig: eines dazwischen`,
};
