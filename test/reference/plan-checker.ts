// A plan file held against its own words: docs/formats.md for the shape, docs/ramp.md for rules and cost. It imports
// nothing of the product: exact values come from the labels, cues and summary from the frames.
//
// Readings chosen: numbers are not rounded (1e-6); times are whole seconds or carry a fraction; under bulb the shutter's
// label is free, since no dial has such a mark, and its movement is in no cue; rampStops is highest less lowest target;
// the frames' filters are in any order; a shoot with startFilter begins with that filter alone on the lens.

import { child, type Found, flag, list, number, object, objects, text, texts, timeMs } from './plain-json.js';
import { type Dial, exactOfStep, stepOfLabel } from './plan-labels.js';
import { reserveFaults } from './plan-reserve.js';
import { longestTimeS, type ShootFacts, shootFacts } from './plan-shoot.js';

const SLACK = 1e-9;
const DIGITS = 1e-6; // numbers that went through text
const REASONS = ['too-dark', 'too-bright', 'too-fast', 'no-time', 'no-span'];

interface Row {
  readonly atMs: number;
  readonly labels: Readonly<Record<Dial | 'filter', string>>;
  readonly steps: Readonly<Record<Dial, number>>; // the shutter's is not whole under bulb
  readonly timeS: number;
  readonly filterStops: number;
  readonly settingEv100: number;
  readonly sceneEv100: number;
  readonly targetEv100: number;
  readonly errorEv: number;
  readonly affected: boolean; // as the plan says
}

/** Everything that is wrong with a plan; an empty list for a sound one, with or without a ramp. */
export function checkPlan(plan: unknown): string[] {
  const wrong: string[] = [];
  try {
    const root = object(plan, 'plan');
    if (text(root, 'format') !== 'evenfall-plan/1') wrong.push(`format is ${text(root, 'format')}`);
    if (root.value.infeasible === undefined) checkMade(root, wrong);
    else checkInfeasible(child(root, 'infeasible'), wrong);
  } catch (error) {
    wrong.push(error instanceof Error ? error.message : String(error));
  }
  return wrong;
}

function checkInfeasible(answer: Found, wrong: string[]): void {
  const reason = text(answer, 'reason');
  if (!REASONS.includes(reason)) wrong.push(`reason "${reason}" is none of ${REASONS.join(', ')}`);
  list(answer, 'remedies');
  if (reason === 'no-span' || reason === 'no-time') {
    if (answer.value.frame !== undefined) wrong.push(`${reason} names a frame`);
    return;
  }
  if (!(Number.isInteger(number(answer, 'frame')) && number(answer, 'frame') >= 0))
    wrong.push('frame is no frame');
  timeMs(answer, 'at');
  if (number(answer, 'shortfallEv') < 0) wrong.push('shortfallEv is negative');
}

function checkMade(root: Found, wrong: string[]): void {
  const asked = child(root, 'shoot');
  const found = objects(root, 'frames');
  const shoot = shootFacts(asked, found.length);
  if (found.length === 0) throw new Error('a plan without frames');
  const rows = found.map((frame, i) => checkFrame(frame, i, shoot, wrong));
  wrong.push(...shoot.moves.planFaults(root, found));

  rows.forEach(({ atMs }, i) => {
    // Times written in whole seconds may each be half a second off.
    const slackMs = rows.every(({ atMs: ms }) => ms % 1000 === 0) ? 1000 : 2;
    const driftMs = atMs - rows[0]!.atMs - i * shoot.intervalS * 1000;
    if (Math.abs(driftMs) > slackMs) wrong.push(`frame ${i}: ${driftMs} ms off its place`);
  });

  const { objective, cueFrames } = checkRules(rows, shoot, wrong);
  checkCues(root, rows, cueFrames, shoot, wrong);
  checkShutterTimes(root, rows, cueFrames, shoot, wrong);
  const summary = child(root, 'summary');
  checkSummary(summary, rows, { objective, cueCount: cueFrames.length }, shoot, wrong);
  const targets = rows.map(({ targetEv100 }) => targetEv100);
  wrong.push(...reserveFaults(summary, asked, shoot, targets));
  for (const event of objects(root, 'events')) {
    text(event, 'name');
    timeMs(event, 'at');
    number(event, 'sunAltitudeDeg');
  }
  for (const note of objects(root, 'notes')) {
    text(note, 'text');
    const level = text(note, 'level');
    if (!['info', 'caution', 'warning'].includes(level)) wrong.push(`a note's level is "${level}"`);
  }
}

function checkFrame(frame: Found, i: number, shoot: ShootFacts, wrong: string[]): Row {
  const per = shoot.stepsPerStop;
  const same = (key: string, is: number) => {
    const said = number(frame, key);
    if (!near(said, is)) wrong.push(`frame ${i}: ${key} is ${said}, should be ${is}`);
  };
  const expect = (holds: boolean, why: string) => {
    if (!holds) wrong.push(`frame ${i}: ${why}`);
  };

  same('frame', i);
  const names = texts(frame, 'filters');
  const labels = {
    shutter: text(frame, 'shutter'),
    iso: String(number(frame, 'iso')),
    aperture: text(frame, 'aperture'),
    filter: names.length === 0 ? 'none' : names.join(' + '),
  };
  const steps = {
    shutter: shoot.bulb
      ? -Math.log2(number(frame, 'shutterS')) * per
      : stepOfLabel('shutter', labels.shutter, per),
    iso: stepOfLabel('iso', labels.iso, per),
    aperture: stepOfLabel('aperture', labels.aperture, per),
  };
  const timeS = exactOfStep('shutter', steps.shutter, per);
  same('shutterS', timeS);
  checkBracket(frame, i, timeS, shoot, wrong);
  same('isoExact', exactOfStep('iso', steps.iso, per));
  same('fNumber', exactOfStep('aperture', steps.aperture, per));
  for (const dial of ['shutter', 'iso', 'aperture'] as const) {
    const [low, high] = shoot[dial];
    // Bulb seconds have gone through text.
    expect(
      steps[dial] >= low - DIGITS && steps[dial] <= high + DIGITS,
      `${dial} is beyond the camera's range`,
    );
  }

  expect(names.length <= shoot.filtersAtOnce, `${names.length} filters on the lens`);
  expect(new Set(names).size === names.length, 'one filter twice');
  const filterStops = names.reduce((sum, name) => sum + (shoot.filterStops.get(name) ?? Number.NaN), 0);
  expect(!Number.isNaN(filterStops), `a filter that is not owned: ${labels.filter}`);
  same('filterStops', filterStops);
  if (i === 0 && shoot.startFilter !== undefined)
    expect(labels.filter === shoot.startFilter, 'not the start filter');

  const exposedS = shoot.bracketEv.reduce((sum, ev) => sum + timeS * 2 ** ev, 0);
  const busyS = exposedS * (shoot.darkFrame ? 2 : 1) + shoot.pausesS + shoot.gapS;
  expect(busyS <= shoot.intervalS + (shoot.bulb ? DIGITS : SLACK), `busy ${busyS} s of ${shoot.intervalS} s`);

  wrong.push(...shoot.moves.frameFaults(frame, i, timeS));

  const settingEv100 = (steps.aperture + steps.shutter - steps.iso) / per + filterStops;
  same('settingEv100', settingEv100);
  const sceneEv100 = number(frame, 'sceneEv100');
  same('targetEv100', sceneEv100 - shoot.offsetEv(number(frame, 'sunAltitudeDeg')));
  const targetEv100 = number(frame, 'targetEv100');
  const errorEv = settingEv100 - targetEv100;
  same('errorEv', errorEv);
  if (shoot.bulb) {
    const wantedS = timeS * 2 ** errorEv;
    const shortestS = exactOfStep('shutter', shoot.shutter[1], per);
    const clampedS = Math.max(shortestS, Math.min(longestTimeS(shoot), wantedS));
    expect(Math.abs(Math.log2(timeS / clampedS)) <= DIGITS, `bulb gives ${timeS} s, should be ${clampedS} s`);
  }
  const atMs = timeMs(frame, 'at');
  const affected = flag(frame, 'affected');
  return {
    atMs,
    labels,
    steps,
    timeS,
    filterStops,
    settingEv100,
    sceneEv100,
    targetEv100,
    errorEv,
    affected,
  };
}

/** Rules 2 to 6, and the cost with the shoot's prices. */
function checkRules(rows: readonly Row[], shoot: ShootFacts, wrong: string[]) {
  const { m, stepsPerStop, framesLost, intervalS, priceOf } = shoot;
  const against = (darkerBy: number) =>
    (shoot.dusk ? darkerBy : -darkerBy) > SLACK ? priceOf('againstLight', 6) : 0;
  const cueFrames: number[] = [];
  const filterFrames: number[] = [];
  let objective = 0;

  for (let i = 1; i < rows.length; i++) {
    const [a, b] = [rows[i - 1]!, rows[i]!];
    const complain = (why: string) => wrong.push(`frame ${i}: ${why}`);
    const shutter = shoot.bulb ? 0 : b.steps.shutter - a.steps.shutter;
    const iso = b.steps.iso - a.steps.iso;
    const aperture = b.steps.aperture - a.steps.aperture;
    const filter = sameNames(a.labels.filter, b.labels.filter) ? 0 : 1;
    const dials = [shutter, iso, aperture].filter((steps) => steps !== 0);
    if (dials.length + filter === 0) continue;

    const lastFilter = filterFrames[filterFrames.length - 1];
    if (lastFilter !== undefined && i <= lastFilter + framesLost)
      complain('a cue before the filter has settled');
    const lastCue = cueFrames[cueFrames.length - 1];
    if (lastCue !== undefined && i - lastCue < shoot.spacing)
      complain(`only ${i - lastCue} frames after a cue`);
    cueFrames.push(i);

    if (shutter !== 0) objective += priceOf('shutterCue', 1);
    if (iso !== 0) objective += priceOf('isoCue', 1.5);
    if (aperture !== 0) objective += priceOf('apertureCue', 50);
    objective += priceOf('filterCue', 20) * filter;
    if (filter === 1) {
      filterFrames.push(i);
      objective += against(b.filterStops - a.filterStops);
      const netEv = b.settingEv100 - a.settingEv100;
      if (Math.abs(netEv) > m / stepsPerStop + (shoot.bulb ? DIGITS : SLACK))
        complain(`${netEv} stops net at a filter`);
      if (aperture !== 0) complain('aperture moves with a filter');
      if (i + framesLost > rows.length - 1) complain('a filter change that is never judged');
    } else {
      objective += against(shutter) + against(-iso) + against(aperture);
      if (dials.length > 1) complain('two controls at once');
      if (dials.some((steps) => Math.abs(steps) > m)) complain(`a step of ${dials.join(', ')}, ${m} allowed`);
    }
  }
  if (filterFrames.length > shoot.maxFilterChanges) wrong.push(`${filterFrames.length} filter changes`);

  rows.forEach((row, i) => {
    const affected = filterFrames.some((f) => i >= f && i < f + framesLost);
    if (row.affected !== affected) wrong.push(`frame ${i}: affected is ${row.affected}`);
    if (affected) {
      objective += priceOf('affectedFrame', 1);
      return;
    }
    if (Math.abs(row.errorEv) > shoot.toleranceEv + SLACK) wrong.push(`frame ${i}: error ${row.errorEv}`);
    const shortStops = Math.max(0, Math.log2(1 / (100 * row.timeS)));
    const isoStops = (row.steps.iso - shoot.iso[0]) / stepsPerStop;
    const priced =
      priceOf('error', shoot.rig ? 5 : 0.33) * row.errorEv ** 2 +
      priceOf('blur', 0.005) * Math.log2((2 * row.timeS) / intervalS) ** 2 +
      priceOf('shortShutter', 0.02) * shortStops +
      priceOf('iso', 0.07) * isoStops +
      (row.filterStops > 0 ? priceOf('isoBehindFilter', 0.5) * isoStops : 0);
    objective += (intervalS / 5) * priced;
  });
  return { objective, cueFrames };
}

/** Of a bracket each frame tells the marks of both ends, and the time of all exposures but the middle one. */
function checkBracket(frame: Found, i: number, timeS: number, shoot: ShootFacts, wrong: string[]): void {
  const { bracketEv, stepsPerStop: per, bulb } = shoot;
  const ends = { bracketShortest: bracketEv[0]!, bracketLongest: bracketEv.at(-1)! };
  if (bracketEv.length === 1) {
    for (const key of [...Object.keys(ends), 'bracketS'])
      if (frame.value[key] !== undefined) wrong.push(`frame ${i}: ${key} without a bracket`);
    return;
  }
  const othersS = bracketEv.reduce((sum, ev) => sum + timeS * 2 ** ev, -timeS) + shoot.pausesS;
  if (!near(number(frame, 'bracketS'), othersS)) wrong.push(`frame ${i}: bracketS is not ${othersS}`);
  for (const [key, ev] of Object.entries(ends)) {
    const label = text(frame, key);
    const endS = timeS * 2 ** ev;
    // Freely timed it is told to three digits.
    const [over, under] = label.split('/').map(Number) as [number, number?];
    const saidS = bulb
      ? over / (under ?? 1)
      : exactOfStep('shutter', stepOfLabel('shutter', label, per), per);
    if (Math.abs(saidS / endS - 1) > (bulb ? 0.005 : DIGITS))
      wrong.push(`frame ${i}: ${key} is "${label}", should be ${endS} s`);
  }
}

function checkCues(root: Found, rows: readonly Row[], frames: number[], shoot: ShootFacts, wrong: string[]) {
  const cues = objects(root, 'cues');
  const said = cues.map((cue) => number(cue, 'frame'));
  if (said.join() !== frames.join())
    wrong.push(`cues at frames ${said.join()}, settings change at ${frames.join()}`);
  for (const cue of cues) {
    const frame = number(cue, 'frame');
    const [a, b] = [rows[frame - 1], rows[frame]];
    if (a === undefined || b === undefined) continue;
    if (timeMs(cue, 'at') !== b.atMs) wrong.push(`cue at frame ${frame}: not at the frame's time`);
    number(cue, 'sunAltitudeDeg');
    const changes = objects(cue, 'changes').map(
      (change) => `${text(change, 'control')} ${text(change, 'from')} to ${text(change, 'to')}`,
    );
    const controls = (['shutter', 'iso', 'aperture', 'filter'] as const).filter((control) => {
      if (control === 'filter') return !sameNames(a.labels.filter, b.labels.filter);
      return a.labels[control] !== b.labels[control] && !(shoot.bulb && control === 'shutter');
    });
    const expected = controls.map((control) => `${control} ${a.labels[control]} to ${b.labels[control]}`);
    if (changes.sort().join('; ') !== expected.sort().join('; ')) {
      wrong.push(`cue at frame ${frame}: says ${changes.join('; ')}, frames say ${expected.join('; ')}`);
    }
    const notes = (cue.value.notes === undefined ? [] : objects(cue, 'notes')).map((note) => ({
      kind: text(note, 'kind'),
      stops: note.value.stops === undefined ? 0 : number(note, 'stops'),
    }));
    const due = cueNotes(a, b);
    if (
      notes.length !== due.length ||
      due.some(({ kind, stops }, i) => notes[i]!.kind !== kind || !near(notes[i]!.stops, stops))
    )
      wrong.push(`cue at frame ${frame}: notes ${JSON.stringify(notes)}, should be ${JSON.stringify(due)}`);
  }
}

/** What a cue must note: a jump in blur of a stop or more, and in what order two filters move. */
function cueNotes(a: Row, b: Row): { readonly kind: string; readonly stops: number }[] {
  if (sameNames(a.labels.filter, b.labels.filter)) return [];
  const stops = Math.log2(b.timeS) - Math.log2(a.timeS);
  const [before, after] = [a, b].map(({ labels }) =>
    labels.filter === 'none' ? [] : labels.filter.split(' + '),
  ) as [string[], string[]];
  const counts = `${Math.max(before.length, after.length)} to ${Math.min(before.length, after.length)}`;
  const shared = before.filter((name) => after.includes(name)).length;
  return [
    ...(Math.abs(stops) >= 1 - SLACK ? [{ kind: 'blur-jump', stops }] : []),
    ...(counts === '2 to 0' ? [{ kind: 'both-filters', stops: 0 }] : []),
    ...(counts === '2 to 1' && shared === 1 ? [{ kind: 'one-filter', stops: 0 }] : []),
  ];
}

/** Under bulb: the shutter is told whenever it is a third of a stop from what was told last, by a cue or by such a row. */
function checkShutterTimes(
  root: Found,
  rows: readonly Row[],
  cues: number[],
  shoot: ShootFacts,
  wrong: string[],
) {
  if (!shoot.bulb) {
    if (root.value.shutterTimes !== undefined) wrong.push('shutter times on a dial');
    return;
  }
  const told = objects(root, 'shutterTimes').map((row) => {
    const [change] = objects(row, 'changes');
    if (change === undefined || text(change, 'control') !== 'shutter')
      wrong.push('a shutter time of another control');
    return {
      frame: number(row, 'frame'),
      atMs: timeMs(row, 'at'),
      says: change === undefined ? '' : `${text(change, 'from')} to ${text(change, 'to')}`,
    };
  });
  let last = 0;
  const expected: string[] = [];
  rows.forEach((row, i) => {
    const stops = Math.abs(Math.log2(row.timeS / rows[last]!.timeS));
    if (!cues.includes(i) && stops < 1 / 3 - DIGITS) return;
    if (!cues.includes(i)) {
      expected.push(`${i} ${row.atMs} ${rows[last]!.labels.shutter} to ${row.labels.shutter}`);
    }
    last = i;
  });
  const said = told.map(({ frame, atMs, says }) => `${frame} ${atMs} ${says}`);
  if (said.join('; ') !== expected.join('; ')) {
    wrong.push(`shutter times say ${said.join('; ')}, frames say ${expected.join('; ')}`);
  }
}

function checkSummary(
  summary: Found,
  rows: readonly Row[],
  { objective, cueCount }: { readonly objective: number; readonly cueCount: number },
  shoot: ShootFacts,
  wrong: string[],
): void {
  const [first, last] = [rows[0]!, rows[rows.length - 1]!];
  const targets = rows.map(({ targetEv100 }) => targetEv100);
  const errors = rows.filter(({ affected }) => !affected).map(({ errorEv }) => Math.abs(errorEv));
  const numbers = {
    frameCount: rows.length,
    clipS: rows.length / shoot.clipFps,
    sceneFromEv100: first.sceneEv100,
    sceneToEv100: last.sceneEv100,
    rampStops: Math.max(...targets) - Math.min(...targets),
    worstErrorEv: Math.max(...errors),
    rmsErrorEv: Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length),
    cueCount,
    objective,
  };
  for (const [key, is] of Object.entries(numbers)) {
    const said = number(summary, key);
    if (!near(said, is)) wrong.push(`summary: ${key} is ${said}, should be ${is}`);
  }
  if (timeMs(summary, 'startAt') !== first.atMs) wrong.push('summary: startAt is not the first frame');
  if (timeMs(summary, 'endAt') !== last.atMs) wrong.push('summary: endAt is not the last frame');

  const { frameMB, cardGB, batteryFrames } = shoot;
  const neededGB = frameMB === undefined ? undefined : (frameMB * rows.length) / 1000;
  if (neededGB !== undefined && !near(number(summary, 'cardNeededGB'), neededGB)) {
    wrong.push(`summary: cardNeededGB is ${number(summary, 'cardNeededGB')}, should be ${neededGB}`);
  }
  if (neededGB !== undefined && cardGB !== undefined && flag(summary, 'cardFits') !== neededGB <= cardGB) {
    wrong.push('summary: cardFits is wrong');
  }
  if (batteryFrames !== undefined && flag(summary, 'batteryFits') !== rows.length <= batteryFrames) {
    wrong.push('summary: batteryFits is wrong');
  }
}

function sameNames(a: string, b: string): boolean {
  return a.split(' + ').sort().join() === b.split(' + ').sort().join();
}

function near(said: number, is: number): boolean {
  return Math.abs(said - is) <= DIGITS * Math.max(1, Math.abs(is));
}
