// All that the command says on the screen, in German.

import { wordsFor } from '@evenfall/chart';
import type { CommandWords } from './en.js';
import { followGerman } from './follow-de.js';
import { newGerman } from './new-de.js';
import { germanSentences } from './sentences-de.js';

const comma = (text: string) => text.replace('-', '−').replace('.', ',');
const plain = (value: number) => comma(String(value));
const fixed = (value: number, digits = 1) => comma((Number(value.toFixed(digits)) + 0).toFixed(digits));
const counted = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;
const cues = (count: number) => counted(count, 'Einsatz', 'Einsätze');
const verb = (stops: number) => (stops < 0 ? 'fällt' : 'steigt');

const SUBJECTS = {
  traffic: 'Verkehr',
  people: 'Menschen',
  'fast-clouds': 'schnelle Wolken',
  clouds: 'Wolken',
  'slow-clouds': 'langsame Wolken',
  sunset: 'Sonnenauf- oder -untergang',
  'city-into-night': 'die Stadt in die Nacht',
  shadows: 'wandernde Schatten',
  stars: 'Sterne',
  plants: 'wachsende Pflanzen',
  construction: 'eine Baustelle',
};

export const german: CommandWords = {
  card: wordsFor({ language: 'de' }),
  sentences: germanSentences,
  follow: followGerman,
  newShoot: newGerman,
  fixed,
  plain,
  wrote: (paths) => `geschrieben: ${paths.join(', ')}`,
  widerShows: 'Ein breiteres Terminal zeigt mehr Spalten.',
  standardInput: 'Standardeingabe',
  directions: { dusk: 'Abend', dawn: 'Morgen' },
  range: (from, to) => `${from} bis ${to}`,

  plan: {
    setUpBy: 'Aufgebaut bis',
    startEnd: 'Beginn, Ende',
    frames: 'Bilder',
    framesText: (count, intervalS, clipS, fps) =>
      `${count}, alle ${plain(intervalS)} s eines; ein Clip von ${fixed(clipS)} s bei ${plain(fps)} Bildern je Sekunde`,
    bracket: 'Reihe',
    bracketText: ({ exposures, stops, count, shortest, longest, end }) =>
      `${exposures} Belichtungen je Bild im Abstand von ${stops} Blenden, zusammen ${count}, ${shortest} bis ${longest}; ${end === 'interval' ? 'das Intervall' : 'die längste Zeit'} begrenzt die Nacht`,
    card: 'Karte',
    cardText: ({ neededGB, cardGB, holds }) =>
      `${fixed(neededGB)}${cardGB === undefined ? '' : ` von ${plain(cardGB)}`} GB${holds === undefined ? '' : `, Platz für ${holds} Bilder`}`,
    battery: 'Akku',
    batteryText: ({ frameCount, holds, cold }) =>
      `${frameCount} von ${holds} Bildern${cold ? ' in der Kälte' : ''}`,
    notEnough: { card: 'zu klein', battery: 'zu wenig' },
    outAt: { card: (time) => `voll um ${time}`, battery: (time) => `leer um ${time}` },
    light: 'Licht',
    lightText: ({ fromEv, toEv, stops }) =>
      `EV ${fixed(fromEv)} bis ${fixed(toEv)} bei ISO 100; ${fixed(stops)} Blenden zu folgen`,
    fastest: (time, evPerMin) => `am schnellsten um ${time}, ${fixed(evPerMin, 2)} EV je Minute`,
    sky: 'Sonne und Mond',
    firstSetting: 'Zu Beginn',
    offBy: 'Daneben',
    offByText: (worstEv, rmsEv) =>
      `${fixed(worstEv, 2)} Blenden höchstens, ${fixed(rmsEv, 2)} im quadratischen Mittel`,
    reserve: 'Reserve',
    reserveText: ({ darkEv, brightEv, percent, dawn }) =>
      `die Szene darf ${fixed(darkEv)} Blenden dunkler oder ${fixed(brightEv)} heller sein, wie an ${percent > 99 ? 'mehr als 99' : Math.round(percent)} von 100 ${dawn ? 'Morgen' : 'Abenden'}`,
    tightest: 'Am knappsten',
    held: {
      shutterS: 'Belichtung',
      bracketS: 'übrige Reihe',
      darkS: 'Dunkelbild',
      writeS: 'Schreiben',
      moveS: 'Bewegung',
      settleS: 'Ruhe',
    },
    tightestText: ({ frame, held, spare, intervalS }) =>
      `Bild ${frame}: ${held}; ${spare ?? 'nichts'} übrig von ${plain(intervalS)} s`,
    move: 'Bewegung',
    moveText: ({ way, stopped, ease }) =>
      `${way}, ${stopped ? 'bei jedem Bild mit Halt' : 'ohne Halt'}, Verlauf "${ease}"`,
    onScreen: 'Im Film',
    onScreenText: (frame, crossingS) =>
      `am schnellsten, bei Bild ${frame}, zieht das Bild in ${crossingS} s des Clips einmal durch seine Breite`,
    noCues: 'Keine Einsätze',
    leaveAlone: 'Die Kamera bleibt, wie sie steht.',
    cuesTitle: (count) =>
      `${cues(count)}; die Uhr zeigt den Beginn des ersten Bildes mit der neuen Einstellung`,
    columns: { clock: 'Uhr', minutes: '+min', frame: 'Bild', change: 'Änderung', after: 'danach' },
    rigTitle: (shortest, longest, count) =>
      `Die Steuerung misst die Zeit ab, ${shortest} bis ${longest}; ${count === 0 ? 'sonst keine Einsätze' : `sonst ${cues(count)}`}`,
    rigRows: 'Wo sie steht, wird zu jeder Drittelstufe gesagt; die Uhr zeigt den Beginn des Bildes.',
    notes: 'Hinweise',
    levels: { info: 'Hinweis', caution: 'Vorsicht', warning: 'Warnung' },
    next: 'Weiter',
    nextCard: 'Einsatzkarte',
    nextChart: 'die Kurve',
    nearestCure: (cure) => `Am nächsten liegt: ${cure}`,
    noCure: 'Keine einzelne Änderung hilft: zwei versuchen, oder einen anderen Tag.',
    anyCure: 'Jede von diesen hilft',
  },

  choices: {
    columns: ['Eins.', 'Filter', 'rms', 'max.', 'ISO', 'Gewichte'],
    names: {
      'fewest-cues': 'wenigste',
      smoothest: 'glattest',
      'cleanest-iso': 'kleinste ISO',
      'as-asked': 'wie verlangt',
    },
    advice:
      'Eins.: Einsätze. Der Fehler in Blenden bleibt später zu glätten, im quadratischen Mittel (rms) und höchstens; die ISO ist die höchste. Um eine Zeile zu nehmen, ihre Gewichte in die Datei der Aufnahme schreiben:',
  },

  light: {
    columns: ['Uhr', 'Sonne', 'Az°', 'Mond°', 'Lux', 'Himm. cd/m²', 'EV 100', 'wahrscheinl.', 'EV/min'],
    likely: (low, high) => `${low}…${high}`,
    sun: 'Sonne',
    single: (ev) => `EV ${fixed(ev)} bei ISO 100.`,
    way: (fromEv, toEv) =>
      `Das Licht ${verb(toEv - fromEv)} um ${fixed(Math.abs(toEv - fromEv))} Blenden, von EV ${fixed(fromEv)} auf ${fixed(toEv)} bei ISO 100.`,
    steepest: ({ time, sunDeg, evPerMin, thirdS }) =>
      `Am steilsten (*) um ${time}, Sonne ${fixed(sunDeg)}°: Es ${verb(evPerMin)} um ${fixed(Math.abs(evPerMin), 2)} EV je Minute${thirdS === undefined ? '' : `, eine Drittelstufe alle ${thirdS} Sekunden`}.`,
    stillToCome: (event, time, stops) =>
      `Bei ${event}, ${time}, stehen noch ${fixed(stops)} dieser Blenden aus.`,
    missing: (why) => `kommt nicht: ${why}`,
  },

  evenings: {
    weekdays: ['So', 'Mo', 'Di', 'Mi', 'Do', 'Fr', 'Sa'],
    months: ['Jan', 'Feb', 'Mär', 'Apr', 'Mai', 'Jun', 'Jul', 'Aug', 'Sep', 'Okt', 'Nov', 'Dez'],
    columns: (dawn) => [
      'Tag',
      dawn ? 'auf' : 'unter',
      'steilst',
      'Mond',
      'Mond°',
      'Bl.',
      'Eins.',
      'Fehler',
      'Reserve',
      'an',
    ],
    possible: (count, of, dawn) =>
      `${count} von ${of} ${dawn ? 'Morgen' : of === 1 ? 'Abend' : 'Abenden'} gehen mit dieser Ausrüstung.`,
    noHorizon: 'nie',
    newMoon: 'neu',
    fullMoon: 'voll',
    no: 'nein',
    reasons: {
      'no-span': 'so weit geht die Sonne nicht',
      'no-time': 'das Intervall lässt keine Zeit',
      'too-dark': 'zu dunkel',
      'too-bright': 'zu hell',
      'too-fast': 'zu schnell',
    },
    by: (stops) => `um ${fixed(stops)}`,
    from: (time) => `ab ${time}`,
    legend: (dawn) =>
      `Steilst: wann sich das Licht am schnellsten ändert, und EV je Minute. Mond: sein beleuchteter Anteil, + zunehmend, - abnehmend, und seine Höhe am Ende (unter 0 ist er untergegangen). Bl.: Blenden zu folgen. Eins.: Einsätze. Fehler: der größte, in Blenden. Reserve: Blenden, um die die Szene dunkler/heller sein darf, wie an so vielen von 100 ${dawn ? 'Morgen' : 'Abenden'}.`,
  },

  review: {
    reading: 'lese',
    cuesOff: 'Einsätze nicht zur Zeit',
    columns: ['Eins.', 'fällig', 'Bild', 'Änderung', 'getan'],
    more: (count) => `und ${count} weitere; die Datei hat alle`,
  },

  footage: {
    frames: 'Bilder',
    interval: 'Intervall',
    recording: 'Aufnahme',
    clip: 'Clip',
    clipText: (clipS, fps) => `${comma(clipS)} s bei ${comma(fps)} Bildern je Sekunde`,
    longestShutter: 'Längste Zeit',
    beside: (gapS, darkFrame) =>
      `neben einer Pause von ${comma(gapS)} s${darkFrame ? ' und ihrem Dunkelbild' : ''}`,
    shutterText: (shutter, beside) =>
      shutter === undefined
        ? `keine passt ${beside}`
        : `"${shutter.label}", wirklich ${comma(shutter.timeS)} s, ${beside}`,
    inWholeSeconds: 'Ganze Sekunden',
    inWholeSecondsText: (intervalS, frames, clipS) =>
      `alle ${plain(intervalS)} s: ${frames} Bilder, ein Clip von ${comma(clipS)} s`,
    advised: 'Empfohlen',
    advisedText: (range, subject, authors) =>
      `${range} für ${SUBJECTS[subject]}; ${authors === 1 ? 'das sagt ein Autor' : `${authors} Autoren, jeder aus Erfahrung`}; gemessen hat es niemand`,
    noTimeLapse: 'Kein Zeitraffer',
    noTimeLapseText: ({ intervalS, perS, clipS, recording }) =>
      `alle ${comma(intervalS)} s ein Bild sind ${comma(perS)} je Sekunde, und ein Clip von ${comma(clipS)} s aus ${recording} läuft nicht schneller als das Leben: als Video filmen, oder länger aufnehmen`,
    noCamera: 'Zu schnell',
    noCameraText: (gapS, intervalS) =>
      `die Kamera braucht neben der Belichtung ${comma(gapS)} s von je ${comma(intervalS)} s: länger aufnehmen, den Clip kürzen, oder mit --gap angeben, was sie wirklich braucht`,
    sources: {
      skarbnik: 'ein Artikel über die Wahl des Intervalls, 2015',
      cogto: 'ein Artikel über Zeitraffer, ohne Jahr',
      'aperture-authority': 'ein Fotomagazin im Netz, ohne Jahr',
    },
    range: (fromS, toS) => (fromS === toS ? `${plain(fromS)} s` : `${plain(fromS)} bis ${plain(toS)} s`),
    sourceText: (range, said, source) => `${range}: "${said}" (${source})`,
  },
};
