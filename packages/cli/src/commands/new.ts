// The command that asks a dozen questions; its options are the answers, which "plan" takes too.

import { type Command, Option } from 'commander';
import type { Io } from '../io.js';
import type { NewOptions } from '../new-shoot.js';
import { QUESTIONS, type Question } from '../questions.js';
import { noted } from './described.js';
import { type Act, languageOption } from './options.js';

const EXAMPLES = `
Example:
  evenfall new evening.yaml                         asks, and writes the file
  evenfall new evening.yaml --at 53.35,-6.26 --yes  asks nothing
  evenfall new - --at 53.35,-6.26 --yes | evenfall plan -

Enter takes what stands in brackets. A file that is there is never written over.
From a pipe, answers are read a line each, and an empty line takes the default.`;

/** What an option takes, and what it says. */
const OPTIONS: Readonly<Record<Question, readonly [value: string, means: string]>> = {
  title: ['text', 'title, which stands on the card'],
  at: ['place', 'latitude,longitude in degrees, south and west negative'],
  on: ['date', 'local date on which it begins, YYYY-MM-DD (default: today)'],
  direction: ['word', 'dusk or dawn (default: dusk)'],
  interval: ['seconds', 'from one frame to the next (default: 8)'],
  shutter: ['range', 'shortest to longest you allow (default: "1/4000 to" what fits)'],
  iso: ['range', 'lowest to highest you allow (default: "100 to 6400")'],
  aperture: ['mark', 'held all the time (default: 4)'],
  lens: ['mm', 'focal length as on full frame, or none (default: 24)'],
  nd: ['stops', 'ND filters in the bag, as in 3,6 (default: none)'],
  facing: ['word', 'toward-sun, side, away, or a compass point (default: toward-sun)'],
  night: ['word', 'sky glow: remote, rural, suburb, town, city (default: town)'],
  lamps: ['word', 'in the frame: none, street, floodlit, skyline (default: street)'],
};

/** The questions as options, under a heading of their own. */
export function answerOptions(command: Command, heading: string): Command {
  command.optionsGroup(heading);
  for (const question of QUESTIONS) {
    const [value, means] = OPTIONS[question];
    command.addOption(new Option(`--${question} <${value}>`, means));
  }
  return command.optionsGroup('Options:');
}

/** Adds "new" to the command. */
export function addNew(program: Command, io: Io, act: Act): void {
  const command = noted(program.command('new'), EXAMPLES, io.columns)
    .summary('ask a dozen questions and write a shoot file')
    .description(
      'Asks where, when, how often, with which camera and of what, and writes a commented shoot file.',
    )
    .argument('<file>', 'file to write, YAML; "-" is standard output')
    .option('-y, --yes', 'ask nothing: the default for whatever is not given')
    .option('--json', 'write it as JSON, for a program')
    .addOption(languageOption());
  answerOptions(command, 'Answers given beforehand, which are not asked:')
    .allowExcessArguments(false)
    .action((path: string, options: NewOptions) =>
      act(
        options,
        import('../new-shoot.js').then(({ writeNew }) => writeNew(path, options, io)),
      ),
    );
}
