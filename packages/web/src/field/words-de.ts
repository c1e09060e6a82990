// What the field view says, in German.

import type { FieldWords } from './words-en.js';

const counted = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;
const comma = (value: number | string) => String(value).replace('-', '−').replace('.', ',');
const einsaetze = (count: number) => counted(count, 'Einsatz', 'Einsätze');

export const german: FieldWords = {
  days: (count) => counted(count, 'Tag', 'Tage'),
  now: 'Jetzt',
  next: 'Nächster',
  due: 'Jetzt stellen',
  late: 'Überfällig',
  afterThat: 'Danach',
  toGo: 'noch',
  over: 'vorbei',
  startAt: 'Kamera starten um',
  startCamera: 'Kamera starten',
  bracket: (exposures, stops) =>
    `je ${exposures} Belichtungen, ${stops} ${stops === '1' ? 'Blende' : 'Blenden'} auseinander; dies ist die mittlere`,
  setFirst: 'Dies einstellen, dann starten',
  standsReady: 'Bereit: Die Kamera steht auf',
  ready: 'Bereit',
  isReady: 'Bereit ✓',
  setNow: 'Jetzt dies einstellen',
  setBehind: (count) => `${einsaetze(count)} zurück: jetzt dies einstellen`,
  allDone: 'Keine Einsätze mehr',
  ended: 'Die Aufnahme ist vorbei',
  toTheEnd: 'bis zum Ende',
  done: 'Erledigt',
  clicks: (count) => counted(count, 'Raste', 'Rasten'),
  wasDone: (p) =>
    `${counted(p.frames, 'Bild', 'Bilder')}: ${einsaetze(p.cues)} erledigt, ${p.missed} nicht, ${counted(p.readings, 'Messung', 'Messungen')}.`,
  undoLast: (kind) =>
    kind === 'reading'
      ? 'Messung zurück'
      : kind === 'done'
        ? 'Doch nicht'
        : kind === 'kit'
          ? 'Ausrüstung zurück'
          : 'Zurück',
  early: (at, toGo) => `Der nächste Einsatz ist um ${at} dran, in ${toGo}. Ist er schon eingestellt?`,
  earlyYes: 'Ja, eingestellt',
  earlyNo: 'Nein',
  missed: 'Nicht gestellt: von da an neu planen, wo die Kamera steht',
  enterEv: 'EV eingeben',
  frameOf: (n, of) => `Bild ${n} von ${of}`,
  exposing: 'belichtet',
  gap: 'Pause',
  interval: (seconds) => `alle ${comma(seconds)} s`,
  clip: (now, all) => `Clip ${now} von ${all} s`,
  card: (now, all) => `Karte ${now} von ${comma(all)} GB`,
  cardShort: (frames) => `Karte voll bei Bild ${frames}`,
  battery: (now, all) => `Akku ${now} von ${all}`,
  batteryShort: (frame) => `Akku wechseln bis Bild ${frame}`,
  rehearsal: 'Probe 60×',
  live: 'Echt',
  pause: 'Halt',
  go: 'Weiter',
  jump: 'Vorspulen',
  sound: 'Ton',
  vibration: 'Summen',
  on: 'an',
  off: 'aus',
  announceSet: (what) => `Jetzt einstellen: ${what}`,
  announceDue: (what) => `Jetzt: ${what}`,
  announceSoon: (what, seconds) => `In ${seconds} Sekunden: ${what}`,
  awake: 'Bildschirm bleibt an',
  notAwake: 'Bildschirm kann ausgehen',
  notKept: 'Dieser Browser bewahrt nichts auf: Beim Neuladen ist der Abend verloren.',
  kit: {
    open: 'Ausrüstung',
    title: 'Die Ausrüstung, wie sie jetzt ist',
    filters: 'Filter zur Hand: Verlorene abwählen',
    highestIso: 'ISO höchstens',
    use: 'Weiterplanen',
    used: 'Der Rest ist mit dieser Ausrüstung neu geplant.',
  },
  meter: {
    title: 'Gemessener EV',
    ev: 'EV bei ISO 100',
    less: 'Ein Zehntel dunkler',
    more: 'Ein Zehntel heller',
    forecast: (ev) => `Vorhersage jetzt: EV ${ev}`,
    byCamera: 'Die Kamera misst',
    atSetting: (setting) => `bei ${setting}`,
    spread: 'Messungen desselben Lichts weichen ab um',
    spreadUnsaid: 'nicht angegeben',
    spreadOf: (stops: string) => `±${stops} Blenden`,
    use: 'Verwenden',
    cancel: 'Abbrechen',
    used: (ev) => `Messung EV ${ev} verwendet; der Rest ist neu geplant.`,
    insist: 'Trotzdem verwenden',
  },
};
