// The command that follows a plan through the evening.

import type { Command } from 'commander';
import type { FollowFlags } from '../follow-flags.js';
import type { Io } from '../io.js';
import { noted } from './described.js';
import { type Act, clockOption, languageOption } from './options.js';
import { meterEv, secondsAhead } from './values.js';

const FOLLOW = `
Example:
  evenfall plan evening.yaml -o plan.json
  evenfall follow plan.json

At a terminal:
  12.4            the meter says EV 12.4 at ISO 100, now
  18:20 12.4      or then
  1/60            the camera meters 1/60, the rest as it stands
  done, missed    the cue that was due
  ?               everything else

For a program, each line answered by one:
  {"at":"2026-10-14T18:20:00+01:00","ev100":12.4}     a meter reading at ISO 100
  {"frame":120}                                       what holds for this frame
  {"done":3}                                          cue 3 is done

What comes in is kept in a journal beside the plan, here plan.json.journal.
Started again, the command goes on where it was, however it ended; --start-over
begins a new evening.

A line that is not understood changes nothing and says so. docs/follow.md tells more.`;

/** Adds "follow" to the command. */
export function addFollow(program: Command, io: Io, act: Act): void {
  noted(program.command('follow'), FOLLOW, io.columns)
    .summary('correct the plan by meter readings, live')
    .description(
      'Follows a plan through the evening. At a terminal, type what the meter says, or what you did: the answer is what ' +
        'to set now and what comes next. From a pipe, or with --json, it takes one JSON object a line and answers in one.',
    )
    .argument('<plan>', 'plan file, as "evenfall plan SHOOT -o plan.json" writes it')
    .option('--start-over', 'start the evening over; its journal so far is kept under another name')
    .option('--no-journal', 'read no journal and keep none')
    .option('--meter <stops>', 'by how much one reading differs from the next (default: 0.07)', meterEv)
    .option('--ring <seconds>', 'at a terminal: ring so long before each cue, and at it', secondsAhead)
    .option('--json', 'at a terminal: lines as a program has them')
    .addOption(clockOption())
    .addOption(languageOption())
    .option('--dark', 'at a terminal: red letters')
    .allowExcessArguments(false)
    .action((plan: string, flags: FollowFlags) =>
      act(
        flags,
        import('../follow.js').then(({ follow }) => follow(plan, flags, io)),
      ),
    );
}
