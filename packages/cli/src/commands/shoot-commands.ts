// The commands that begin with a shoot file: plan, card, chart, cues, light.

import type { Command } from 'commander';
import type { CueOptions, Options, Written } from '../actions/options.js';
import type { Io } from '../io.js';
import type { PrintOptions } from '../print-options.js';
import { noted } from './described.js';
import { answerOptions } from './new.js';
import { type Act, clockOption, languageOption, paperOption, SHOOT } from './options.js';
import { leadsAhead, travel } from './values.js';

const PLAN = `
Example:
  evenfall plan evening.yaml                  read it on the screen
  evenfall plan --at 53.35,-6.26 --interval 8 --iso 100-3200
  evenfall plan evening.yaml -o plan.json     keep it, or drive a rig with it
  evenfall plan evening.yaml --json | less    see every frame

Where no ramp exists it says why, and which single change would cure it.`;

const CARD = `
Example:
  evenfall card evening.yaml -o card.pdf              print at A6, 100 %
  evenfall card evening.yaml -o card.pdf --paper a4   four to a sheet, to cut
  evenfall card evening.yaml -o card.html --dark      for a telephone at night
  evenfall card evening.yaml -o card.txt --language de

Sheets as .svg are numbered: card-1.svg, card-2.svg and so on.`;

const CHART = `
Example:
  evenfall chart evening.yaml -o chart.svg    legible in black and white
  evenfall chart evening.yaml -o chart.pdf    fills a sheet of A4, laid across`;

const CUES = `
Example:
  evenfall cues evening.yaml -o cues.ics      put it into a telephone
  evenfall cues evening.yaml -o cues.ics --ahead 300,30 --travel 1h
  evenfall cues evening.yaml -o cues.csv      open it as a spreadsheet`;

const LIGHT = `
Example:
  evenfall light evening.yaml                 when it gets dark, and how fast
  evenfall light evening.yaml -o light.svg    the same as a picture`;

/** Adds the commands. What each does is loaded when it runs: help needs none of it. */
export function addShootCommands(program: Command, io: Io, act: Act): void {
  const command = (name: string, examples: string, summary: string, description: string) =>
    noted(program.command(name), examples, io.columns)
      .summary(summary)
      .description(description)
      .argument('<shoot>', SHOOT)
      .allowExcessArguments(false);

  const planCommand = noted(program.command('plan'), PLAN, io.columns)
    .summary('print the plan, or write it')
    .description('Plans the shoot: frames, light, and every cue from first to last.')
    .argument('[shoot]', SHOOT)
    .allowExcessArguments(false)
    .option('--json', 'print the plan file, for a program')
    .option(
      '-o, --output <file>',
      'write the plan file (.json), or its frames as a table (.csv); "-" is standard output, "-.csv" too',
    )
    .option('--choices', 'print what other weights would give: fewer cues, less error, cleaner ISO')
    .addOption(languageOption())
    .action((shoot: string | undefined, options: Options) =>
      act(
        options,
        import('../actions/plan.js').then(({ plan }) => plan(shoot, options, io)),
      ),
    );
  answerOptions(planCommand, 'In place of a file:');

  written(
    command('card', CARD, 'write the cue card', 'Writes a cue card to carry to the place.'),
    'card to write: .pdf, .svg, .html or .txt; "-.txt" is standard output',
    'a6; a5 in larger type; a4 or letter: four to a sheet, to cut (default: a6)',
  ).action((shoot: string, options: Written) =>
    act(
      options,
      import('../actions/card.js').then(({ card }) => card(shoot, options, io)),
    ),
  );

  written(
    command(
      'chart',
      CHART,
      'draw light and schedule',
      'Draws the light, the target and the settings that follow it, against local time.',
    ),
    'chart to write: .svg or .pdf; "-" is standard output',
    'sheet to fill, laid across (default: a4 for .pdf, 254 by 183 mm for .svg)',
  ).action((shoot: string, options: Written) =>
    act(
      options,
      import('../actions/chart.js').then(({ chart }) => chart(shoot, options, io)),
    ),
  );

  command(
    'cues',
    CUES,
    'write the cues for a table or a calendar',
    'Writes the cues alone: as a table, as a calendar with an alarm before each, or for a program.',
  )
    .option('--json', 'print the cues, for a program')
    .option('-o, --output <file>', 'cues to write: .csv, .ics or .json; "-" is standard output')
    .option(
      '--ahead <seconds>',
      'how long before its cue an alarm rings; 300,60 for two, none (default: 60)',
      leadsAhead,
    )
    .option(
      '--travel <time>',
      'way to the place: the alarm for setting up rings so long before (default: 30m)',
      travel,
    )
    .addOption(clockOption())
    .addOption(languageOption())
    .action((shoot: string, options: CueOptions) =>
      act(
        options,
        import('../actions/cues.js').then(({ cues }) => cues(shoot, options, io)),
      ),
    );

  command(
    'light',
    LIGHT,
    'show sun, moon and light',
    'Shows the events of sun and moon and the curve of the light, without a camera.',
  )
    .option('--json', 'print the light table, for a program')
    .option(
      '-o, --output <file>',
      'write a chart (.svg, .pdf) or the light table (.json); "-" is standard output',
    )
    .addOption(paperOption('sheet for a chart to fill, laid across'))
    .addOption(clockOption())
    .addOption(languageOption())
    .option('--dark', 'a chart in red on black, for a screen in the dark')
    .action((shoot: string, options: Options & PrintOptions) =>
      act(
        options,
        import('../actions/light.js').then(({ light }) => light(shoot, options, io)),
      ),
    );
}

/** A command whose answer is a drawing in a file. */
function written(command: Command, output: string, paper: string): Command {
  return command
    .requiredOption('-o, --output <file>', output)
    .addOption(paperOption(paper))
    .addOption(clockOption())
    .addOption(languageOption())
    .option('--dark', 'red on black, for a screen in the dark')
    .option('--json', 'print what was written, for a program');
}
