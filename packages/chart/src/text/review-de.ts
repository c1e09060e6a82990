// What a review tells, in German.

import type { FrameRun, ReviewNoteFacts, Sentences } from '@evenfall/core';
import { comma, fixed } from './parts-de.js';

const counted = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;
const frames = (count: number) => counted(count, 'Bild', 'Bilder');
const files = (count: number) => counted(count, 'Datei', 'Dateien');
const seconds = (s: number) => `${comma(Number(Math.abs(s).toPrecision(3)))} s`;
const stops = (ev: number) => `${fixed(Math.abs(ev))} Blenden`;
const MOST_RUNS = 5;

function runsText(runs: readonly FrameRun[]): string {
  const told = runs
    .slice(0, MOST_RUNS)
    .map(({ from, to }) => (from === to ? String(from + 1) : `${from + 1} bis ${to + 1}`));
  return runs.length > MOST_RUNS ? `${told.join(', ')} und weitere` : told.join(', ');
}

/** "Bild 13: " or "Bilder 13, 20 bis 24: ". */
const at = (runs: readonly FrameRun[]) =>
  runs.length === 0
    ? ''
    : `${runs.length === 1 && runs[0]!.from === runs[0]!.to ? 'Bild' : 'Bilder'} ${runsText(runs)}: `;

export const germanReviewNotes: Sentences<ReviewNoteFacts> = {
  'clock-off': ({ fastS }) =>
    `Die Uhr der Kamera ging ${clockText(fastS)} ${fastS > 0 ? 'vor' : 'nach'}; die Zeiten hier sind berichtigt.`,
  'other-camera': ({ count, camera }) =>
    `${frames(count)} ${camera === '' ? 'einer Kamera, die keinen Namen nennt,' : `einer anderen Kamera, ${camera},`} ${count === 1 ? 'bleibt' : 'bleiben'} außer Betracht.`,
  copies: ({ count }) =>
    `${files(count)} ${count === 1 ? 'zeigt' : 'zeigen'} ein Bild noch einmal und ${count === 1 ? 'bleibt' : 'bleiben'} außer Betracht.`,
  outside: ({ before, after }) =>
    `${[
      ...(before > 0 ? [`${frames(before)} vor dem ersten des Plans`] : []),
      ...(after > 0 ? [`${frames(after)} nach seinem letzten`] : []),
    ].join(', ')}: gemessen am Licht seiner Enden.`,
  'missing-frames': ({ count, frames: runs }) =>
    `${at(runs)}${frames(count)} des Plans ${count === 1 ? 'wurde' : 'wurden'} nicht aufgenommen.`,
  'brackets-incomplete': ({ count, frames: runs, missing }) =>
    `${at(runs)}${counted(count, 'Reihe', 'Reihen')}, in ${count === 1 ? 'der' : 'denen'} ${missing === 1 ? 'eine Belichtung fehlt' : `${missing} Belichtungen fehlen`}.`,
  'doubled-frames': ({ count, frames: runs }) =>
    `${at(runs)}${files(count)} mehr als eine je Bild; es gilt, was dem Plan am nächsten ist.`,
  slipped: ({ count, worstS, frame }) =>
    `${counted(count, 'Intervall', 'Intervalle')} verrutscht; das schlimmste, nach Bild ${frame + 1}, war um ${seconds(worstS)} zu ${worstS > 0 ? 'lang' : 'kurz'}.`,
  'other-interval': ({ intervalS, plannedS }) =>
    `Die Bilder kamen alle ${comma(Number(intervalS.toPrecision(4)))} s, geplant waren ${comma(plannedS)} s.`,
  'cues-off-time': ({ count, cue, lateS }) =>
    `${counted(count, 'Einsatz kam', 'Einsätze kamen')} zu spät oder zu früh; am meisten Einsatz ${cue}, ${seconds(lateS)} zu ${lateS > 0 ? 'spät' : 'früh'}.`,
  'cues-missed': ({ cues }) =>
    `${cues.length === 1 ? 'Einsatz' : 'Einsätze'} ${cues.join(', ')} ${cues.length === 1 ? 'wurde' : 'wurden'} nie ausgeführt.`,
  'filter-stayed': ({ cue, filters }) =>
    filters.length === 0
      ? `Bei Einsatz ${cue} kam kein Filter vor die Linse: Sie blieb frei.`
      : `Bei Einsatz ${cue} blieb ${filters.join(' + ')} vor der Linse.`,
  'filters-assumed': () =>
    'Keine Datei sagt, welcher Filter vor der Linse war: Jeder gilt als mit seinem Einsatz gewechselt.',
  unplanned: ({ count, frames: runs }) =>
    `${at(runs)}${frames(count)} mit einer Einstellung, die niemand geplant hat.`,
  'ran-over': ({ count, frames: runs }) =>
    `${at(runs)}${counted(count, 'Belichtung passte', 'Belichtungen passten')} nicht ins Intervall und ${count === 1 ? 'lief' : 'liefen'} ins nächste Bild.`,
  spoilt: ({ count, frames: runs, isSeen }) =>
    isSeen
      ? `${at(runs)}${frames(count)} ${count === 1 ? 'wurde' : 'wurden'} durch einen Filterwechsel verdorben.`
      : `${at(runs)}${frames(count)} ${count === 1 ? 'kann' : 'können'} durch einen Filterwechsel verdorben sein.`,
  clipped: ({ count, frames: runs }) =>
    `${at(runs)}${frames(count)} mit Weiß oder Schwarz, das verdeckt, wie das Licht war.`,
  beyond: ({ count, frames: runs, mostEv }) =>
    `${at(runs)}${frames(count)} ${count === 1 ? 'bräuchte' : 'bräuchten'} mehr als ${stops(mostEv)} Korrektur, so viel wie erlaubt ist.`,
  'off-forecast': ({ byEv }) =>
    `Die Einstellungen liegen in der Regel ${stops(byEv)} ${byEv > 0 ? 'dunkler' : 'heller'}, als die Vorhersage sie will: Wo sie dem wirklichen Licht folgten, Messungen oder die Helligkeit der Bilder angeben.`,
};

/** "1 h 12 s", "8 s". */
function clockText(fastS: number): string {
  const all = Math.abs(fastS);
  if (all < 60) return seconds(fastS);
  const [h, min, s] = [Math.floor(all / 3600), Math.floor(all / 60) % 60, Math.round(all % 60)];
  return [h > 0 ? `${h} h` : '', min > 0 ? `${min} min` : '', s > 0 ? `${s} s` : '']
    .filter((part) => part !== '')
    .join(' ');
}
