// The command that works out frames before anything starts.

import { INTERVALS_BY_SUBJECT, type Subject } from '@evenfall/core';
import { type Command, Option } from 'commander';
import type { FramesOptions } from '../frames.js';
import type { Io } from '../io.js';
import { noted } from './described.js';
import { type Act, languageOption } from './options.js';
import { gap, rate, seconds } from './values.js';

const EXAMPLES = `
Example:
  evenfall frames --record 90m --clip 12       interval and frames for a clip of 12 s
  evenfall frames --interval 8 --clip 20       how long it must be recorded
  evenfall frames --record 2h --interval 10    how long the clip will be
  evenfall frames --subject clouds             which interval is advised

Times are seconds, or 90m, 1h30m, 45s.`;

/** Adds "frames" to the command. */
export function addFrames(program: Command, io: Io, act: Act): void {
  noted(program.command('frames'), EXAMPLES, io.columns)
    .summary('compute recording, interval and clip')
    .description(
      'Computes the third from any two of recording, interval and clip, and the longest shutter the interval holds.',
    )
    .option('--record <time>', 'from the first shutter to the last', seconds)
    .option('--interval <time>', "from one frame's start to the next", seconds)
    .option('--clip <time>', 'length of the finished clip', seconds)
    .option('--fps <rate>', 'frames a second in the clip, 23.976 and 29.97 too', rate, 24)
    .option('--gap <time>', 'what the camera needs of each interval beside the shutter', gap, 1)
    .option('--dark-frame', 'long-exposure noise reduction takes the shutter time again')
    .addOption(new Option('--subject <name>', 'interval advised for a subject').choices(subjects()))
    .option('--json', 'print it for a program')
    .addOption(languageOption())
    .allowExcessArguments(false)
    .action((options: FramesOptions) =>
      act(
        options,
        import('../frames.js').then(({ frames }) => frames(options, io)),
      ),
    );
}

function subjects(): Subject[] {
  return Object.keys(INTERVALS_BY_SUBJECT) as Subject[];
}
