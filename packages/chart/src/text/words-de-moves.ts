// What a plan says of moves and stars, in German: findings, each with its remedies, and cautions.

const AXES: Readonly<Record<string, string>> = { pan: 'Schwenk', tilt: 'Neigung', slide: 'Fahrt' };
const GENITIVES: Readonly<Record<string, string>> = {
  pan: 'des Schwenks',
  tilt: 'der Neigung',
  slide: 'der Fahrt',
};
const PARTS = { pan: AXES.pan, tilt: AXES.tilt, slide: AXES.slide, ' instead of ': ' statt ' };

type Rule = readonly [pattern: string, german: (...parts: string[]) => string];

const number = String.raw`(-?[\d.]+)`;
const time = String.raw`([\d.]+ (?:s|min))`;
const length = String.raw`([\d.e-]+(?:°| m))`;
const fastest = `At its fastest, frame ${number}, the picture passes its own width in ${time} of clip`;
const comma = (text: string) => text.replaceAll('-', '−').replaceAll(/(\d)\.(?=\d)/g, '$1,');
const inGerman = (frame: string, crossing: string) =>
  `Am schnellsten, bei Bild ${frame}, zieht das Bild in ${comma(crossing)} des Films einmal durch seine Breite`;

const FINDINGS: readonly Rule[] = [
  [
    `${fastest}; under ${number} s a move is hard to watch\\.`,
    (frame, crossing, least) =>
      `${inGerman(frame!, crossing!)}; unter ${least} s ist eine Bewegung schwer anzusehen.`,
  ],
  [
    `${fastest}: so slowly that it is hardly seen to move\\.`,
    (frame, crossing) => `${inGerman(frame!, crossing!)}: so langsam, dass man es kaum sieht.`,
  ],
  [
    `Every step of the (\\w+) is below the motor's smallest, ${length}: the picture will stand and jump\\.`,
    (axis, smallest) =>
      `Jeder Schritt ${GENITIVES[axis!]} liegt unter dem kleinsten des Motors, ${comma(smallest!)}: Das Bild steht und springt.`,
  ],
  [
    `${number} of ${number} steps of the (\\w+), where it starts and ends, are below the motor's smallest, ${length}; frames repeat there\\.`,
    (count, all, axis, smallest) =>
      `${count} von ${all} Schritten ${GENITIVES[axis!]}, am Anfang und am Ende, liegen unter dem kleinsten des Motors, ${comma(smallest!)}; dort wiederholen sich Bilder.`,
  ],
  [
    `The move goes on while the shutter is open: at most ${number} pixels of smear, at frame ${number}\\. Stopped at every frame there is none\\.`,
    (pixels, frame) =>
      `Die Bewegung läuft weiter, während belichtet wird: höchstens ${comma(pixels!)} Pixel Verwischung, bei Bild ${frame}. Wer bei jedem Bild anhält, hat keine.`,
  ],
  [
    `The (\\w+) would have to reach ${number}(°| m) a second; its motor goes ${number}(?:°| m) a second\\.`,
    (axis, wanted, unit, top) =>
      `${AXES[axis!]}: ${comma(wanted!)}${unit} in der Sekunde wären nötig; der Motor schafft ${comma(top!)}${unit}.`,
  ],
];

const REMEDIES: readonly Rule[] = [
  [
    `Shoot ${number} frames in the same time: an interval of ${number} s, a clip of ${time}\\.(?: It leaves ${time} for a shutter that the plan opens for ${time}\\.)?`,
    (frames, interval, clip, room, open) =>
      `${frames} Bilder in derselben Zeit: ${comma(interval!)} s von Bild zu Bild, ein Film von ${comma(clip!)}.${
        room === undefined
          ? ''
          : ` Das lässt ${comma(room)} für eine Belichtung, die im Plan ${comma(open!)} dauert.`
      }`,
  ],
  [
    `Shoot ${number} frames at the same interval: ${time} instead of ${time}, a clip of ${time}\\.`,
    (frames, longer, now, clip) =>
      `${frames} Bilder im selben Abstand: ${comma(longer!)} statt ${comma(now!)}, ein Film von ${comma(clip!)}.`,
  ],
  [
    '(Shorten|Lengthen) the move: (.*)\\.',
    (way, parts) =>
      `Die Bewegung ${way === 'Shorten' ? 'kürzen' : 'verlängern'}: ${comma(
        Object.entries(PARTS).reduce((text, [from, to]) => text.replaceAll(from, to!), parts!),
      )}.`,
  ],
  [
    `Raise the interval to ${number} s for the same frames: ${time} in all\\.`,
    (interval, all) =>
      `Den Abstand bei gleicher Bildzahl auf ${comma(interval!)} s heben: ${comma(all!)} insgesamt.`,
  ],
];

const WHOLE: readonly Rule[] = [
  [
    `Stars stay points up to ${time} by the 500 rule(?:, ${time} by the simplified NPF rule, (any time|[\\d.]+ s) by the full one at declination ${number}°)?\\. At night this plan opens for ${time} at most(?:, a trail of ${number} pixels)?\\.`,
    (by500, simple, full, declination, longest, pixels) =>
      `Sterne bleiben Punkte bis ${comma(by500!)} nach der 500er-Regel${
        simple === undefined
          ? ''
          : `, ${comma(simple)} nach der einfachen NPF-Regel, ${full === 'any time' ? 'jeder Zeit' : comma(full!)} nach der vollen bei Deklination ${comma(declination!)}°`
      }. Nachts belichtet dieser Plan höchstens ${comma(longest!)}${
        pixels === undefined ? '' : `, eine Spur von ${comma(pixels)} Pixeln`
      }.`,
  ],
  [
    'A motor does not feel fingers.*',
    () =>
      'Ein Motor spürt weder Finger noch Haare noch Gurte: Abstand zu Kopf, Riemen und Wagen halten, den Schalter in Reichweite.',
  ],
  [
    'Check clamps, plate and balance.*',
    () =>
      'Klemmen, Platte und Gewicht über den ganzen Weg prüfen, mit Kabeln, bevor man sie allein lässt; sichern, was fallen könnte.',
  ],
  [
    'Nothing heavy may hang or travel over people.*',
    () =>
      'Nichts Schweres hängt oder fährt über Menschen. Nach Kabeln, Ästen und Stromleitungen sehen, bevor ein Stativ oder Arm hochgeht.',
  ],
  [
    'After dark nobody sees legs.*',
    () =>
      'Im Dunkeln sieht niemand Stativbeine, Schienen und Kabel: weg von Wegen, mit schwachem Licht außerhalb des Bildes zeichnen, dabeibleiben.',
  ],
  [
    'Wind shakes a moving head.*',
    () =>
      'Wind rüttelt an einem bewegten Kopf mehr als an einem stehenden und kann ihn umwerfen: Beine beschweren, bei Böen aufhören.',
  ],
  [
    'Local rules come first: ask for permission.*',
    () =>
      'Örtliche Regeln gehen vor: fragen, wo Stative, Schienen oder Seile auf öffentlichem Grund stehen sollen.',
  ],
  [
    'Stop the carriage at both ends.*',
    () => 'Den Wagen an beiden Enden durch etwas Festes halten, nicht durch den Motor allein.',
  ],
  [
    'A cable or rail above the ground is rigging.*',
    () =>
      'Ein Seil oder eine Schiene über dem Boden ist Rigging: Anker, Lasten und Prüfung gehören in die Hand zugelassener Fachleute.',
  ],
];

/** A note on moves or stars in German; undefined where it is none. */
export function moveNoteInGerman(note: string): string | undefined {
  const whole = firstOf(WHOLE, note, '$');
  if (whole !== undefined) return whole.german;
  const finding = firstOf(FINDINGS, note, '');
  if (finding === undefined) return undefined;
  if (finding.rest === '') return finding.german;
  const remedies = finding.rest.trim().split(' Or: ');
  return `${finding.german} ${remedies.map((text) => firstOf(REMEDIES, text, '$')?.german ?? text).join(' Oder: ')}`;
}

function firstOf(rules: readonly Rule[], text: string, end: '$' | '') {
  for (const [pattern, german] of rules) {
    const [whole, ...parts] = new RegExp(`^${pattern}${end}`).exec(text) ?? [];
    if (whole !== undefined) return { german: german(...parts), rest: text.slice(whole.length) };
  }
  return undefined;
}
