// What is wrong with a shoot, in German. The reader of files says it in English: each is told by its English pattern,
// and one that is not known stays as it is. What a control asks for stands beside it, so that the kind of value need
// not be named.

const number = String.raw`-?[\d.]+`;
const comma = (text: string) => text.replace('-', '−').replace('.', ',');

type Rule = readonly [pattern: string, german: (...parts: string[]) => string];

/** Units and kinds, as they begin what would be right. */
const UNITS: readonly (readonly [english: string, german: string])[] = [
  ['degrees clockwise from north,', 'Grad von Nord im Uhrzeigersinn, von'],
  ['degrees', 'Grad'],
  ['metres', 'Meter'],
  ['seconds', 'Sekunden'],
  ['stops', 'Blenden'],
  ['megabytes', 'Megabyte'],
  ['gigabytes', 'Gigabyte'],
  ['eighths', 'Achtel'],
  ['lux', 'Lux'],
  ['frames a second', 'Bilder je Sekunde'],
  ['magnitudes a square arcsecond', 'Größenklassen je Quadratbogensekunde'],
  ['EV at ISO 100', 'EV bei ISO 100'],
  ['EV', 'EV'],
  ['an optical density', 'eine optische Dichte'],
  ['a factor', 'ein Faktor'],
  ['a whole number', 'eine ganze Zahl'],
  ['a number', 'eine Zahl'],
  ['a share of the time', 'ein Anteil der Zeit'],
];

/** What would be right, where it is no range. */
const RIGHT: readonly Rule[] = [
  ['a date as YYYY-MM-DD', () => 'ein Datum wie 2026-09-12'],
  ['a real date as YYYY-MM-DD', () => 'ein wirkliches Datum wie 2026-09-12'],
  ['an IANA name such as "Europe/Lisbon"', () => 'ein IANA-Name wie "Europe/Lisbon"'],
  ['one line of 1 to (\\d+) characters', (most) => `eine Zeile von 1 bis ${most} Zeichen`],
  ['one line of at most (\\d+) characters', (most) => `eine Zeile von höchstens ${most} Zeichen`],
  [`(${number}) or more`, (least) => `${comma(least!)} oder mehr`],
  ['a later time', () => 'eine spätere Zeit'],
];

const HINTS: readonly Rule[] = [
  [', without quotes', () => ', ohne Anführungszeichen'],
  [`, with a point: (${number})`, (value) => `, mit Punkt: ${value}`],
  [', without a unit', () => ', ohne Einheit'],
];

const RULES: readonly Rule[] = [
  [
    'a freely timed shutter needs crew "rig"; give that, or leave bulb out and let hands turn the dial',
    () =>
      'Frei abgemessen wird die Zeit nur von einer Steuerung: "Eine Steuerung" wählen, oder die Zeit am Rad lassen',
  ],
  [
    '(.+) is not (?:a|an) [^;]*; give ([^;]*?)(, with(?:out|) [^;]*)?',
    (value, right, hint) =>
      `${value} geht hier nicht; richtig: ${rightInGerman(right!)}${byRules(HINTS, hint ?? '') ?? ''}`,
  ],
  [
    `(${number}) is not (below|above) (${number}), and at (?:dusk|dawn) the sun (?:falls|rises); swap them, or give direction "(dusk|dawn)"`,
    (to, side, from, other) =>
      `${comma(to!)} liegt nicht ${side === 'below' ? 'unter' : 'über'} ${comma(from!)}, und ` +
      `${side === 'below' ? 'abends sinkt' : 'morgens steigt'} die Sonne; die beiden vertauschen, oder ${other === 'dawn' ? 'Morgen' : 'Abend'} wählen`,
  ],
  [
    `(${number}) is too short for the shortest shutter, "([^"]*)"( and its dark frame)?, and a gap of (${number}) s; give (${number}) or more`,
    (interval, shutter, dark, gap, least) =>
      `${comma(interval!)} ist zu kurz für die kürzeste Zeit, ${shutter}${dark === undefined ? '' : ' mit ihrem Dunkelbild'}, ` +
      `und eine Pause von ${comma(gap!)} s; richtig: ${comma(least!)} oder mehr`,
  ],
  [
    `(${number}) makes more than (\\d+) frames in (?:a day|the span); give (${number}) or more`,
    (interval, most, least) =>
      `${comma(interval!)} ergibt mehr als ${most} Bilder; richtig: ${comma(least!)} oder mehr`,
  ],
  [
    `(${number}) makes (\\d+) frames, too many to plan with .*; give (?:(${number}) or more, or )?.*`,
    (interval, frames, least) =>
      `${comma(interval!)} ergibt ${frames} Bilder, zu viele für diese Ausrüstung; richtig: ` +
      `${least === undefined ? '' : `${comma(least)} oder mehr, oder `}weniger Filter oder ein engerer Bereich`,
  ],
  [
    '(.+) is a later format than (.+); read it with a newer version',
    (theirs, ours) => `${theirs} ist ein späteres Format als ${ours}; eine neuere Version liest es`,
  ],
  [
    '(.+) is not in the calendar; give a real date as YYYY-MM-DD',
    (date) => `${date} steht in keinem Kalender; richtig: ein Datum wie 2026-09-12`,
  ],
  [
    '(.+) is out of reach; give a year from (\\d+) to (\\d+)',
    (date, from, to) => `${date} liegt zu weit weg; richtig: ein Jahr von ${from} bis ${to}`,
  ],
  [
    '(.+) is before startAt, (.+); give a later time',
    (end, start) => `${end} liegt vor dem ersten Bild, ${start}; richtig: eine spätere Zeit`,
  ],
  [
    '(.+) falls on (\\S+) at the place, not on date (.+); give both the same day',
    (start, day, date) => `${start} fällt am Ort auf ${day}, nicht auf ${date}; beiden denselben Tag geben`,
  ],
  [
    '(.+) is the name of another filter too; give each its own',
    (name) => `${name} heißt auch ein anderer Filter; jedem einen eigenen Namen geben`,
  ],
  [
    '(.+) would be misread in a cue; give a name other than "none", without " \\+ " or outer spaces',
    (name) =>
      `${name} würde in einem Einsatz falsch gelesen; richtig: ein Name ohne " + " und Leerzeichen am Rand, nicht "none"`,
  ],
  [
    '"([^"]*)" is (?:a shorter time than the shortest|a wider opening than the widest), "([^"]*)"; swap the two or give another',
    (mark, other) =>
      `${mark} liegt auf der falschen Seite von ${other}; die beiden vertauschen oder anders wählen`,
  ],
  [
    '(\\d+) is below the lowest, (\\d+); swap the two or give another',
    (mark, other) =>
      `${mark} liegt unter der niedrigsten, ${other}; die beiden vertauschen oder anders wählen`,
  ],
  [
    '(.+) is (after the last|long before the first) frame, (.+); give a time during the shoot, or up to (\\d+) hours before it',
    (at, side, frame, hours) =>
      `${at} liegt ${side === 'after the last' ? 'nach dem letzten' : 'lange vor dem ersten'} Bild, ${frame}; ` +
      `richtig: eine Zeit während der Aufnahme oder bis ${hours} Stunden davor`,
  ],
];

function byRules(rules: readonly Rule[], text: string): string | undefined {
  for (const [pattern, german] of rules) {
    const [whole, ...parts] = new RegExp(`^${pattern}$`).exec(text) ?? [];
    if (whole !== undefined) return german(...parts);
  }
  return undefined;
}

function rightInGerman(right: string): string {
  const [unit, german] = UNITS.find(([english]) => right.startsWith(`${english} `)) ?? [];
  if (unit === undefined) return byRules(RIGHT, right) ?? right;
  const range = right
    .slice(unit.length)
    .replace('negative is darker', 'negativ ist dunkler')
    .replace('from', 'von')
    .replace(' to ', ' bis ')
    .replace('above', 'über')
    .replace('at most', 'höchstens');
  return german + range.replaceAll(/-(?=\d)/g, '−').replaceAll(/(\d)\.(\d)/g, '$1,$2');
}

/** "95 geht hier nicht; richtig: Grad von −90 bis 90". */
export function faultInGerman(text: string): string {
  return byRules(RULES, text) ?? text;
}
