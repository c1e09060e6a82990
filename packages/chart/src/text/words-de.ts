// Every word that chart, card and calendar print, in German. Marks of a dial stay as the camera shows them, "0.4";
// computed numbers take a decimal comma.

import { clockOver } from '@evenfall/core';
import { germanLibrary } from './library-de.js';
import type { Words } from './words-en.js';
import { counted, dateParts, fixed, minus } from './words-parts.js';

const MONTHS = 'Januar Februar März April Mai Juni Juli August September Oktober November Dezember'.split(
  ' ',
);
const WEEKDAYS = 'Sonntag Montag Dienstag Mittwoch Donnerstag Freitag Samstag'.split(' ');
const comma = (text: string) => minus(text).replace('.', ',');
const frames = (count: number) => counted(count, 'Bild', 'Bilder');
const cues = (count: number) => counted(count, 'Einsatz', 'Einsätze');

export const german: Words = {
  language: 'de',
  date(isoDate: string): string {
    const { year, month, day, weekday } = dateParts(isoDate);
    return `${WEEKDAYS[weekday]}, ${day}. ${MONTHS[month - 1]} ${year}`;
  },
  clock: clockOver(undefined),
  halves: { morning: 'AM', evening: 'PM' },
  number: (value: number, digits: number) => comma(fixed(value, digits)),
  upTo: (value: number, digits: number) => comma(String(Number(fixed(value, digits)))),
  seconds: (value: number) => `${comma(String(Number(fixed(value, 2))))} s`,
  library: germanLibrary,
  compass: { north: 'N', south: 'S', east: 'O', west: 'W' },
  solarTime: 'mittlere Sonnenzeit',
  untitled: 'Belichtungsplan',
  cardTitle: (date: string) => `Einsatzkarte, ${date}`,
  untitledLight: 'Licht der Szene',
  events: {
    sunrise: 'Sonnenaufgang',
    sunset: 'Sonnenuntergang',
    'civil-dawn': 'Anf. bürgerl. Dämm.',
    'civil-dusk': 'Ende bürgerl. Dämm.',
    'nautical-dawn': 'Anf. naut. Dämm.',
    'nautical-dusk': 'Ende naut. Dämm.',
    'astronomical-dawn': 'Anf. astron. Dämm.',
    'astronomical-dusk': 'Ende astron. Dämm.',
    moonrise: 'Mondaufgang',
    moonset: 'Monduntergang',
    'sun-behind-skyline': 'Sonne hinter der Geländelinie',
    'sun-over-skyline': 'Sonne über der Geländelinie',
    'moon-behind-skyline': 'Mond hinter der Geländelinie',
    'moon-over-skyline': 'Mond über der Geländelinie',
    'clocks-forward': 'Uhren vor',
    'clocks-back': 'Uhren zurück',
  },
  twilights: {
    day: ['Tageslicht', 'Tag'],
    civil: ['bürgerliche Dämmerung', 'bürgerliche', 'bürgerl.'],
    nautical: ['nautische Dämmerung', 'nautische', 'naut.'],
    astronomical: ['astronomische Dämmerung', 'astronomische', 'astron.'],
    night: ['Nacht'],
  },
  controls: { shutter: 'Zeit', iso: 'ISO', aperture: 'Blende', filter: 'Filter' },
  lanes: { shutter: 'Zeit', bracket: 'Reihe', iso: 'ISO', aperture: 'Blende', filter: 'Filter' },
  noFilter: 'ohne Filter',
  move: {
    axes: { pan: 'Schwenk', tilt: 'Neigung', slide: 'Fahrt' },
    lanes: { pan: 'Schwenk', tilt: 'Neigung', slide: 'Fahrt', speed: 'Tempo', time: 'Intervall' },
    ways: {
      left: 'nach links',
      right: 'nach rechts',
      up: 'nach oben',
      down: 'nach unten',
      forward: 'vorwärts',
      back: 'zurück',
    },
    stopped: 'mit Halt',
    continuous: 'ohne Halt',
    starts: (move: string, how: string, first: string, longest: string) =>
      `${move}, ${how}; Schritte ${first} bis ${longest}`,
    ends: (axis: string, gone: string) => `Am Ende: ${axis} bei ${gone}`,
    width: (seconds: string) => `durchs Bild in ${seconds}`,
    spare: (seconds: string) => `mindestens ${seconds} übrig`,
  },
  chart: {
    scene: 'Szene',
    target: 'Ziel',
    sceneAndTarget: 'Szene und Ziel',
    settings: 'Einstellungen',
    band: 'wahrscheinlicher Bereich',
    affected: 'Filterwechsel',
    localTime: 'Ortszeit',
    sun: 'Sonne',
    steepest: 'am steilsten',
    speedWithPeak: (slope: string, clock: string) => `EV je Minute: am steilsten ${slope} um ${clock}`,
    interval: (seconds: string) => `alle ${seconds}`,
    ev: 'EV',
    evNote: 'EV bei ISO 100',
  },
  describe: {
    plan: (p) =>
      `Von ${p.from} bis ${p.to} geht die Szene von Lichtwert ${p.fromEv} auf ${p.toEv} bei ISO 100. ` +
      `${frames(p.frames)}, ${cues(p.cues)}.`,
    light: (p) =>
      `Von ${p.from} bis ${p.to} geht die Szene von Lichtwert ${p.fromEv} auf ${p.toEv} bei ISO 100.`,
    settings: (first: string, last: string) => `Erste Einstellung ${first}; letzte Einstellung ${last}.`,
    filterChanges: (list: string) => `Filterwechsel: ${list}.`,
    noFilterChanges: 'Der Filter wechselt nicht.',
    events: (list: string) => `Ereignisse: ${list}.`,
    steepest: (slope: string, clock: string) =>
      `Am schnellsten ändert sich das Licht um ${clock}: ${slope} EV je Minute.`,
  },
  card: {
    page: (n: number, of: number) => `Seite ${n} von ${of}`,
    every: (seconds: string) => `alle ${seconds}`,
    setUpBy: (clock: string) => `Aufgebaut bis ${clock}`,
    start: 'Beginn',
    end: 'Ende',
    frames,
    bracket: {
      setTo: (exposures: number, stops: string) =>
        `Reihe: ${exposures} Belichtungen, ${stops} Blenden auseinander`,
      how: (exposures: number) =>
        `Ein Auslösen nimmt alle ${exposures} auf, stets in derselben Folge. Die Werte hier sind die der mittleren.`,
      first: (ends: string) => `Zuerst: ${ends}.`,
      longest: (p: { shutter: string; clock: string; seconds: string; interval: string }) =>
        `Längste: ${p.shutter} ab ${p.clock}, zusammen ${p.seconds} von ${p.interval}.`,
      ends: (shortest: string, longest: string) => `Mitte von ${shortest} bis ${longest}`,
    },
    clip: (seconds: string, fps: string) => `Clip ${seconds} bei ${fps} B/s`,
    cues,
    firstSetting: 'Erste Einstellung',
    startsFrom: 'Seite beginnt mit',
    endsOn: 'Letzte Einstellung',
    beforeStarting: 'Vor dem Beginn',
    checks: {
      mode: 'Modus M, Raw',
      isoFixed: 'ISO nicht automatisch',
      interval: (every: string, count: number) => `Intervall: ${every}, ${count}×`,
      bracket: (exposures: number, stops: string) => `Reihe: ${exposures} × ${stops} Blenden`,
      finder: 'Sucher abgedeckt',
      focus: 'Fokus auf manuell',
      stabiliser: 'Stabilisator aus',
      whiteBalance: 'Weißabgleich fest',
      darkFrameOff: 'Langzeit-Rauschred. aus',
      darkFrameOn: 'Langzeit-Rauschred. an',
      card: 'Karte leer, eingelegt',
      battery: 'Akku voll',
      level: 'Kamera waagerecht',
      filterOn: 'erster Filter vorn',
      filterOff: 'kein Filter vorn',
      clock: 'Uhr sekundengenau',
      redLight: 'Rotlicht zur Hand',
    },
    sky: 'Sonne und Mond',
    cueList: 'Einsätze',
    readings: 'Messungen',
    readingTime: 'Uhr',
    readingEv: 'EV',
    correction: (p) =>
      `Bei ISO 100 messen; mit dem EV des nächsten Einsatzes vergleichen. Bis ${p.tolerance} daneben: weiter so. ` +
      `Mehr: jetzt den Einsatz mit dem nächsten EV, dann so viele ` +
      `${p.fallsDark ? 'voraus (dunkler) oder zurück (heller)' : 'voraus (heller) oder zurück (dunkler)'}. ` +
      `1 Blende: ${p.cuesPerStop} Einsätze.`,
    correctionByMarks: (p) =>
      `Bei ISO 100 messen; mit dem EV des nächsten Einsatzes vergleichen. Bis ${p.tolerance} daneben: weiter so. ` +
      `Mehr: bei jedem Einsatz so viel mehr einstellen, wenn es dunkler, weniger, wenn es heller ist: erst Zeit, ` +
      `dann ISO, ${p.marks} Marken je Blende.`,
    correctionByRig: (p) =>
      `Bei ISO 100 messen; mit dem EV der letzten Zeile vergleichen, deren Uhrzeit vorbei ist. Bis ${p.tolerance} daneben: ` +
      `weiter so. Mehr: der Steuerung sagen: doppelte Zeit je Blende dunkler, halbe Zeit je Blende heller.`,
    minutesAfter: (minutes: string) => `+${minutes} min`,
    frame: (number: string) => `Bild ${number}`,
    cueOf: (cue: number, of: number) => `${cue}/${of}`,
    wholeCueOf: (cue: number, of: number) => `Einsatz ${cue} von ${of}`,
    clicks: (count: number) => counted(count, 'Raste', 'Rasten'),
    nextAt: (clock: string) => `nächster Einsatz ${clock}`,
    newCard: 'Neue Speicherkarte',
    newBattery: 'Neuer Akku',
    evTable: (aperture: string) => `ISO 100, f/${aperture}: Zeit, die die Kamera misst → EV`,
    evBehind: (names: string, stops: string) => `mit ${names}: +${stops}`,
    sun: (deg: string) => `Sonne ${deg}°`,
    ev: (ev: string) => `EV ${ev}`,
    filterChange: 'FILTERWECHSEL',
    takeOff: (names: string) => `Abnehmen: ${names}`,
    putOn: (names: string) => `Aufsetzen: ${names}`,
    mayCost: (first: number, last: number) =>
      first === last ? `kostet vielleicht Bild ${first}` : `kostet vielleicht Bild ${first} bis ${last}`,
    after: 'danach',
    howToRead:
      'Die Uhrzeit ist der Beginn des ersten Bildes mit der neuen Einstellung: in der Pause direkt davor drehen.',
    rigTimes: (shortest: string, longest: string) =>
      `Die Steuerung misst die Belichtungszeit ab, ${shortest} bis ${longest}: nichts verstellen. Zeilen ohne Kästchen ` +
      `sagen, wo die Zeit steht, jede Drittelstufe; fällt die Steuerung aus, die nächste Marke von Hand einstellen.`,
    noCues: 'Keine Einsätze: Die Kamera bleibt, wie sie ist.',
    missedTitle: 'Einsatz verpasst?',
    missed: [
      'Einen: jetzt nachholen. Einige Bilder zu spät fällt kaum auf; zwei Schritte auf einmal schon.',
      'Mehrere: einzeln und der Reihe nach nachholen, alle paar Bilder einen, bis die Uhr wieder stimmt.',
      'Stelle verloren: einstellen, was unter dem letzten Einsatz steht, dessen Uhrzeit vorbei ist.',
      'Filterwechsel: wie gedruckt nachholen, dann weiter.',
      'Nie für einen Schritt die Aufnahme anhalten: Ein Sprung lässt sich später glätten, eine Lücke nicht.',
    ],
    cautionsTitle: 'Vorsicht',
    cautions: [
      'Nie durch einen optischen Sucher in die Sonne sehen.',
      'Ein ND-Filter ist kein Sonnenschutz für die Augen.',
      'Dunkelheit: den Rückweg kennen; ein zweites Licht.',
      'Gezeiten: Hochwasser kennen; nasse Felsen meiden.',
      'Höhe: Abstand zu Kanten; sichern gegen Wind.',
      'Straßen: sichtbar sein, von der Fahrbahn bleiben.',
      'Über Köpfen nichts ohne zweite Sicherung.',
      'Örtliche Regeln und Fachleute gehen vor.',
    ],
    notesTitle: 'Hinweise zu diesem Plan',
  },
  calendar: {
    setUp: 'Aufgebaut sein',
    setUpFor: (start: string) => `Erstes Bild um ${start}`,
    end: 'Ende der Aufnahme',
    endAt: (end: string) => `Letztes Bild um ${end}`,
    filterChange: (steps: string) => `Filter: ${steps}`,
    after: (setting: string) => `Danach: ${setting}`,
  },
};
