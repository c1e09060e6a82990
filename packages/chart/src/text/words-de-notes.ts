// The notes of a plan in German. The library writes them in English: each is told by its English pattern, and one
// that is not known stays as it is rather than being left out.

import { moveNoteInGerman } from './words-de-moves.js';

const number = String.raw`(-?[\d.]+)`;
const comma = (text: string) => text.replace('-', '−').replace('.', ',');

const OLD_READINGS: Readonly<Record<string, string>> = {
  'is older than one already used': 'ist älter als eine schon verwendete',
  'is of a time to come': 'ist aus einer Zeit, die noch kommt',
  'is of another day': 'ist von einem anderen Tag',
  'comes with a doubtful time': 'kommt mit einer zweifelhaften Zeit',
};
const ASK_AGAIN =
  'Noch einmal fragen, wenn das die Zeit ist, oder es mit "jump": true sagen. Bis dahin gilt nichts als getan.';

type Rule = readonly [pattern: string, german: (...parts: string[]) => string];

const RULES: readonly Rule[] = [
  [
    'This plans the shoot from its start at (\\d\\d:\\d\\d), with a reading taken at (\\d\\d:\\d\\d): settings before the reading change too\\. Once the shoot has begun, use evenfall follow or the field view of the page, which go on from where the camera stands\\.',
    (start, at) =>
      `Dies plant die Aufnahme von ihrem Beginn um ${start} an, mit einer Messung von ${at}: Auch Einstellungen vor der ` +
      'Messung ändern sich. Hat die Aufnahme begonnen, hilft evenfall follow oder „Draußen“ auf der Seite; beide ' +
      'gehen von dem aus, was an der Kamera steht.',
  ],
  [
    `The card holds ${number} of the ${number} frames; bring ${number} GB or more\\. It is full at (\\d\\d:\\d\\d)\\.(?: An interval of ${number} s or more would fit it\\.)?`,
    (fit, all, gigabytes, time, interval) =>
      `Die Karte fasst ${fit} der ${all} Bilder; ${comma(gigabytes!)} GB oder mehr mitnehmen. Um ${time} ist sie voll.${
        interval === undefined ? '' : ` Mit ${comma(interval)} s oder mehr von Bild zu Bild reichte sie.`
      }`,
  ],
  [
    `The frames take ${number} % of the card: start with it empty\\.`,
    (share) => `Die Bilder füllen ${share} % der Karte: leer beginnen.`,
  ],
  [
    `One charge gives ${number} of the ${number} frames( in the cold)?; bring a second battery or outside power\\. It is spent at (\\d\\d:\\d\\d)\\.(?: The shoot wants ${number} of them\\.)?`,
    (fit, all, cold, time, needed) =>
      `Eine Ladung reicht ${cold === undefined ? '' : 'in der Kälte '}für ${fit} der ${all} Bilder; zweiten Akku oder Strom von außen mitnehmen. Um ${time} ist sie verbraucht.${
        needed === undefined ? '' : ` Gebraucht werden ${needed} Akkus.`
      }`,
  ],
  [
    `The frames take ${number} % of one charge( in the cold)?: start with it full, and have another at hand\\.`,
    (share, cold) =>
      `Die Bilder brauchen ${cold === undefined ? '' : 'in der Kälte '}${share} % einer Ladung: voll beginnen, einen zweiten Akku bereithalten.`,
  ],
  [
    `The reading of EV ${number} was not used\\. (.*)`,
    (ev, why) => `Die Messung EV ${comma(ev!)} wurde nicht verwendet. ${noteInGerman(why!)}`,
  ],
  [
    'Two later readings agree with each other and not with this one: the light has changed\\.',
    () => 'Zwei spätere Messungen stimmen überein und mit dieser nicht: Das Licht hat sich geändert.',
  ],
  [
    `EV ${number} is (darker|brighter) than any scene with the sun at (-?\\d+)°: ${number} at (?:least|most)\\. Check ISO, filter and time\\.`,
    (ev, side, sun, limit) =>
      `EV ${comma(ev!)} ist ${side === 'darker' ? 'dunkler' : 'heller'} als jede Szene bei Sonnenhöhe ${sun}°: ` +
      `${side === 'darker' ? 'mindestens' : 'höchstens'} ${comma(limit!)}. ISO, Filter und Uhrzeit prüfen.`,
  ],
  [
    `${number} stops from the reading of EV ${number} ${number} minutes apart, against the forecast; light moves ${number} at most in that time\\. Read again\\.`,
    (moved, other, minutes, allowed) =>
      `${comma(moved!)} Stufen von der Messung EV ${comma(other!)} entfernt, ${minutes} Minuten auseinander, gegen die ` +
      `Vorhersage; das Licht ändert sich in dieser Zeit um höchstens ${comma(allowed!)}. Noch einmal messen.`,
  ],
  [
    `EV ${number} is ${number} stops (brighter|darker) than expected: not used unless the next readings bear it out\\.`,
    (ev, stops, way) =>
      `EV ${comma(ev!)} ist ${comma(stops!)} Stufen ${way === 'brighter' ? 'heller' : 'dunkler'} als erwartet: ` +
      'wird erst verwendet, wenn die nächsten Messungen es bestätigen.',
  ],
  [
    `The light stays ${number} stops (brighter|darker) than expected: it is believed from now on\\.`,
    (stops, way) =>
      `Das Licht bleibt ${comma(stops!)} Stufen ${way === 'brighter' ? 'heller' : 'dunkler'} als erwartet: Ab jetzt wird es geglaubt.`,
  ],
  [
    `The reading of EV ${number} (is older than one already used|is of a time to come|is of another day|comes with a doubtful time): not used\\.`,
    (ev, why) => `Die Messung EV ${comma(ev!)} ${OLD_READINGS[why!]}: nicht verwendet.`,
  ],
  [
    'The meter gave (\\S+), which is no EV: not used\\.',
    (value) => `Der Belichtungsmesser gab ${value}, das ist kein EV: nicht verwendet.`,
  ],
  [
    'The reading has no time but (\\S+): not used\\.',
    (value) => `Die Messung hat keine Zeit außer ${value}: nicht verwendet.`,
  ],
  [
    `Frame (\\d+) \\(\\S*T(\\d\\d:\\d\\d)\\S*\\) is (\\d+) minutes ahead: ask again .*`,
    (frame, time, minutes) => `Bild ${frame} (${time}) liegt ${minutes} Minuten voraus: ${ASK_AGAIN}`,
  ],
  [
    `Frame (\\S+) lies past the last, (\\d+): ask again .*`,
    (frame, last) => `Bild ${frame} liegt hinter dem letzten, ${last}: ${ASK_AGAIN}`,
  ],
  [
    '(?:Frame (\\S+) is none|(\\S+) is no time): answered for the frame answered last\\.',
    (frame, time) =>
      `${frame === undefined ? `${time} ist keine Zeit` : `Ein Bild ${frame} gibt es nicht`}: geantwortet wird für das Bild der letzten Antwort.`,
  ],
  [
    "(.* (?:is not on the camera's dial|are not among the shoot's: .*)): nothing of the setting is used\\.",
    (what) =>
      `Die gemeldete Einstellung wird nicht verwendet: ${what!.replaceAll(" is not on the camera's dial", ' steht auf keinem Rad der Kamera').replaceAll(" are not among the shoot's: ", ' gehören nicht zu den Filtern dieser Aufnahme: ')}.`,
  ],
  [
    `(Now|From frame (\\d+) on \\(\\S*T(\\d\\d:\\d\\d)\\S*\\)) the light is too (dark|bright) for this kit, by up to ${number} stops beyond tolerance\\.`,
    (when, frame, time, side, stops) =>
      `${when === 'Now' ? 'Jetzt' : `Ab Bild ${frame} (${time})`} ist das Licht zu ${side === 'dark' ? 'dunkel' : 'hell'} ` +
      `für diese Ausrüstung, um bis zu ${comma(stops!)} Stufen über den erlaubten Fehler hinaus.`,
  ],
  [
    `A shutter of (\\S+) s \\(${number} s in truth\\) does not fit: an interval of ${number} s leaves ${number} s(, each dark frame counted)?(, beside the move and its rest)?\\. The plan stays below it\\.`,
    (mark, exact, interval, inside, dark, move) =>
      `Die Zeit ${mark} s (wirklich ${comma(exact!)} s) passt nicht: ${comma(interval!)} s von Bild zu Bild lassen ` +
      `${comma(inside!)} s${dark === undefined ? '' : ', Dunkelbilder mitgezählt'}${
        move === undefined ? '' : ', neben der Bewegung und ihrer Ruhe'
      }. Der Plan bleibt darunter.`,
  ],
  [
    String.raw`The moon (rises|sets) at (\d\d:\d\d), during the shoot\.`,
    (way, time) => `Der Mond geht um ${time} ${way === 'rises' ? 'auf' : 'unter'}, während der Aufnahme.`,
  ],
  [
    `Changing filters may spoil ${number} frames; they are marked in the plan\\.`,
    (count) => `Filterwechsel verderben vielleicht ${count} Bilder; sie sind im Plan markiert.`,
  ],
  [
    `On about ${number} (mornings|evenings) in 100 this kit runs out of (light at the dark|room at the bright) end: ${number} stops are in reserve there\\. A .* gives more\\.`,
    (share, when, end, stops) =>
      `An etwa ${share} von 100 ${when === 'mornings' ? 'Morgen' : 'Abenden'} reicht diese Ausrüstung ` +
      (end === 'light at the dark'
        ? `am dunklen Ende nicht: Dort sind ${comma(stops!)} Stufen Reserve. Eine höhere ISO, eine offenere Blende oder eine längere Zeit gibt mehr.`
        : `am hellen Ende nicht: Dort sind ${comma(stops!)} Stufen Reserve. Ein stärkerer Filter, eine kürzere Zeit oder eine kleinere Blende gibt mehr.`),
  ],
  [
    'Never look at the sun through an optical finder: a photographic ND filter is no solar viewer\\.',
    () =>
      'Nie durch einen optischen Sucher in die Sonne sehen: Ein ND-Filter der Fotografie ist kein Sonnenschutzfilter für Augen.',
  ],
];

/** A note in German; as it is where it is not known. */
export function noteInGerman(note: string): string {
  for (const [pattern, german] of RULES) {
    const [whole, ...parts] = new RegExp(`^${pattern}$`).exec(note) ?? [];
    if (whole !== undefined) return german(...parts);
  }
  return moveNoteInGerman(note) ?? note;
}
