// Why readings are not used and what following warns of, in German.

import { sentenceOf, type UnknownMark } from '@evenfall/core';
import type { LibrarySentences } from './library.js';
import { fixed } from './parts-de.js';

export const refusals: LibrarySentences['refusals'] = {
  impossible: ({ ev100, sunAltitudeDeg, limitEv100 }) =>
    `EV ${fixed(ev100)} ist ${ev100 < limitEv100 ? 'dunkler' : 'heller'} als jede Szene bei Sonnenhöhe ${fixed(sunAltitudeDeg, 0)}°: ` +
    `${ev100 < limitEv100 ? 'mindestens' : 'höchstens'} ${fixed(limitEv100)}. ISO, Filter und Uhrzeit prüfen.`,
  contradictory: ({ movedEv, otherEv100, minutes, allowedEv }) =>
    `${fixed(movedEv)} Blenden von der Messung EV ${fixed(otherEv100)} entfernt, ${fixed(minutes, 0)} Minuten auseinander, gegen die ` +
    `Vorhersage; das Licht ändert sich in dieser Zeit um höchstens ${fixed(allowedEv)}. Noch einmal messen.`,
  superseded: () =>
    'Zwei spätere Messungen stimmen überein und mit dieser nicht: Das Licht hat sich geändert.',
};

const OLD = {
  'older-than-used': 'ist älter als eine schon verwendete',
  'to-come': 'ist aus einer Zeit, die noch kommt',
  'another-day': 'ist von einem anderen Tag',
  'doubtful-time': 'kommt mit einer zweifelhaften Zeit',
};
const UNKNOWN_CUE = {
  'neither-last-nor-next': 'ist weder der letzte noch der nächste',
  'not-told': 'ist keiner der letzten, die angesagt wurden',
};
const DIALS = { shutter: 'die Zeit', iso: 'die ISO', aperture: 'die Blende' };
const BEFORE_MARK = { shutter: 'Zeit ', iso: 'ISO ', aperture: 'f/' };
const ASK_AGAIN =
  'Noch einmal fragen, wenn das die Zeit ist, oder es mit "jump": true sagen. Bis dahin gilt nichts als getan.';

const differing = (ev: number) =>
  `${fixed(Math.abs(ev))} Blenden ${ev > 0 ? 'heller' : 'dunkler'} als erwartet`;
const namesText = (names: readonly string[]) => `[${names.map((name) => `"${name}"`).join(', ')}]`;

const lensText = (names: readonly string[]) => (names.length === 0 ? 'ohne Filter' : names.join(' + '));
const unknownText = (unknown: readonly UnknownMark[]) =>
  unknown
    .map((each) =>
      each.control === 'filter'
        ? `Filter ${each.given} gehören nicht zu denen dieser Aufnahme: ${each.stacks.map(namesText).join(', ')}`
        : `${each.given} steht nicht auf der Skala für ${DIALS[each.control]}`,
    )
    .join('; ');

export const warnings: LibrarySentences['warnings'] = {
  'reading-doubted': ({ ev100, differsEv }) =>
    `EV ${fixed(ev100)} ist ${differing(differsEv)}: wird erst verwendet, wenn die nächsten Messungen es bestätigen.`,
  'reading-believed': ({ differsEv }) => `Das Licht bleibt ${differing(differsEv)}: Ab jetzt gilt es so.`,
  'reading-impossible': ({ because }, clock) => sentenceOf(refusals, 'reason', because, clock),
  'reading-old': ({ ev100, reason }) => `Die Messung EV ${fixed(ev100)} ${OLD[reason]}: nicht verwendet.`,
  'reading-failed': ({ what, given }) =>
    what === 'ev'
      ? `Der Belichtungsmesser gab ${given}, das ist kein EV: nicht verwendet.`
      : `Die Messung hat keine Zeit außer ${given}: nicht verwendet.`,
  'no-reading': ({ minutes }) =>
    `Seit ${minutes} Minuten keine Messung: Die Vorhersage wird von der letzten aus fortgeführt.`,
  'clock-back': ({ frames, frame, at, believed }, clock) => {
    const back = `${frames} ${frames === 1 ? 'Bild' : 'Bilder'} zurück, auf Bild ${frame + 1} um ${clock(at)}`;
    return believed
      ? `Die Uhr gilt als gestellt: ${back}.`
      : `Das ist ${back}: Die Einstellung bleibt; bleibt auch die Zeit dabei, gilt sie.`;
  },
  'clock-ahead': (said) => {
    if (said.reason === 'past-cues-told')
      return `${said.frames} Bilder wurden übergangen; Einsätze waren für die ersten ${said.toldFrames} davon angesagt.`;
    return `In den übergangenen Bildern ${said.cues === 1 ? 'war ein Einsatz' : `waren ${said.cues} Einsätze`} fällig: gilt als nicht getan.`;
  },
  'jump-doubted': (said, clock) =>
    said.reason === 'far-ahead'
      ? `Bild ${said.frame + 1} (${clock(said.at)}) liegt ${said.minutes} Minuten voraus: ${ASK_AGAIN}`
      : `Bild ${said.frame + 1} liegt hinter dem letzten, ${said.frameCount}: ${ASK_AGAIN}`,
  'time-unknown': ({ what, given }) =>
    `${what === 'frame' ? `Ein Bild ${given} gibt es nicht` : `${given} ist keine Zeit`}: geantwortet wird für das Bild der letzten Antwort.`,
  'joined-late': ({ frame }) =>
    `Eingestiegen bei Bild ${frame + 1}: Die Kamera steht vermutlich da, wo der Plan sie hat.`,
  over: ({ frameCount }) => `Das letzte Bild, ${frameCount}, ist gemacht.`,
  'cue-late': ({ cue, lateFrames, frame }) =>
    `Einsatz ${cue} kam ${lateFrames} ${lateFrames === 1 ? 'Bild' : 'Bilder'} zu spät, bei Bild ${frame + 1}.`,
  'cue-missed': ({ cue, sinceFrame, untilFrame }) => {
    if (sinceFrame === undefined) return `Einsatz ${cue} wurde nicht ausgeführt: ohne ihn neu geplant.`;
    if (untilFrame !== undefined)
      return `Einsatz ${cue} fehlte von Bild ${sinceFrame + 1} bis ${untilFrame}; ein späterer Einsatz hat es berichtigt.`;
    return `Einsatz ${cue} fehlt seit Bild ${sinceFrame + 1}: neu geplant von der Einstellung ohne ihn.`;
  },
  'cue-unknown': (said, clock) =>
    said.reason === 'none-then'
      ? `Um ${clock(said.at)} war keiner der letzten Einsätze fällig: Nichts ändert sich.`
      : `Einsatz ${said.cue} ${UNKNOWN_CUE[said.reason]}: Nichts ändert sich.`,
  'outside-kit': ({ outside }) =>
    `${outside.map(({ control, mark }) => BEFORE_MARK[control] + mark).join(' und ')} geht hier nicht: einstellen, was geantwortet wird.`,
  'setting-unknown': ({ unknown }) =>
    `Die gemeldete Einstellung wird nicht verwendet: ${unknownText(unknown)}.`,
  'kit-unknown': ({ unknown }) => `Die Ausrüstung bleibt, wie sie war: ${unknownText(unknown)}.`,
  'kit-empty': ({ control }) =>
    `Diese Grenzen lassen keine ${control === 'iso' ? 'ISO' : 'Belichtungszeit, die ins Intervall passt,'} übrig: Die Ausrüstung bleibt, wie sie war.`,
  'filter-refused': ({ times, filters, standing }) =>
    `Der Filterwechsel ${lensText(standing)} → ${lensText(filters)} wurde ${times}-mal nicht ausgeführt. Beim nächsten Einsatz wechseln; ` +
    'oder mit "lost" sagen, was verloren ist, oder mit "kit": {"maxFilterChanges": 0}, dass keiner mehr gewechselt wird: Der Rest wird dann ohne geplant.',
  'out-of-reach': ({ now, frame, at, end, worstEv }, clock) =>
    `${now ? 'Jetzt' : `Ab Bild ${frame + 1} (${clock(at)})`} ist das Licht zu ${end === 'dark' ? 'dunkel' : 'hell'} ` +
    `für diese Ausrüstung, um bis zu ${fixed(worstEv)} Blenden über den erlaubten Fehler hinaus.`,
  'within-reach': ({ end }) =>
    `Das Licht ist für diese Ausrüstung nicht mehr zu ${end === 'dark' ? 'dunkel' : 'hell'}, jetzt und später, soweit bekannt.`,
  'too-fast': ({ frame, at, worstEv }, clock) =>
    `Ab Bild ${frame + 1} (${clock(at)}) ändert sich das Licht schneller, als diese Grenzen für Einsätze es zulassen: ` +
    `um bis zu ${fixed(worstEv)} Blenden über den erlaubten Fehler hinaus.`,
};
