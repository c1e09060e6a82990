// Refusals and warnings of the command, in English.

import { english as card, faultText, reasonText } from '@evenfall/chart';
import { quotedText, sentenceOf, type WhyInfeasible } from '@evenfall/core';
import type { FrameColumn } from '../photo-columns.js';
import type { SystemFault } from '../system-error.js';
import type { CommandSentences } from './sentences.js';

const slips: CommandSentences['slips'] = {
  'key-twice': () => 'a key stands twice; give it once',
  'tab-indent': () => 'a tab stands for an indent; give spaces',
  'second-document': () => 'a second document follows the first; give one a file',
  'too-deep': () => 'nested too deep',
  'too-many': () => 'holds more values than a shoot file may; give a file as its format says',
  'key-no-word': () => 'a group or a list stands where a key belongs; give a word',
  directive: () => 'a directive stands before the file, a line that begins with "%"; leave it out',
  tag: () => 'a tag stands before a value, a word that begins with "!"; leave it out, or put text in quotes',
  'needs-quotes': ({ begins }) => `text that begins with ${begins.map(quotedText).join(' or ')} needs quotes`,
  'text-open': ({ mark }) => `text in ${mark} is not closed; give another ${mark} after it`,
  'bracket-open': ({ mark }) =>
    `a ${mark} is not closed; give a ${mark === '{' ? '}' : ']'} where its group ends`,
  'one-too-many': ({ mark }) => `a ${mark} too many; leave it out`,
  'out-of-line': () => 'the line does not begin below its neighbours; indent it as they are',
  'space-missing': ({ after, right }) =>
    `a space is missing after ${quotedText(after)}; give ${right === undefined ? 'one' : quotedText(right)}`,
  'equals-sign': ({ right }) => `"=" stands where a colon belongs; give ${quotedText(right)}`,
  'dash-space': () => 'a space is missing after "-"; give "- " before an entry of a list',
  'colon-in-text': () => 'a colon stands in a text; put the text in quotes',
  'colon-missing': ({ key, right }) =>
    `a colon is missing after ${quotedText(key)}; give ${quotedText(right)}`,
  'entries-together': () => 'two entries are not parted; give a comma between them',
  'comment-space': () => 'a space is missing before "#"; give one',
  escape: () => 'a "\\" in double quotes begins an escape; give single quotes',
  'text-after-end': () => 'something follows a text after its end; put all of it in one pair of quotes',
  'odd-token': () => 'something stands here that is neither a key nor a value',
  unusual: ({ said }) => `the parser says ${quotedText(said)}`,
};

const system: CommandSentences['system'] = {
  ENOENT: 'there is no such file or folder; check the path',
  ENOTDIR: 'a part of the path is a file, not a folder; check the path',
  EISDIR: 'that is a folder; give a file',
  ENOTFILE: 'that is a device or a pipe; give a file',
  ELOOP: 'its links lead in a circle; give another path',
  EEXIST: 'there is one already; give another name',
  ENOTEMPTY: 'that is a folder; give a file',
  EACCES: 'permission is missing; give a path of your own',
  EPERM: 'permission is missing; give a path of your own',
  EROFS: 'the disk takes no writing; give a path on another',
  ENOSPC: 'the disk is full; make room',
  EDQUOT: 'the disk quota is used up; make room',
  ENAMETOOLONG: 'the name is too long; give a shorter one',
};

/** One line's worth: what is wrong and what to do. */
export function englishSystemFault(fault: SystemFault): string {
  return 'code' in fault ? system[fault.code] : `the system says ${fault.said}`;
}

const whyText = (why: WhyInfeasible) => reasonText(why, card).replace(/[.\s]+$/, '');

const NOTHING_LEARNED = {
  'not-read': 'the light was not read; give --levels or --journal',
  elsewhere: 'the shoot to come is at another place or goes the other way; give one at the same place',
  'other-sun':
    'the sun of the shoot to come passes none of the altitudes that were seen; give a span that does',
};

function columnText(column: FrameColumn, known: readonly string[]): string {
  const texts: Readonly<Record<FrameColumn, string>> = {
    file: 'the name of the file',
    at: 'a time such as 2026-10-14T18:07:31',
    shutter: 'seconds, such as 1/60 or 4',
    iso: 'a number such as 400',
    aperture: 'an f-number such as 5.6',
    filters:
      known.length === 0
        ? 'nothing: the shoot has no filters'
        : `names of the shoot, ${known.join(', ')}, joined by " + "`,
    mean: 'the mean of linear light, 0 to 1',
    camera: 'any words',
  };
  return texts[column];
}

const refusals: CommandSentences['refusals'] = {
  fault: ({ where, fault }) => `${where}: ${faultText(fault, card)}`,
  'not-yaml': ({ source, line, shown, slip }) =>
    `${source}:${line === undefined ? '' : `${line}:`} not readable as YAML or JSON: ${sentenceOf(slips, 'slip', slip)}${shown === undefined ? '' : `\n  ${line} | ${shown}`}`,
  'not-plan-json': ({ source }) =>
    `${source}: not readable as JSON; give a plan file, as "evenfall plan SHOOT -o plan.json" writes it`,
  'not-utf8': ({ source }) => `${source}: not readable as text; save it as UTF-8`,
  'too-long': ({ source, of }) =>
    `${source}: is too long for a ${of} file; give one of at most ${of === 'shoot' ? '250 kB' : '60 MB'}`,
  'cannot-read': ({ path, because }) => `${path}: cannot be read: ${englishSystemFault(because)}`,
  'cannot-write': ({ path, because }) => `${path}: cannot be written: ${englishSystemFault(because)}`,
  'plan-of-nothing': ({ source, why }) => `${source}: ${reasonText(why, card)}`,
  'nothing-written': ({ why }) => `nothing written: ${whyText(why)}; "evenfall plan" says what would cure it`,
  'not-together': ({ options: [one, other] }) => `${one} does not go with ${other}; leave one out`,
  'changes-nothing': ({ options, path }) =>
    `${path === undefined ? '' : `-o ${path}: `}${options.map((name) => `--${name}`).join(' and ')} would change nothing ${path === undefined ? 'on the screen' : 'in this kind of file'}; leave it out`,
  'unknown-ending': ({ path, ending, known }) =>
    `-o ${path}: ${ending === '' ? 'has no ending' : `ends in "${ending}", which is not known here`}; give a file ending in ${known.join(', ')}`,
  'several-files': ({ path, count }) =>
    `-o ${path}: these are ${count} files, and standard output holds one; give the name of a file`,
  'no-output': () => 'no file to write is given; give one with -o, or ask for --json',
  'no-shoot': () => 'no shoot is given; give a shoot file, or a place with --at',
  'shoot-file-itself': ({ where }) => `${where}: is the shoot file itself; give another name`,
  'followed-already': ({ path }) =>
    `${path}: another process is following it; end that first, or follow beside it with --no-journal`,
  'two-of-three': () => 'give two of --record, --interval and --clip, or --subject alone',
  'no-frames': ({ paths }) =>
    `${paths.join(', ')}: no frame there that says when and how it was taken; give a folder of JPEG, TIFF, DNG or HEIF files, or a table ending in .csv`,
  'table-without': ({ source, column }) =>
    `${source}:1: no column "${column}"; give a header row with file, at, shutter, iso`,
  'table-cell': ({ source, line, column, given, known }) =>
    `${source}:${line}: ${column}: ${given === '' ? 'nothing stands there' : `${quotedText(given)} is not right`}; give ${columnText(column, known)}`,
  'not-a-plan-made': ({ source }) =>
    `${source}: holds no ramp, so nothing can be held against it; give the plan that was shot`,
  'journal-of-another': ({ path }) =>
    `${path}: no journal of this plan; give the one that evenfall follow wrote beside it, its name with .journal`,
  'nothing-learned': ({ why }) => `nothing written: ${NOTHING_LEARNED[why]}`,
  'clip-too-short': () => '--clip is shorter than two frames; give a longer one',
  unexpected: ({ said }) => `this should not happen: ${said}`,
};

/** Most characters that are named. */
const MOST_UNSHOWN = 20;

const PASSED_OVER = {
  'no-picture': 'not readable as a picture',
  'no-time': 'it does not say when it was taken',
  'no-exposure': 'it does not say its shutter and ISO',
};

export const englishSentences: CommandSentences = {
  refusals,
  slips,
  system,
  passedOver: (path, because) =>
    `${path}: passed over: ${because.why === 'cannot-read' ? `cannot be read: ${englishSystemFault(because.fault)}` : PASSED_OVER[because.why]}`,
  unshown: (path, characters) =>
    `${path}: its letters have none for ${characters.slice(0, MOST_UNSHOWN).join(' ')}; ? stands there; change the text, or write .html, which shows what your device can`,
  border: (here, others) =>
    `the time zone ${here.timeZone} (UTC${here.offset}) is that of the coordinates, within 25 km of ${others
      .map(({ timeZone, offset }) => `${timeZone} (UTC${offset})`)
      .join(', ')}; if your clock shows the other time, write place.timeZone`,
};
