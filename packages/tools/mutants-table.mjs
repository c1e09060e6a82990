// The table of DEVELOPERS.md: how many small faults core's tests find, by room.
//
//   node packages/tools/mutants-table.mjs FILE …            prints it from the outcomes that mutants.mjs has collected
//   node packages/tools/mutants-table.mjs FILE … --write    writes it into DEVELOPERS.md

import { readFileSync } from 'node:fs';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { markdownTable, writeBetween } from './marked-table.mjs';

const page = fileURLToPath(new URL('../../DEVELOPERS.md', import.meta.url));
const [OPEN, CLOSE] = [
  '<!-- mutants: written by packages/tools/mutants-table.mjs -->',
  '<!-- end of mutants -->',
];

const files = process.argv.slice(2).filter((argument) => argument !== '--write');
const outcomes = files.flatMap((file) =>
  readFileSync(file, 'utf8')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line)),
);

const found = (list) => list.filter(({ end }) => end !== 'pass').length;
const percent = (list) => `${Math.floor((100 * found(list)) / list.length)} %`;
const rooms = [...new Set(outcomes.map(({ room }) => room))];
const rows = rooms.map((room) => {
  const list = outcomes.filter((outcome) => outcome.room === room);
  return [room, String(list[0].of), String(list.length), String(found(list)), percent(list)];
});
const all = ['all', '', String(outcomes.length), String(found(outcomes)), percent(outcomes)];
const table = markdownTable(['room', 'faults there are', 'tried', 'found', 'score'], [...rows, all]);
if (process.argv.includes('--write')) writeBetween(page, OPEN, CLOSE, table);
else console.log(table);
