// Plans, made in a thread of their own: the text of a shoot file in, a status and the text of an answer out.

import { parentPort } from 'node:worker_threads';
import { planShoot, readShoot, shootSpan, writePlan } from '@evenfall/core';

parentPort?.on('message', ({ text, frames }) => parentPort?.postMessage(answerTo(text, frames)));

function answerTo(text, frames) {
  let file;
  try {
    file = JSON.parse(text);
  } catch {
    return refusal(400, 'the body is not JSON');
  }
  const read = readShoot(file);
  if (read.kind === 'wrong') return refusal(422, ...read.errors.map(({ message }) => message));
  const span = shootSpan(read.shoot);
  if (span.kind === 'ok' && span.times.length > frames) {
    return refusal(422, `the shoot has ${span.times.length} frames; this service plans at most ${frames}`);
  }
  // A kit that cannot do it is an answer too: why, and what would cure it.
  return { status: 200, body: writePlan(planShoot(read.shoot)) };
}

function refusal(status, ...errors) {
  return { status, body: `${JSON.stringify({ errors })}\n` };
}
