// What a plan has beside its exposures: where a camera that moves stands at each frame, what is found in it and would fix
// it, the stars and the sun in a known frame, readings, and what a kit that may fall short lacks.

import { exactFps } from '../footage/footage.js';
import { type MovePlan, planMoves } from '../move/move.js';
import { opticsOf } from '../shoot/time-left.js';
import { clockOver } from '../words/clock.js';
import { sentenceOf } from '../words/sentences.js';
import { englishNotes } from './english.js';
import type { Forecast } from './forecast.js';
import type { MoveNote, Note } from './note-context.js';
import { inOrderOfNotes, withLensNotes } from './notes.js';
import { readingNotes } from './notes-readings.js';
import { reserveNotes } from './notes-reserve.js';
import { tightNotes } from './notes-tight.js';
import type { Prepared } from './prepare.js';
import { remedyFor } from './remedies/remedy.js';
import type { PlanMade, PlanMove } from './types.js';

/** A plan of exposures with the moves of its shoot, and with what is to be said of them and of the stars. */
export function withMoves(
  exposed: PlanMade,
  { forecast, problem }: Pick<Prepared, 'forecast' | 'problem'>,
): PlanMade {
  const moved = movesOf(exposed);
  const plan = moved === undefined ? exposed : planOf(exposed, forecast, moved);
  const added: (MoveNote | Note)[] = [
    ...(plan.move?.findings ?? []).map(({ level, text: _, remedies, ...found }) => ({
      level,
      kind: 'move' as const,
      found,
      changes: remedies.map(({ text: _, apply: __, ...change }) => change),
    })),
    ...(plan.move === undefined ? [] : tightNotes(plan.move.tightest, plan.frames, plan.shoot.intervalS)),
    ...reserveNotes(plan, forecast, problem),
    ...readingNotes(plan, forecast),
    ...(moved?.cautions ?? []).map(({ kind }) => {
      return { level: 'caution', kind: 'move-caution', caution: kind } as const;
    }),
  ];
  const clock = clockOver(exposed.clocksBack);
  const notes = added.map((note) => ({ ...note, text: sentenceOf(englishNotes, 'kind', note, clock) }));
  return withLensNotes({ ...plan, notes: inOrderOfNotes([...plan.notes, ...notes]) }, forecast);
}

function movesOf({ shoot, frames }: PlanMade): MovePlan | undefined {
  const { moves, intervalS, clipFps, camera } = shoot;
  if (moves.length === 0) return undefined;
  const optics = opticsOf(camera);
  return planMoves({
    moves,
    frames,
    intervalS,
    clipFps: exactFps(clipFps),
    writeS: camera.gapS,
    darkFrame: camera.darkFrame,
    ...(camera.bracket === undefined ? {} : { bracket: camera.bracket }),
    ...(optics === undefined ? {} : { optics }),
  });
}

function planOf(
  exposed: PlanMade,
  forecast: Forecast,
  { frames, travels, gap, tightest, fastest, findings, lines }: MovePlan,
): PlanMade {
  const move: PlanMove = {
    travels,
    gap,
    tightest,
    ...(fastest === undefined ? {} : { fastest }),
    findings: findings.map((finding) => ({
      ...finding,
      remedies: finding.remedies.flatMap(
        ({ text: _, ...change }) => remedyFor(exposed.shoot, forecast, change) ?? [],
      ),
    })),
    lines,
  };
  // Not spread into a literal: with so many keys that takes twenty times as long, at every keystroke of a page.
  return { ...exposed, frames: exposed.frames.map((frame, i) => Object.assign({}, frame, frames[i])), move };
}
