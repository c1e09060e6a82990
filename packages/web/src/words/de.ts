// The page in German.

import { wordsFor } from '@evenfall/chart';
import type { Move, PlanInfeasible, Remedy } from '@evenfall/core';
import { faultInGerman } from './de-faults.js';
import type { PageWords } from './en.js';

const card = wordsFor({ language: 'de' });
const counted = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;
const comma = (value: number | string) => String(value).replace('-', '−').replace('.', ',');
const einsaetze = (count: number) => counted(count, 'Einsatz', 'Einsätze');
const blenden = (count: number) => counted(count, 'Blende', 'Blenden');

export const german: PageWords = {
  language: 'de',
  languageName: 'Deutsch',
  dateLocale: 'de-DE',
  number: card.number,
  signed: (value, digits) => {
    const text = comma(Math.abs(value).toFixed(digits));
    return /^[0,]+$/.test(text) ? text : `${value < 0 ? '−' : '+'}${text}`;
  },
  name: 'Evenfall',
  tagline: 'Vom Tag in die Nacht, Blende für Blende.',
  skip: 'Zum Plan springen',
  nav: { label: 'Ansichten', design: 'Entwurf', field: 'Draußen' },
  theme: { label: 'Farben', system: 'Wie das Gerät', light: 'Hell', dark: 'Dunkel' },
  languageLabel: 'Sprache',
  undo: 'Rückgängig',
  close: 'Schließen',
  notSet: 'ohne Angabe',

  part: {
    missing: 'Ein Teil dieser Seite ließ sich nicht laden.',
    reloadHelp:
      'Sie wurde vielleicht erneuert, oder das Netz ist weg. Was aufbewahrt ist, kommt nach dem Neuladen wieder.',
    reload: 'Neu laden',
  },
  tab: {
    other: 'Evenfall ist schon in einem anderen Tab offen.',
    nothingKept: 'Was hier geschieht, wird nicht aufbewahrt.',
    here: 'Hier weitermachen',
  },
  place: {
    title: 'Ort und Zeit',
    sample: 'Beispielort',
    ownPlace: 'eigene Koordinaten',
    latitude: 'Breite',
    longitude: 'Länge',
    north: '° Nord',
    east: '° Ost',
    here: 'Standort dieses Geräts nehmen',
    asking: 'Das Gerät wird gefragt …',
    denied: 'Das Gerät hat seinen Standort nicht genannt. Bitte die Koordinaten eintippen.',
    aboveHorizon: 'Höhe über dem sichtbaren Horizont',
    aboveHorizonHelp:
      'Nur wo man auf ihn hinabsieht, etwa von einer Klippe aufs Meer: Dann geht die Sonne später unter. Nicht die Höhe über dem Meer.',
    zone: 'Zeitzone',
    zoneUnknown: 'mittlere Sonnenzeit der Länge',
    date: 'Datum',
    direction: 'Übergang',
    dusk: 'Abend',
    dawn: 'Morgen',
    spanBy: 'Von wo bis wo',
    bySun: 'nach der Sonne',
    byClock: 'nach der Uhr',
    spanFrom: 'Von Sonnenhöhe',
    spanTo: 'Bis Sonnenhöhe',
    startAt: 'Erstes Bild',
    endAt: 'Letztes Bild',
    clockWrong: 'Diese Uhrzeit gibt es an dem Tag nicht.',
    name: 'Titel auf der Karte',
    namePlaceholder: 'darf leer bleiben',
  },
  rhythm: {
    title: 'Intervall und Clip',
    interval: 'Intervall',
    fps: 'Clip',
    fpsUnit: 'Bilder je Sekunde',
    fromClip: 'Vom Clip zum Intervall',
    gap: 'Pause der Kamera',
    darkFrame: 'Rauschminderung bei Langzeit ist an',
    frameMB: 'Ein Bild',
    cardGB: 'Karte',
    battery: 'Eine Ladung reicht für',
    cold: 'Davon in der Kälte',
    coldHelp: 'Etwa 80 % bei 9 °C, 70 % bei 0 °C, die Hälfte bei −18 °C.',
    frames: 'Bilder',
    secondsUnit: 's',
  },
  kit: {
    title: 'Ausrüstung',
    dial: 'Räder drehen in',
    thirds: 'Dritteln',
    halves: 'Hälften',
    shortest: 'Kürzeste Zeit',
    longest: 'Längste Zeit',
    isoLowest: 'Niedrigste ISO',
    isoHighest: 'Höchste ISO',
    aperture: 'Blende',
    apertureMoves: 'Die Blende darf sich ändern',
    widest: 'Weiteste Blende',
    narrowest: 'Engste Blende',
    bulb: 'Eine Steuerung misst die Zeit frei ab',
    filters: 'ND-Filter in der Tasche',
    noFilters: 'Keine. Einer hält helles Licht zurück.',
    filterName: (n) => `Name von Filter ${n}`,
    filterStrength: (n) => `Stärke von Filter ${n}`,
    strengths: { stops: 'Blenden', density: 'Dichte', factor: 'Faktor' },
    remove: (name) => `${name} entfernen`,
    removeShort: 'Entfernen',
    add: 'Filter hinzufügen',
    addStops: blenden,
    newName: (stops) => `ND ${blenden(stops)}`,
    startFilter: 'Beginnen mit',
    startFree: 'was der Plan am besten findet',
    stack: 'Zwei dürfen zugleich vor der Linse sein',
    seconds: (label) => (label.includes('/') ? label : `${label} s`),
  },
  moves: { title: 'Kamerabewegung' },
  scene: {
    title: 'Was das Objektiv sieht',
    facing: 'Blick',
    facings: { 'toward-sun': 'zur Sonne', side: 'zur Seite', away: 'von der Sonne weg' },
    facingAzimuth: 'eine Himmelsrichtung',
    azimuth: 'Richtung',
    azimuthUnit: '° von Nord',
    viewAltitude: 'Aufwärts um',
    skyShare: 'Himmel im Bild',
    upright: 'Wände und Gesichter, zur Kamera gewandt',
    uprightUnit: '% vom Rest',
    percent: '%',
    surface: 'Boden',
    surfaceGrey: 'mittel',
    surfaces: {
      grass: 'Gras',
      sand: 'Sand',
      snow: 'Schnee',
      water: 'Wasser',
      rock: 'Fels',
      city: 'Häuser',
    },
    reflectance: (share) => `wirft ${share} zurück`,
    cloud: 'Wolken',
    clouds: {
      clear: 'klar',
      thin: 'dünn',
      broken: 'aufgelockert',
      overcast: 'bedeckt',
      heavy: 'dicht bedeckt',
    },
    cloudEighths: (eighths) => `${eighths} Achtel`,
    night: 'Nachthimmel',
    nights: {
      remote: 'fern von Lichtern',
      rural: 'ländlich',
      suburb: 'Stadtrand',
      town: 'Kleinstadt',
      city: 'Großstadt',
    },
    nightMag: (mag) => `${comma(mag)} mag/arcsec²`,
    nightLx: (lx) => `${comma(lx)} lx am Boden`,
    lamps: 'Lampen im Bild',
    lampsWords: {
      none: 'keine',
      street: 'helle Straße',
      floodlit: 'angestrahlte Wände',
      skyline: 'ferne Lichter',
    },
    lampsEv: (ev, share) => `EV ${comma(ev)} auf ${share}`,
    fromFile: 'wie in der Datei',
  },
  look: {
    title: 'Wirkung und Arbeit',
    nightEv: 'Nacht gegen Messung',
    nightHelp: '0 hält die Nacht so hell wie den Tag; −1,5 lässt sie Nacht sein.',
    table: (rows) => `Eine Wirkung in ${counted(rows, 'Zeile', 'Zeilen')}, wie in der Datei.`,
    tableDrop: 'Stattdessen eine Zahl',
    stops: 'Blenden',
    crew: 'Wer stellt die Kamera',
    hand: 'eine Person, von Hand',
    rig: 'eine Steuerung, jedes Bild',
    tolerance: 'Erlaubter Fehler',
    largestStep: 'Größter Schritt',
    spacing: 'Zwischen Einsätzen mind.',
    maxFilterChanges: 'Filterwechsel höchstens',
    noLimit: 'ohne Grenze',
    framesLost: 'Ein Filterwechsel kann verderben',
  },

  summary: {
    label: 'Die Aufnahme in Zahlen',
    frames: 'Bilder',
    clip: 'Clip',
    clipValue: (seconds) => `${seconds} s`,
    time: 'von, bis',
    card: 'Karte',
    cardValue: (need, have) => `${need} von ${comma(have)} GB`,
    cardNeed: (need) => `${need} GB`,
    battery: 'Akku',
    batteryValue: (need, have) => `${need} von ${have}`,
    cues: 'Einsätze',
    error: 'größter Fehler',
    errorValue: (ev) => `${ev} EV`,
    full: (at) => `zu klein, voll um ${at}`,
    spent: (at) => `zu klein, leer um ${at}`,
    ofLastPlan: 'Zahlen des letzten möglichen Plans:',
    planning: 'Es wird geplant …',
  },
  problem: {
    givenUp: 'Die Planung wurde aufgegeben',
    tooLong: (seconds, keys) => `Sie dauerte länger als ${seconds} Sekunden. Zu prüfen: ${keys}.`,
    none: 'Kein Plan mit dieser Ausrüstung',
    noneFor: {
      'too-dark': 'Zu dunkel für diese Ausrüstung',
      'too-bright': 'Zu hell für diese Ausrüstung',
      'too-fast': 'Das Licht ändert sich zu schnell',
      'no-time': 'Die Bewegung lässt keine Zeit',
      'no-span': 'Das tut die Sonne hier nicht',
    },
    cures: 'Eine Änderung, die hilft:',
    noCure: 'Keine einzelne Änderung hilft. Eine kürzere Spanne versuchen, oder mehr als eine Änderung.',
    apply: 'Anwenden',
    stale: 'Bild und Einsätze unten gehören zum letzten möglichen Plan.',
    nothing: 'Zu dieser Aufnahme gibt es bisher keinen Plan zu zeigen.',
    wrong: 'Eine Eingabe kann nicht stimmen',
    applied: (text) => `Erledigt: ${text}`,
  },
  notes: 'Hinweise',
  levels: { warning: 'Warnung', caution: 'Vorsicht', info: 'Hinweis' },

  chart: {
    title: 'Licht und Einstellungen',
    label: ({ from, to, fromEv, toEv, cues }) =>
      `Bild: von ${from} bis ${to} geht die Szene von EV ${fromEv} auf EV ${toEv}; ${einsaetze(cues)}. Dasselbe als Tabelle weiter unten.`,
    scene: 'Szene',
    target: 'Ziel',
    settings: 'Einstellungen',
    band: 'wahrscheinlicher Bereich des Lichts',
    readings: 'Messungen',
    lanes: { shutter: 'Zeit', iso: 'ISO', aperture: 'Blende', filter: 'Filter' },
    ev: 'EV bei ISO 100',
    noFilter: 'kein Filter',
    cursor: 'Uhrzeit',
    cursorHelp: 'Pfeiltasten gehen ein Bild weiter, Bild auf und Bild ab einen Einsatz.',
    events: {
      sunrise: 'Aufgang',
      sunset: 'Untergang',
      'civil-dawn': 'bürgerl. Dämm.',
      'civil-dusk': 'bürgerl. Dämm.',
      'nautical-dawn': 'naut. Dämm.',
      'nautical-dusk': 'naut. Dämm.',
      'astronomical-dawn': 'astron. Dämm.',
      'astronomical-dusk': 'astron. Dämm.',
      moonrise: 'Mondaufgang',
      moonset: 'Monduntergang',
    },
    time: 'Zeit',
    frame: 'Bild',
    sun: 'Sonne',
    sceneEv: 'Szene EV',
    targetEv: 'Ziel EV',
    range: 'wahrscheinlich',
    setting: 'Einstellung',
    errorEv: 'Fehler',
    frameOf: (n, of) => `${n} von ${of}`,
    spoken: ({ time, frame, sun, ev, setting }) =>
      `${time}, Bild ${frame}, Sonne ${sun}°, EV ${ev}, ${setting}`,
    previousCue: 'Voriger Einsatz',
    nextCue: 'Nächster Einsatz',
  },
  readings: {
    underWay:
      'Eine Aufnahme läuft: Was jetzt gemessen wird, gehört nach draußen. Messungen hier planen sie von Anfang an neu.',
    title: 'Messungen',
    help: 'Ein gemessener EV berichtigt die Vorhersage. Seine Marke im Bild ziehen, oder eintippen.',
    none: 'Noch keine.',
    add: 'Eine an der Marke hinzufügen',
    at: (n) => `Zeit der Messung ${n}`,
    ev: (n) => `EV der Messung ${n}`,
    remove: (n) => `Messung ${n} entfernen`,
    handle: (time) => `Messung um ${time}`,
    value: (ev) => `EV ${ev}`,
  },
  cues: {
    title: 'Einsätze',
    none: 'Keine Einsätze: Die Kamera bleibt, wie sie steht.',
    rig: (shortest, longest) =>
      `Die Steuerung misst die Zeit ab, ${shortest} bis ${longest}. Wo sie steht, wird zu jeder Drittelstufe gesagt.`,
    first: 'Beginn',
    filterChange: 'Filterwechsel',
    controls: { shutter: 'Zeit', iso: 'ISO', aperture: 'Blende', filter: 'Filter' },
    minutes: (minutes) => `+${minutes} min`,
  },
  choices: { title: 'Weniger Einsätze oder näher am Licht' },
  table: {
    title: 'Das Bild als Tabelle',
    caption: 'Eine Zeile alle paar Minuten und bei jedem Einsatz',
    changes: 'Änderungen',
  },
  files: {
    title: 'Behalten, teilen, drucken',
    save: 'Speichern',
    shootYaml: 'Aufnahme (YAML)',
    shootJson: 'Aufnahme (JSON)',
    plan: 'Plan (JSON)',
    calendar: 'Einsätze (Kalender)',
    csv: 'Einsätze (Tabelle)',
    open: 'Aufnahme oder Plan öffnen',
    link: 'Link auf diese Aufnahme kopieren',
    linkCopied: 'Link kopiert. Er enthält die Aufnahme selbst; nichts wird gesendet.',
    linkReady: 'Der Link steht in der Adresszeile. Er enthält die Aufnahme selbst.',
    print: 'Einsatzkarte drucken',
    printHelp: 'Seiten in A6; mehrere auf ein Blatt im Druckdialog.',
    noPlan: 'Noch gibt es keinen Plan zu speichern.',
    opened: (name) => `${name} geöffnet.`,
    openedPlan: (name) => `Die Aufnahme aus ${name} geöffnet und neu geplant.`,
    openedLink: 'Die Aufnahme aus dem Link geöffnet.',
    linkWrong: 'Der Link enthält keine lesbare Aufnahme.',
    tooLarge: (name) => `${name} ist zu groß: eine Aufnahme hat höchstens 250 kB, ein Plan 60 MB.`,
    unreadable: (name) => `${name} ist weder YAML noch JSON.`,
    fileWrong: (name) => `${name} ist nicht zu gebrauchen:`,
    fileName: 'evenfall',
  },
  field: {
    title: 'Draußen',
    setUp: (time) => `Bis ${time} aufgebaut sein.`,
    reserve: ({ darker, brighter, held, dawn }) =>
      `Das Licht darf ${darker} Blenden dunkler oder ${brighter} heller ausfallen als vorhergesagt, ehe die Ausrüstung nicht mehr reicht; an ${held > 99 ? 'mehr als 99' : Math.round(held)} von 100 ${dawn ? 'Morgen' : 'Abenden'} bleibt es in diesem Rahmen.`,
    intro: 'Die Ansicht für draußen ist groß, dunkel und rot. Einmal bei Tageslicht proben.',
    start: 'Nach draußen',
    rehearse: 'Proben mit 60-facher Geschwindigkeit',
    resume: 'Zurück zur laufenden Aufnahme',
    resumeRehearsal: 'Zurück zur Probe',
    underWay: (rehearsal, pressed) =>
      `${rehearsal ? 'Eine Probe' : 'Eine Aufnahme'} läuft, bisher wurde ${pressed}-mal gedrückt. Wirklich beiseitelegen?`,
    keepIt: 'Behalten',
    replaceIt: 'Ersetzen',
    endIt: 'Beenden',
    replaced: 'Neu begonnen; was lief, ist beiseitegelegt.',
    endedIt: 'Beendet.',
    bringBack: 'Zurückholen',
    startsOn: (day) => `beginnt ${day}`,
    wasOn: (day) => `war am ${day}`,
    noPlan: 'Erst braucht es einen Plan.',
    faultFirst: 'Erst berichtigen, was nicht stimmen kann: Gezeigt wird noch ein früherer Plan.',
    arrow: '→',
    to: 'auf',
    leave: 'Verlassen',
    finish: 'Laufende Aufnahme beenden',
    finishRehearsal: 'Probe beenden',
  },
  library: { remedy, why, note: card.note, fault: faultInGerman },
};

const AXES = { pan: 'Schwenk', tilt: 'Neigung', slide: 'Fahrt' };

/** "Schwenk 45,2°": a move that a remedy has cut is in degrees or metres. */
function lengthText({ axis, by }: Move): string {
  const length =
    'deg' in by ? `${comma(Math.abs(by.deg))}°` : 'm' in by ? `${comma(Math.abs(by.m))} m` : 'wie bisher';
  return `${AXES[axis]} ${length}`;
}

/** What a remedy changes, told from the change itself. */
function remedy({ apply, change, text }: Remedy): string {
  const { camera, limits, look, span, filters, intervalS, moves } = apply;
  const interval = intervalS === undefined ? '' : `das Intervall auf ${comma(intervalS)} s verlängern`;
  if (change === 'longer-shutter' && camera) {
    // Where the interval alone kept the shutter short its limit stays as it is.
    const zeit = /allow a shutter/i.test(text) ? `eine Zeit von ${camera.shutter.longest} s erlauben` : '';
    const told = [zeit, interval].filter((part) => part !== '').join(' und ');
    return `${told.charAt(0).toUpperCase()}${told.slice(1)}.`;
  }
  if (change === 'higher-iso' && camera) return `Die höchste ISO auf ${camera.iso.highest} heben.`;
  if (change === 'wider-aperture' && camera) {
    const mark = typeof camera.aperture === 'string' ? camera.aperture : camera.aperture.widest;
    return `Die Blende auf f/${mark} öffnen.`;
  }
  if (change === 'narrower-aperture' && camera) {
    const mark = typeof camera.aperture === 'string' ? camera.aperture : camera.aperture.narrowest;
    return `Die Blende auf f/${mark} schließen.`;
  }
  const added = filters?.at(-1);
  if (change === 'another-filter' && added && 'stops' in added) {
    return `Einen ND-Filter mit ${blenden(added.stops)} mitnehmen.`;
  }
  if (change === 'darker-look' && look && 'nightEv' in look) {
    return `Die Nacht dunkler lassen: ${comma(look.nightEv)} gegen Messung.`;
  }
  if (change === 'looser-tolerance' && limits) return `${comma(limits.toleranceEv)} EV Fehler erlauben.`;
  if (change === 'larger-steps' && limits) {
    return `Schritte von ${comma(Math.round(limits.largestStepEv * 100) / 100)} EV erlauben.`;
  }
  if (change === 'closer-cues' && limits) {
    return `Einsätze im Abstand von ${comma(limits.secondsBetweenCues)} s erlauben.`;
  }
  if (change === 'longer-interval' && intervalS !== undefined) {
    return `Das Intervall auf ${comma(intervalS)} s verlängern.`;
  }
  if (change === 'no-dark-frame') {
    return 'Die Rauschminderung abschalten: Ihr Dunkelbild dauert so lange wie die Belichtung.';
  }
  if (change === 'shorter-write' && camera) {
    return `Karte oder Format nehmen, mit denen das Schreiben ${comma(camera.gapS)} s dauert.`;
  }
  if (change === 'shorter-settle' && moves) {
    const settleS = Math.max(
      ...moves.filter(({ mode }) => mode === 'stopped').map(({ gear }) => gear.settleS),
    );
    return `Der Kamera nach einer Bewegung ${comma(settleS)} s Ruhe lassen.`;
  }
  if (change === 'shorter-move' && moves) return `Die Bewegung kürzen: ${moves.map(lengthText).join(', ')}.`;
  if (change === 'shorter-span' && span) {
    return 'startAt' in span
      ? `Nur von ${span.startAt.slice(11, 16)} bis ${span.endAt.slice(11, 16)} aufnehmen.`
      : `Eine kürzere Spanne aufnehmen: von ${comma(span.fromSunAltitudeDeg)}° bis ${comma(span.toSunAltitudeDeg)}° Sonnenhöhe.`;
  }
  return text;
}

/** What a move takes of every interval, where a text says so. */
function gap(text: string): string {
  const [, move, rest, write] =
    /Between frames the longest step of the move takes ([\d.]+) s, its rest ([\d.]+) s and writing ([\d.]+) s\./.exec(
      text,
    ) ?? [];
  return move === undefined || rest === undefined || write === undefined
    ? ''
    : `Zwischen zwei Bildern braucht der längste Schritt der Bewegung ${comma(move)} s, seine Ruhe ${comma(rest)} s, das Schreiben ${comma(write)} s.`;
}

function why({ reason, frame, at, text }: PlanInfeasible['infeasible']): string {
  const taken = gap(text);
  if (reason === 'no-time') {
    const [, interval, dark] =
      /An interval of ([\d.]+) s leaves no time for a shutter( and its dark frame)?/.exec(text) ?? [];
    if (interval === undefined) return text;
    return `${taken} Ein Intervall von ${comma(interval)} s lässt keine Zeit für eine Belichtung${dark === undefined ? '' : ' und ihr Dunkelbild'}.`;
  }
  if (frame === undefined || at === undefined) return text;
  const from = `Ab Bild ${frame + 1} (${at.slice(11, 19)})`;
  const most = /by ([\d.]+) stops at the most/.exec(text)?.[1];
  const hair = text.includes('by a hair') ? ', um Haaresbreite' : '';
  const by = most === undefined ? hair : `, um höchstens ${comma(most)} Blenden`;
  if (reason === 'too-dark')
    return `${from} ist die Szene zu dunkel für diese Ausrüstung${by}.${
      taken === '' ? '' : ` ${taken} Das hält die Belichtung kurz.`
    }`;
  if (reason === 'too-bright') return `${from} ist die Szene zu hell für diese Ausrüstung${by}.`;
  return `${from} ändert sich das Licht schneller, als Schritte, Abstand und erlaubter Fehler folgen können.`;
}
