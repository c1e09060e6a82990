// Refusals and warnings of the command, in German.

import { faultText, reasonText, wordsFor } from '@evenfall/chart';
import { quotedText, sentenceOf, type WhyInfeasible } from '@evenfall/core';
import type { FrameColumn } from '../photo-columns.js';
import type { SystemFault } from '../system-error.js';
import type { CommandSentences } from './sentences.js';

const card = wordsFor({ language: 'de' });

const slips: CommandSentences['slips'] = {
  'key-twice': () => 'ein Schlüssel steht zweimal da; nur einmal angeben',
  'tab-indent': () => 'eingerückt ist mit einem Tabulator; Leerzeichen nehmen',
  'second-document': () => 'auf das erste Dokument folgt ein zweites; eines je Datei',
  'too-deep': () => 'zu tief verschachtelt',
  'too-many': () =>
    'enthält mehr Werte als jede Aufnahmedatei; richtig: eine Datei, wie ihr Format sie beschreibt',
  'key-no-word': () => 'eine Gruppe oder Liste steht, wo ein Schlüssel hingehört; ein Wort angeben',
  directive: () => 'vor der Datei steht eine Direktive, eine Zeile, die mit "%" beginnt; sie weglassen',
  tag: () =>
    'vor einem Wert steht ein Tag, ein Wort, das mit "!" beginnt; es weglassen, oder den Text in Anführungszeichen setzen',
  'needs-quotes': ({ begins }) =>
    `ein Text, der mit ${begins.map(quotedText).join(' oder ')} beginnt, braucht Anführungszeichen`,
  'text-open': ({ mark }) => `der Text in ${mark} ist nicht geschlossen; dahinter noch ein ${mark} setzen`,
  'bracket-open': ({ mark }) =>
    `ein ${mark} ist nicht geschlossen; am Ende der Gruppe ein ${mark === '{' ? '}' : ']'} setzen`,
  'one-too-many': ({ mark }) => `ein ${mark} zu viel; weglassen`,
  'out-of-line': () => 'die Zeile beginnt nicht unter ihren Nachbarn; einrücken wie diese',
  'space-missing': ({ after, right }) =>
    `nach ${quotedText(after)} fehlt ein Leerzeichen${right === undefined ? '; eines setzen' : `; richtig: ${quotedText(right)}`}`,
  'equals-sign': ({ right }) => `"=" steht, wo ein Doppelpunkt hingehört; richtig: ${quotedText(right)}`,
  'dash-space': () => 'nach "-" fehlt ein Leerzeichen; vor einen Eintrag der Liste "- " setzen',
  'colon-in-text': () => 'in einem Text steht ein Doppelpunkt; den Text in Anführungszeichen setzen',
  'colon-missing': ({ key, right }) =>
    `nach ${quotedText(key)} fehlt ein Doppelpunkt; richtig: ${quotedText(right)}`,
  'entries-together': () => 'zwei Einträge sind nicht getrennt; ein Komma dazwischen setzen',
  'comment-space': () => 'vor "#" fehlt ein Leerzeichen; eines setzen',
  escape: () => 'ein "\\" zwischen doppelten Anführungszeichen leitet ein Sonderzeichen ein; einfache nehmen',
  'text-after-end': () =>
    'auf das Ende eines Textes folgt noch etwas; alles in ein Paar Anführungszeichen setzen',
  'odd-token': () => 'hier steht etwas, das weder Schlüssel noch Wert ist',
  unusual: ({ said }) => `der Leser von YAML sagt ${quotedText(said)}`,
};

const system: CommandSentences['system'] = {
  ENOENT: 'diese Datei oder diesen Ordner gibt es nicht; den Pfad prüfen',
  ENOTDIR: 'ein Teil des Pfads ist eine Datei, kein Ordner; den Pfad prüfen',
  EISDIR: 'das ist ein Ordner; eine Datei angeben',
  ENOTFILE: 'das ist ein Gerät oder eine Pipe; eine Datei angeben',
  ELOOP: 'die Verweise führen im Kreis; einen anderen Pfad angeben',
  EEXIST: 'dort ist schon etwas; einen anderen Namen angeben',
  ENOTEMPTY: 'das ist ein Ordner; eine Datei angeben',
  EACCES: 'das Recht dazu fehlt; einen eigenen Pfad angeben',
  EPERM: 'das Recht dazu fehlt; einen eigenen Pfad angeben',
  EROFS: 'auf dieses Laufwerk kann nicht geschrieben werden; ein anderes nehmen',
  ENOSPC: 'das Laufwerk ist voll; Platz schaffen',
  EDQUOT: 'der zugeteilte Platz ist verbraucht; Platz schaffen',
  ENAMETOOLONG: 'der Name ist zu lang; einen kürzeren angeben',
};

function systemText(fault: SystemFault): string {
  return 'code' in fault ? system[fault.code] : `das System sagt ${quotedText(fault.said)}`;
}

const whyText = (why: WhyInfeasible) => reasonText(why, card).replace(/[.\s]+$/, '');
const FILES = { shoot: 'Aufnahme', plan: 'Plandatei' };

const NOTHING_LEARNED = {
  'not-read': 'das Licht wurde nicht gelesen; --levels oder --journal angeben',
  elsewhere:
    'die nächste Aufnahme ist an einem anderen Ort oder geht andersherum; eine am selben Ort angeben',
  'other-sun':
    'die Sonne der nächsten Aufnahme steht nie so hoch wie gesehen; eine Spanne angeben, in der sie es tut',
};

function columnText(column: FrameColumn, known: readonly string[]): string {
  const texts: Readonly<Record<FrameColumn, string>> = {
    file: 'der Name der Datei',
    at: 'eine Zeit wie 2026-10-14T18:07:31',
    shutter: 'Sekunden, etwa 1/60 oder 4',
    iso: 'eine Zahl wie 400',
    aperture: 'eine Blendenzahl wie 5.6',
    filters:
      known.length === 0
        ? 'nichts: Die Aufnahme hat keine Filter'
        : `Namen der Aufnahme, ${known.join(', ')}, verbunden mit " + "`,
    mean: 'das Mittel des linearen Lichts, 0 bis 1',
    camera: 'beliebige Worte',
  };
  return texts[column];
}

const refusals: CommandSentences['refusals'] = {
  fault: ({ where, fault }) => `${where}: ${faultText(fault, card)}`,
  'not-yaml': ({ source, line, shown, slip }) =>
    `${source}:${line === undefined ? '' : `${line}:`} nicht als YAML oder JSON lesbar: ${sentenceOf(slips, 'slip', slip)}${shown === undefined ? '' : `\n  ${line} | ${shown}`}`,
  'not-plan-json': ({ source }) =>
    `${source}: nicht als JSON lesbar; eine Plandatei angeben, wie "evenfall plan SHOOT -o plan.json" sie schreibt`,
  'not-utf8': ({ source }) => `${source}: nicht als Text lesbar; als UTF-8 speichern`,
  'too-long': ({ source, of }) =>
    `${source}: ist zu lang für eine ${FILES[of]}; richtig: höchstens ${of === 'shoot' ? '250 kB' : '60 MB'}`,
  'cannot-read': ({ path, because }) => `${path}: nicht zu lesen: ${systemText(because)}`,
  'cannot-write': ({ path, because }) => `${path}: nicht zu schreiben: ${systemText(because)}`,
  'plan-of-nothing': ({ source, why }) => `${source}: ${reasonText(why, card)}`,
  'nothing-written': ({ why }) => `nichts geschrieben: ${whyText(why)}; "evenfall plan" sagt, was hilft`,
  'not-together': ({ options: [one, other] }) => `${one} geht nicht zusammen mit ${other}; eines weglassen`,
  'changes-nothing': ({ options, path }) =>
    `${path === undefined ? '' : `-o ${path}: `}${options.map((name) => `--${name}`).join(' und ')} würde ${path === undefined ? 'auf dem Bildschirm' : 'in dieser Art von Datei'} nichts ändern; weglassen`,
  'unknown-ending': ({ path, ending, known }) =>
    `-o ${path}: ${ending === '' ? 'hat keine Endung' : `endet auf "${ending}", was hier nicht bekannt ist`}; eine Datei mit der Endung ${known.join(', ')} angeben`,
  'several-files': ({ path, count }) =>
    `-o ${path}: das sind ${count} Dateien, und die Standardausgabe fasst eine; einen Dateinamen angeben`,
  'no-output': () => 'keine Datei zum Schreiben angegeben; eine mit -o angeben, oder --json verlangen',
  'no-shoot': () => 'keine Aufnahme angegeben; eine Datei der Aufnahme angeben, oder einen Ort mit --at',
  'shoot-file-itself': ({ where }) =>
    `${where}: ist die Datei der Aufnahme selbst; einen anderen Namen angeben`,
  'followed-already': ({ path }) =>
    `${path}: ein anderer Prozess folgt diesem Plan; jenen zuerst beenden, oder mit --no-journal daneben folgen`,
  'two-of-three': () => 'zwei von --record, --interval und --clip angeben, oder --subject allein',
  'no-frames': ({ paths }) =>
    `${paths.join(', ')}: kein Bild, das sagt, wann und wie es aufgenommen ist; einen Ordner mit JPEG-, TIFF-, DNG- oder HEIF-Dateien angeben, oder eine Tabelle mit der Endung .csv`,
  'table-without': ({ source, column }) =>
    `${source}:1: keine Spalte "${column}"; eine Kopfzeile mit file, at, shutter, iso angeben`,
  'table-cell': ({ source, line, column, given, known }) =>
    `${source}:${line}: ${column}: ${given === '' ? 'hier steht nichts' : `${quotedText(given)} stimmt nicht`}; richtig: ${columnText(column, known)}`,
  'not-a-plan-made': ({ source }) =>
    `${source}: hat keinen Verlauf, an dem etwas zu messen wäre; den Plan angeben, nach dem aufgenommen wurde`,
  'journal-of-another': ({ path }) =>
    `${path}: kein Protokoll dieses Plans; das angeben, das evenfall follow neben ihm geschrieben hat, sein Name mit .journal`,
  'nothing-learned': ({ why }) => `nichts geschrieben: ${NOTHING_LEARNED[why]}`,
  'clip-too-short': () => '--clip ist kürzer als zwei Bilder; richtig: ein längerer Clip',
  unexpected: ({ said }) => `das sollte nicht geschehen: ${quotedText(said)}`,
};

/** Most characters that are named. */
const MOST_UNSHOWN = 20;

const PASSED_OVER = {
  'no-picture': 'nicht als Bild lesbar',
  'no-time': 'sagt nicht, wann es aufgenommen ist',
  'no-exposure': 'sagt weder Belichtungszeit noch ISO',
};

export const germanSentences: CommandSentences = {
  refusals,
  slips,
  system,
  passedOver: (path, because) =>
    `${path}: übergangen: ${because.why === 'cannot-read' ? `nicht zu lesen: ${systemText(because.fault)}` : PASSED_OVER[because.why]}`,
  unshown: (path, characters) =>
    `${path}: seine Schrift hat kein Zeichen für ${characters.slice(0, MOST_UNSHOWN).join(' ')}; dort steht ?; den Text ändern, oder .html schreiben, das zeigt, was das Gerät kann`,
  border: (here, others) =>
    `die Zeitzone ${here.timeZone} (UTC${here.offset}) ist die der Koordinaten; keine 25 km entfernt gilt ${others
      .map(({ timeZone, offset }) => `${timeZone} (UTC${offset})`)
      .join(', ')}; zeigt die eigene Uhr die andere Zeit, "place.timeZone" in die Datei schreiben`,
};
