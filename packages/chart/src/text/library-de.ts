// What the library says, in German.

import {
  type BelowHalfClick,
  type Clock,
  englishValues,
  type GapParts,
  type LengthChange,
  type MoveCaution,
  type MoveFound,
  type Pace,
  type Sentences,
  sentenceOf,
  type WhyInfeasible,
  type WhyNoPass,
} from '@evenfall/core';
import { faults } from './faults-de.js';
import type { LibrarySentences } from './library.js';
import { comma, fixed } from './parts-de.js';
import { refusals, warnings } from './readings-de.js';

const AXES = { pan: 'Schwenk', tilt: 'Neigung', slide: 'Fahrt' };
const OF_AXIS = { pan: 'des Schwenks', tilt: 'der Neigung', slide: 'der Fahrt' };
const PARTS = [
  ['Belichtung', 'shutterS'],
  ['Dunkelbild', 'darkS'],
  ['Schreiben', 'writeS'],
  ['Bewegung', 'moveS'],
  ['Ruhe', 'settleS'],
] as const;

const figures = (value: number, most = 3) => comma(Number(value.toPrecision(most)));
const rounded = (value: number) => comma(Math.round(value * 1000) / 1000);
const percent = (share: number) => `${Math.round(100 * share)} %`;
const inCold = (cold: boolean) => (cold ? 'in der Kälte ' : '');
const seconds = (timeS: number) => `${figures(timeS)} s`;
const duration = (timeS: number) => comma(englishValues.seconds(timeS));
const length = (size: number, unit: LengthChange['unit']) => comma(englishValues.length(size, unit));
const altitude = (deg: number, shortOfDeg?: number) => comma(englishValues.altitude(deg, shortOfDeg));
const blenden = (count: number) => `${comma(count)} ${count === 1 ? 'Blende' : 'Blenden'}`;

const cautions: Sentences<Pick<MoveCaution, 'kind'>> = {
  pinch: () =>
    'Ein Motor spürt weder Finger noch Haare noch Gurte: Abstand zu Kopf, Riemen und Wagen halten, den Schalter in Reichweite.',
  drop: () =>
    'Klemmen, Platte und Gewicht über den ganzen Weg prüfen, mit Kabeln, bevor man sie allein lässt; sichern, was fallen könnte.',
  overhead: () =>
    'Nichts Schweres hängt oder fährt über Menschen. Nach Kabeln, Ästen und Stromleitungen sehen, bevor ein Stativ oder Arm hochgeht.',
  trip: () =>
    'Im Dunkeln sieht niemand Stativbeine, Schienen und Kabel: weg von Wegen, mit schwachem Licht außerhalb des Bildes zeichnen, dabeibleiben.',
  wind: () =>
    'Wind rüttelt an einem bewegten Kopf mehr als an einem stehenden und kann ihn umwerfen: Beine beschweren, bei Böen aufhören.',
  law: () =>
    'Örtliche Regeln gehen vor: fragen, wo Stative, Schienen oder Seile auf öffentlichem Grund stehen sollen.',
  'track-ends': () => 'Den Wagen an beiden Enden durch etwas Festes halten, nicht durch den Motor allein.',
  rigging: () =>
    'Ein Seil oder eine Schiene über dem Boden ist Rigging: Anker, Lasten und Prüfung gehören in die Hand zugelassener Fachleute.',
};

const fastest = ({ frame, crossingS }: Extract<MoveFound, { kind: 'too-fast' | 'too-slow' }>) =>
  `Am schnellsten, bei Bild ${frame + 1}, zieht das Bild in ${duration(crossingS)} des Clips einmal durch seine Breite`;

const findings: LibrarySentences['findings'] = {
  'no-time': ({ frame, intervalS, slackS, failing, frameCount, ...budget }) => {
    const parts = PARTS.filter(([, part]) => budget[part] > 0).map(
      ([what, part]) => `${what} ${duration(budget[part])}`,
    );
    return `Bild ${frame + 1} braucht ${duration(-slackS)} mehr als sein Intervall von ${comma(intervalS)} s: ${parts.join(', ')}. ${failing} von ${frameCount} Bildern passen nicht.`;
  },
  'gear-too-slow': ({ axis, unit, speed, topSpeed }) => {
    const text = (value: number) => `${figures(value)}${unit === 'deg' ? '°' : ' m'}`;
    return `${AXES[axis]}: ${text(speed)} in der Sekunde wären nötig; der Motor schafft ${text(topSpeed)}.`;
  },
  'steps-too-small': ({ axis, unit, smallestStep, count, steps, all }) => {
    const smallest = `unter dem kleinsten des Motors, ${length(smallestStep, unit)}`;
    return all
      ? `Jeder Schritt ${OF_AXIS[axis]} liegt ${smallest}: Das Bild steht und springt.`
      : `${count} von ${steps} Schritten ${OF_AXIS[axis]}, am Anfang und am Ende, liegen ${smallest}; dort wiederholen sich Bilder.`;
  },
  'too-fast': (found) => `${fastest(found)}; unter ${found.limitS} s ist eine Bewegung schwer anzusehen.`,
  'too-slow': (found) => `${fastest(found)}: so langsam, dass man es kaum sieht.`,
  blur: ({ frame, blurPx }) =>
    `Die Bewegung läuft weiter, während belichtet wird: höchstens ${figures(blurPx, 2)} Pixel Verwischung, bei Bild ${frame + 1}. Wer bei jedem Bild anhält, hat keine.`,
};

const sameTime = ({ frameCount, intervalS, clipS }: Pace) =>
  `${frameCount} Bilder in derselben Zeit: ein Intervall von ${comma(intervalS)} s, ein Clip von ${duration(clipS)}.`;
const lengths = (changed: readonly LengthChange[]) =>
  `${changed.map(({ axis, unit, from, to }) => `${AXES[axis]} ${length(to, unit)} statt ${length(from, unit)}`).join(', ')}.`;

const remedies: LibrarySentences['remedies'] = {
  'longer-shutter': ({ shutter, fromShutter, intervalS, fromIntervalS }) => {
    const interval =
      intervalS === undefined
        ? ''
        : `as Intervall von ${comma(fromIntervalS)} auf ${comma(intervalS)} s verlängern.`;
    if (shutter === fromShutter) return `D${interval}`;
    const allow = `Eine Zeit von ${shutter} s erlauben`;
    return interval === '' ? `${allow}.` : `${allow} und d${interval}`;
  },
  'faster-shutter': ({ shutter, fromShutter }) =>
    `Belichtungszeiten bis hinab zu ${shutter} s erlauben statt ${fromShutter} s.`,
  'higher-iso': ({ iso, fromIso }) => `Die höchste ISO von ${fromIso} auf ${iso} heben.`,
  'wider-aperture': ({ aperture }) => `Die Blende auf f/${aperture} öffnen.`,
  'narrower-aperture': ({ aperture }) => `Die Blende auf f/${aperture} schließen.`,
  'another-filter': ({ stops }) => `Einen ND-Filter mit ${blenden(stops)} mitnehmen.`,
  'start-filter': ({ filter, fromFilter }) =>
    filter === 'none' ? `Ohne ${fromFilter} beginnen.` : `Mit ${filter} beginnen statt mit ${fromFilter}.`,
  'more-filter-changes': ({ maxFilterChanges, fromFilterChanges }) =>
    `${maxFilterChanges} Filterwechsel erlauben statt ${fromFilterChanges === 0 ? 'keinem' : fromFilterChanges}.`,
  'darker-look': ({ nightEv, fromNightEv }) =>
    `Die Nacht dunkler lassen: ${comma(nightEv)} Blenden gegen die Messung statt ${comma(fromNightEv)}.`,
  'looser-tolerance': ({ toleranceEv, fromToleranceEv }) =>
    `${comma(toleranceEv)} EV Fehler erlauben statt ${rounded(fromToleranceEv)}.`,
  'larger-steps': ({ largestStepEv, fromStepEv }) =>
    `Schritte von ${rounded(largestStepEv)} EV je Einsatz erlauben statt ${rounded(fromStepEv)}.`,
  'closer-cues': ({ secondsBetweenCues, fromSeconds }) =>
    `Einsätze im Abstand von ${comma(secondsBetweenCues)} s erlauben statt ${comma(fromSeconds)} s.`,
  'fewer-exposures': ({ exposures, fromExposures }) =>
    exposures === 1
      ? `Einmal belichten statt ${fromExposures}-mal.`
      : `${exposures} Belichtungen in einer Reihe statt ${fromExposures}.`,
  'closer-exposures': ({ stepEv, fromStepEv }) =>
    `Die Belichtungen einer Reihe um ${comma(Number(stepEv.toFixed(3)))} Blenden auseinander statt ${comma(Number(fromStepEv.toFixed(3)))}.`,
  'shorter-span': ({ span }, clock) =>
    'startAt' in span
      ? `Nur von ${clock(span.startAt)} bis ${clock(span.endAt)} aufnehmen.`
      : `Eine kürzere Spanne aufnehmen: von ${comma(span.fromSunAltitudeDeg)}° bis ${comma(span.toSunAltitudeDeg)}° Sonnenhöhe.`,
  'more-frames': ({ shutterS, longestS, ...pace }) =>
    shutterS === undefined || longestS === undefined
      ? sameTime(pace)
      : `${sameTime(pace)} Das lässt ${duration(shutterS)} für eine Belichtung, die im Plan ${duration(longestS)} dauert.`,
  'fewer-frames': sameTime,
  'longer-recording': ({ frameCount, recordingS, fromRecordingS, clipS }) =>
    `${frameCount} Bilder im selben Intervall: ${duration(recordingS)} statt ${duration(fromRecordingS)}, ein Clip von ${duration(clipS)}.`,
  'longer-interval': ({
    intervalS,
    fromIntervalS,
    fromRecordingS,
    frameCount,
    recordingS = 0,
    clipS = 0,
  }) => {
    const to = `auf ${comma(intervalS)} s verlängern`;
    if (fromRecordingS === undefined) return `Das Intervall von ${comma(fromIntervalS)} ${to}.`;
    return recordingS > fromRecordingS + 1e-6
      ? `Das Intervall bei gleicher Bildzahl ${to}: ${duration(recordingS)} insgesamt.`
      : `Das Intervall ${to}: ${frameCount} Bilder in derselben Zeit, ein Clip von ${duration(clipS)}.`;
  },
  'shorter-shutter': ({ shutterS }) =>
    `Höchstens ${comma(shutterS)} s belichten, in wirklicher Zeit gerechnet.`,
  'no-dark-frame': () => 'Die Rauschminderung abschalten: Ihr Dunkelbild dauert so lange wie die Belichtung.',
  'shorter-write': ({ writeS, fromWriteS }) =>
    `Karte oder Format nehmen, mit denen das Schreiben ${comma(writeS)} s dauert${fromWriteS === undefined ? '' : ` statt ${comma(fromWriteS)} s`}.`,
  'shorter-settle': ({ settleS, fromSettleS }) =>
    fromSettleS === undefined
      ? `Der Kamera nach einer Bewegung höchstens ${comma(settleS)} s Ruhe lassen.`
      : `Der Kamera nach einer Bewegung ${comma(settleS)} s Ruhe lassen statt ${comma(fromSettleS)} s.`,
  'shorter-move': ({ changed }) => `Die Bewegung kürzen: ${lengths(changed)}`,
  'longer-move': ({ changed }) => `Die Bewegung verlängern: ${lengths(changed)}`,
  stop: () => 'Bei jedem Bild anhalten: Dann verwischt nichts.',
};

const spareText = (spareS: number) =>
  spareS < 1 ? `${rounded(Math.round(10_000 * spareS) / 10)} ms` : `${fixed(spareS)} s`;

const reserve: LibrarySentences['reserve'] = ({ reserveEv, spareS, clip }) =>
  [
    reserveEv < 0.05 ? 'Das reicht, ohne jede Reserve.' : `Das lässt ${fixed(reserveEv)} Blenden Reserve.`,
    ...(spareS === undefined
      ? []
      : [
          `Das knappste Intervall hat dann ${spareS < 0.000_05 ? 'keine Zeit' : `nur ${spareText(spareS)}`} übrig.`,
        ]),
    ...(clip === undefined
      ? []
      : [`Der Clip ist dann ${duration(clip.clipS)} lang statt ${duration(clip.fromClipS)}.`]),
  ].join(' ');

const RESERVE_ENDS = {
  dark: 'am dunklen Ende nicht, und Bilder werden zu dunkel',
  bright: 'am hellen Ende nicht, und Bilder werden zu hell',
};

const cueNotes: LibrarySentences['cueNotes'] = {
  'blur-jump': ({ stops }) =>
    `Von hier an verwischt Bewegung um ${Math.abs(stops).toFixed(1).replace('.', ',')} Blenden ${stops > 0 ? 'mehr' : 'weniger'}.`,
  'both-filters': () => 'Beide Filter auf einmal: Nacheinander wäre nicht besser.',
  'one-filter': () => 'Jetzt einen Filter, den anderen für sich: Beide auf einmal wäre nicht besser.',
};

const notes: LibrarySentences['notes'] = {
  'under-way': ({ startAt, readingAt }, clock) =>
    `Dies plant die Aufnahme von ihrem Beginn um ${clock(startAt)} an, mit einer Messung von ${clock(readingAt)}: Auch Einstellungen vor der ` +
    'Messung ändern sich. Hat die Aufnahme begonnen, hilft evenfall follow oder „Draußen“ auf der Seite; beide ' +
    'gehen von dem aus, was an der Kamera steht.',
  'card-full': ({ holds, frameCount, neededGB, at, fitIntervalS }, clock) =>
    `Die Karte fasst ${holds} der ${frameCount} Bilder; ${fixed(neededGB)} GB oder mehr mitnehmen. Um ${clock(at)} ist sie voll.${
      fitIntervalS === undefined
        ? ''
        : ` Mit einem Intervall von ${comma(fitIntervalS)} s oder mehr reichte sie.`
    }`,
  'card-nearly-full': ({ share }) => `Die Bilder füllen ${percent(share)} der Karte: leer beginnen.`,
  'battery-spent': ({ holds, frameCount, cold, at, needed }, clock) =>
    `Eine Ladung reicht ${inCold(cold)}für ${holds} der ${frameCount} Bilder; zweiten Akku oder Strom von außen mitnehmen. Um ${clock(at)} ist sie verbraucht.${
      needed === undefined ? '' : ` Gebraucht werden ${needed} Akkus.`
    }`,
  'battery-nearly-spent': ({ share, cold }) =>
    `Die Bilder brauchen ${inCold(cold)}${percent(share)} einer Ladung: voll beginnen, einen zweiten Akku bereithalten.`,
  'reading-refused': ({ ev100, because }, clock) =>
    `Die Messung EV ${comma(ev100)} wurde nicht verwendet. ${sentenceOf(refusals, 'reason', because, clock)}`,
  move: ({ found, changes }, clock) =>
    [
      sentenceOf(findings, 'kind', found, clock),
      changes.map((change) => sentenceOf(remedies, 'change', change, clock)).join(' Oder: '),
    ]
      .filter((text) => text !== '')
      .join(' '),
  'little-reserve': ({ direction, share, end, reserveEv, change, moreShare }, clock) =>
    `An etwa ${Math.round(share * 10)} von 10 ${direction === 'dawn' ? 'Morgen' : 'Abenden'} reicht diese Ausrüstung ${RESERVE_ENDS[end]}: Dort sind ${fixed(reserveEv)} Blenden Reserve.${
      change === undefined || moreShare === undefined
        ? ''
        : ` Am meisten bringt: ${sentenceOf(remedies, 'change', change, clock)} Dann reicht sie an ${Math.round(moreShare * 10)} von 10.`
    }`,
  'sun-in-frame': ({ fromAt, toAt, pullEv }, clock) =>
    `Zwischen ${clock(fromAt)} und ${clock(toAt)} steht die Sonne im Bild: Eine Messung über das ganze Bild zeigt ihretwegen bis zu ${fixed(pullEv)} Blenden mehr. Der Plan folgt der Sonnenscheibe nicht; den Himmel daneben messen.`,
  'one-direction': ({ viewAltitudeDeg }) =>
    `Der Himmel in ${comma(viewAltitudeDeg)}° Höhe steht für den ganzen: Mit Objektiv und Sensor nimmt der Plan das Mittel des Bildes.`,
  eclipse: ({ body, magnitude, fromAt, toAt }, clock) =>
    `${magnitude >= 1 ? 'Totale' : 'Partielle'} ${body === 'sun' ? 'Sonnenfinsternis' : 'Mondfinsternis'}, ${clock(fromAt)} bis ${clock(toAt)}: ${
      magnitude >= 1
        ? `Während sie total ist, fehlen 8 bis 10 Blenden ${body === 'sun' ? 'Tageslicht' : 'Mondlicht'}`
        : `Bis zu ${percent(magnitude)} des Durchmessers sind bedeckt`
    }. Der Plan folgt ihr nicht.`,
  'clocks-change': ({ byMin, frame, at }, clock) =>
    `Während der Aufnahme werden die Uhren um ${Math.abs(byMin)} Minuten ${byMin > 0 ? 'vor' : 'zurück'}gestellt: Ab Bild ${frame}, ${clock(at)}, gilt die neue Zeit.`,
  'shutter-cut': ({ shutter, shutterS, intervalS, insideS, darkFrame, moving }) => {
    const exact = figures(shutterS, 4);
    const what = exact === comma(shutter) ? `${shutter} s` : `${shutter} s (wirklich ${exact} s)`;
    return `Die Zeit ${what} passt nicht: Ein Intervall von ${comma(intervalS)} s lässt ${figures(insideS, 4)} s${
      darkFrame ? ', Dunkelbilder mitgezählt' : ''
    }${moving ? ', neben der Bewegung und ihrer Ruhe' : ''}. Der Plan bleibt darunter.`;
  },
  bracket: ({ exposures, stepEv, count, longestS, end, shortestS }) =>
    `Jedes Bild sind ${exposures} Belichtungen im Abstand von ${comma(Number(stepEv.toFixed(2)))} Blenden, zusammen ${count}; der Plan nennt die mittlere. Nachts endet sie bei ${seconds(longestS)}, weil ${
      end === 'longest' ? 'die längste am Ende des Rades steht' : 'das Intervall nicht mehr fasst'
    }; am Tag bei ${shortestS < 0.3 ? `1/${Number((1 / shortestS).toPrecision(3))} s` : seconds(shortestS)}, weil die kürzeste am Ende des Rades steht.`,
  'tight-interval': ({ frame, at, spareS, intervalS }, clock) =>
    `Das Intervall von Bild ${frame + 1} (${clock(at)}) hat von seinen ${comma(intervalS)} s noch ${spareText(spareS)} übrig: Ist Kamera oder Auslöser etwas langsamer, fehlen Bilder. Das Intervall verlängern oder die längste Zeit verkürzen.`,
  stars: ({ rule500S, npfSimpleS, npfFullS, declinationDeg, longestS, trailPx }) => {
    const rules = [
      `${seconds(rule500S)} nach der 500er-Regel`,
      ...(npfSimpleS === undefined
        ? []
        : [
            `${seconds(npfSimpleS)} nach der einfachen NPF-Regel`,
            `${npfFullS === undefined ? 'jeder Zeit' : seconds(npfFullS)} nach der vollen bei Deklination ${comma(Math.round(declinationDeg) + 0)}°`,
          ]),
    ];
    const trail = trailPx === undefined ? '' : `, eine Spur von ${figures(trailPx, 2)} Pixeln`;
    return `Sterne bleiben Punkte bis ${rules.join(', ')}. Nachts belichtet dieser Plan höchstens ${seconds(longestS)}${trail}.`;
  },
  moonrise: ({ at }, clock) => `Der Mond geht um ${clock(at)} auf, während der Aufnahme.`,
  moonset: ({ at }, clock) => `Der Mond geht um ${clock(at)} unter, während der Aufnahme.`,
  'frames-affected': ({ count }) =>
    `Filterwechsel verderben vielleicht ${count} Bilder; sie sind im Plan markiert.`,
  sun: () =>
    'Nie durch einen optischen Sucher in die Sonne sehen: Ein ND-Filter der Fotografie ist kein Sonnenschutzfilter für Augen.',
  'move-caution': ({ caution }) => sentenceOf(cautions, 'kind', { kind: caution }),
};

const gapText = ({ moveS, settleS, writeS }: GapParts) =>
  `Zwischen zwei Bildern braucht der längste Schritt der Bewegung ${seconds(moveS)}, seine Ruhe ${seconds(settleS)}, das Schreiben ${seconds(writeS)}.`;
const halfClickText = ({ toleranceEv, halfClickEv }: BelowHalfClick) =>
  `Kein Einstellrad kann so genau folgen wie ${rounded(toleranceEv)} Blenden: Ein halber Klick sind ${fixed(halfClickEv, 2)}.`;
const beyond = (worstEv: number) =>
  worstEv < 0.05 ? 'um weniger als 0,05 Blenden' : `um höchstens ${fixed(worstEv)} Blenden`;
const tooMuch = (ev: number) => (ev < 0.05 ? 'weniger als 0,05 Blenden' : `${fixed(ev)} Blenden`);

function fromFrame({ frame, at }: Extract<WhyInfeasible, { readonly at: string }>, clock: Clock): string {
  return `Ab Bild ${frame + 1} (${clock(at, true)})`;
}

const noPass: Sentences<WhyNoPass> = {
  'sun-does-not-turn': ({ direction, altitudeDeg }) =>
    `Die Sonne, bei ${altitude(altitudeDeg)}, ${direction === 'dusk' ? 'sinkt' : 'steigt'} an diesem Tag nicht`,
  'sun-passes-another-day': ({ direction, altitudeDeg }) =>
    `Die Sonne ${direction === 'dusk' ? 'sinkt' : 'steigt'} am Tag davor oder danach durch ${altitude(altitudeDeg)}, nicht an diesem`,
  'sun-falls-short': ({ direction, fromDeg, toDeg, wantedFromDeg, wantedToDeg }) =>
    `Die Sonne ${direction === 'dusk' ? 'sinkt' : 'steigt'} nur von ${altitude(fromDeg, wantedFromDeg)} bis ${altitude(toDeg, wantedToDeg)}`,
};

const reasons: LibrarySentences['reasons'] = {
  'no-span': ({ date, because }) => `${date}: ${sentenceOf(noPass, 'kind', because)}.`,
  'no-time': ({ gap, intervalS, darkFrame, exposures, pausesS = 0 }) => {
    const open =
      exposures === undefined
        ? `eine Belichtung${darkFrame ? ' und ihr Dunkelbild' : ''}`
        : `${exposures} Belichtungen${darkFrame ? ', ihre Dunkelbilder' : ''} und ${duration(pausesS)} Pausen`;
    return `${gapText(gap)} Ein Intervall von ${comma(intervalS)} s lässt keine Zeit für ${open}.`;
  },
  'too-dark': (why, clock) =>
    `${fromFrame(why, clock)} ist die Szene zu dunkel für diese Ausrüstung, ${beyond(why.worstShortfallEv)}.${
      why.gap === undefined ? '' : ` ${gapText(why.gap)} Das hält die Belichtung kurz.`
    }`,
  'too-bright': (why, clock) =>
    `${fromFrame(why, clock)} ist die Szene zu hell für diese Ausrüstung, ${beyond(why.worstShortfallEv)}.`,
  'too-fast': (why, clock) =>
    `${fromFrame(why, clock)} ändert sich das Licht schneller, als Schritte, Abstand der Einsätze und erlaubter Fehler folgen können: Dieses Bild läge ${tooMuch(why.shortfallEv)} mehr daneben als erlaubt.${
      why.belowHalfClick === undefined ? '' : ` ${halfClickText(why.belowHalfClick)}`
    }`,
};

const missing: LibrarySentences['missing'] = {
  'sun-stays-above': ({ horizon, reachedDeg, levelDeg }) =>
    `die Sonne ${horizon ? 'geht nicht unter; sie ' : ''}erreicht nur ${altitude(reachedDeg, levelDeg)}`,
  'sun-stays-below': ({ horizon, reachedDeg, levelDeg }) =>
    horizon
      ? `die Sonne geht nicht auf; sie erreicht nur ${altitude(reachedDeg)}`
      : `die Sonne bleibt unter ${altitude(levelDeg)}; sie erreicht nur ${altitude(reachedDeg, levelDeg)}`,
  'sun-does-not-pass': ({ rises, levelDeg }) =>
    `die Sonne ${rises ? 'steigt' : 'sinkt'} in dieser Zeit nicht durch ${altitude(levelDeg)}`,
  'moon-stays-up': () => 'der Mond geht nicht unter',
  'moon-stays-down': () => 'der Mond geht nicht auf',
  'moon-does-not-pass': ({ rises }) => `der Mond geht in dieser Zeit nicht ${rises ? 'auf' : 'unter'}`,
};

export const germanLibrary: LibrarySentences = {
  notes,
  cueNotes,
  findings,
  remedies,
  reserve,
  reasons,
  missing,
  refusals,
  warnings,
  faults,
};
