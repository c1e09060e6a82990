// What following warns of, in German.

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
    `EV ${number} is (darker|brighter) than any scene with the sun at (-?\\d+)°: ${number} at (?:least|most)\\. Check ISO, filter and time\\.`,
    (ev, side, sun, limit) =>
      `EV ${comma(ev!)} ist ${side === 'darker' ? 'dunkler' : 'heller'} als jede Szene bei Sonnenhöhe ${comma(sun!)}°: ` +
      `${side === 'darker' ? 'mindestens' : 'höchstens'} ${comma(limit!)}. ISO, Filter und Uhrzeit prüfen.`,
  ],
  [
    `EV ${number} is ${number} stops (brighter|darker) than expected: not used unless the next readings bear it out\\.`,
    (ev, stops, way) =>
      `EV ${comma(ev!)} ist ${comma(stops!)} Blenden ${way === 'brighter' ? 'heller' : 'dunkler'} als erwartet: ` +
      'wird erst verwendet, wenn die nächsten Messungen es bestätigen.',
  ],
  [
    `The light stays ${number} stops (brighter|darker) than expected: it is believed from now on\\.`,
    (stops, way) =>
      `Das Licht bleibt ${comma(stops!)} Blenden ${way === 'brighter' ? 'heller' : 'dunkler'} als erwartet: Ab jetzt wird es geglaubt.`,
  ],
  [
    `(Now|From frame (\\d+) on \\(\\S*T(\\d\\d:\\d\\d)\\S*\\)) the light is too (dark|bright) for this kit, by up to ${number} stops beyond tolerance\\.`,
    (when, frame, time, side, stops) =>
      `${when === 'Now' ? 'Jetzt' : `Ab Bild ${frame} (${time})`} ist das Licht zu ${side === 'dark' ? 'dunkel' : 'hell'} ` +
      `für diese Ausrüstung, um bis zu ${comma(stops!)} Blenden über den erlaubten Fehler hinaus.`,
  ],
];

export function warningInGerman(warning: string): string {
  for (const [pattern, german] of RULES) {
    const [whole, ...parts] = new RegExp(`^${pattern}$`).exec(warning) ?? [];
    if (whole !== undefined) return german(...parts);
  }
  return warning;
}
