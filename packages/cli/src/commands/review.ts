// The command for after the shoot.

import type { Command } from 'commander';
import type { Io } from '../io.js';
import type { ReviewFlags } from '../review.js';
import { noted } from './described.js';
import { type Act, clockOption, languageOption, paperOption } from './options.js';
import { clockFast, most } from './values.js';

const EXAMPLES = `
Example:
  evenfall review plan.json frames                  what happened, on the screen
  evenfall review plan.json frames -o offsets.csv   stops to brighten, by file
  evenfall review plan.json frames -o review.svg    planned and taken, a chart
  evenfall review plan.json frames --levels         with the light as it was
  evenfall review plan.json frames --levels --next next.yaml -o readings.yaml
  evenfall review plan.json frames -o clip.ffconcat
    and clip.filter beside it, for a preview clip:
  ffmpeg -f concat -safe 0 -i clip.ffconcat -filter_script:v clip.filter clip.mp4

Files are opened for reading only. docs/review.md tells more.`;

/** Adds "review" to the command. */
export function addReview(program: Command, io: Io, act: Act): void {
  noted(program.command('review'), EXAMPLES, io.columns)
    .summary('after the shoot: what happened, and offsets for every frame')
    .description(
      'Holds the frames that were taken against the plan: cues late or missed, frames missing, doubled or spoilt, settings ' +
        'nobody planned, and by how many stops each frame is to be brightened.',
    )
    .argument('<plan>', 'plan file, as "evenfall plan SHOOT -o plan.json" writes it')
    .argument('<frames...>', 'folders and files of frames, or a table (.csv)')
    .option('--json', 'print the review file, for a program')
    .option(
      '-o, --output <file>',
      'write the review (.json), offsets (.csv), a chart (.svg, .pdf), a clip (.ffconcat), readings (.yaml)',
    )
    .option('--levels', 'read how bright each JPEG came out: what the light really did')
    .option('--journal <file>', 'journal of the followed evening: its readings and filters')
    .option('--clock-fast <seconds>', 'by how much the camera clock is fast (default: found)', clockFast)
    .option('--most <stops>', 'largest correction, above 0 to 6 (default: 3)', most)
    .option('--even-flicker', 'take out small differences of the levels too')
    .option('--next <shoot>', 'with -o (.yaml): shoot to come at the place, to write readings for')
    .option('--replace-spoilt', 'show a spoilt frame as its nearest good neighbour')
    .addOption(paperOption('sheet for a chart to fill, laid across'))
    .addOption(clockOption())
    .addOption(languageOption())
    .option('--dark', 'a chart in red on black, for a screen in the dark')
    .allowExcessArguments(false)
    .action((plan: string, frames: string[], flags: ReviewFlags) =>
      act(
        flags,
        import('../review.js').then(({ review }) => review(plan, frames, flags, io)),
      ),
    );
}
