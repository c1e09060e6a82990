// From the length of the clip back to the interval, and what interval suits a subject: asked before anything starts.

import {
  type Footage,
  footageOf,
  INTERVALS_BY_SUBJECT,
  longestMarkedShutter,
  type PlanMade,
  type Shoot,
  type Subject,
  shootGap,
} from '@evenfall/core';
import { signal } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { numberOr, typed } from '../parts/typed.js';
import { made } from '../state/plan.js';
import { put, shoot } from '../state/shoot.js';
import { secondsText, timeText } from './tell.js';
import { moveWords } from './words.js';

/** Undefined while the field is empty, null until something is typed: it begins with the clip as planned. */
const wantedS = signal<unknown>(null);
const subject = signal<Subject | undefined>(undefined);

/** From the first frame to the last: by the clock as it is asked for, by the sun as the plan has it. */
function recordingOf({ shoot: { span, intervalS }, summary }: PlanMade): number {
  return 'startAt' in span
    ? (Date.parse(span.endAt) - Date.parse(span.startAt)) / 1000
    : (summary.frameCount - 1) * intervalS;
}

/** Undefined where the number asks for no clip that could be. */
function footageFor(clipS: unknown, plan: PlanMade): Footage | undefined {
  const recordingS = recordingOf(plan);
  const { clipFps } = plan.shoot;
  if (typeof clipS !== 'number' || clipS * clipFps < 2 || recordingS <= 0) return undefined;
  return footageOf({ recordingS, clipS }, clipFps, { wholeSeconds: true });
}

function shutterText(asked: Shoot, { intervalS, frameCount }: Footage): string {
  const { camera } = asked;
  const { gapS } = shootGap(asked, frameCount);
  const mark = longestMarkedShutter(intervalS, { ...camera, gapS });
  const w = moveWords().clip;
  return mark === undefined ? w.noShutter : w.shutter(mark.label);
}

export function clipFields() {
  const w = moveWords().clip;
  const plan = made.value;
  const wanted = wantedS.value === null ? plan && Math.max(1, Math.round(plan.summary.clipS)) : wantedS.value;
  const found = plan && footageFor(wanted, plan);
  const asked = shoot.value;
  const other = found !== undefined && found.intervalS !== asked.intervalS ? found.intervalS : undefined;
  return html`<div class="fields">
    <div class="control">
      <div class="name"><label for="clip-wanted">${w.wanted}</label> <span class="unit">s</span></div>
      <div class="entry">
        <input
          id="clip-wanted"
          type="text"
          inputmode="decimal"
          enterkeyhint="done"
          autocomplete="off"
          aria-describedby="clip-found"
          ${typed(wanted, numberOr)}
          @input=${(event: Event) => {
            wantedS.value = numberOr((event.target as HTMLInputElement).value);
          }}
          @keydown=${({ key }: KeyboardEvent) => {
            if (key === 'Enter' && other !== undefined) put(['intervalS'], other);
          }}
        />
      </div>
    </div>
    <p id="clip-found">
      ${
        found === undefined || plan === undefined
          ? w.none
          : `${w.found({
              record: timeText(recordingOf(plan)),
              interval: secondsText(found.intervalS),
              frames: found.frameCount,
              clip: secondsText(found.clipS),
            })} ${shutterText(asked, found)}`
      }
    </p>
    ${
      other === undefined
        ? nothing
        : html`<button type="button" class="wide" @click=${() => put(['intervalS'], other)}>
            ${w.use(secondsText(other))}
          </button>`
    }
    ${
      typeof wanted === 'number' && wanted > 0
        ? html`<p class="help">
            ${w.instead(
              secondsText(asked.intervalS),
              timeText(footageOf({ intervalS: asked.intervalS, clipS: wanted }, asked.clipFps).recordingS),
            )}
          </p>`
        : nothing
    }
    <div class="control">
      <div class="name"><label for="clip-subject">${w.subject}</label></div>
      <select
        id="clip-subject"
        aria-describedby="clip-advice"
        @change=${(event: Event) => {
          subject.value = SUBJECTS[(event.target as HTMLSelectElement).selectedIndex - 1];
        }}
      >
        <option .selected=${live(subject.value === undefined)}>${w.anySubject}</option>
        ${SUBJECTS.map(
          (one) => html`<option .selected=${live(one === subject.value)}>${w.subjects[one]}</option>`,
        )}
      </select>
    </div>
    <p class="help" id="clip-advice">${subject.value === undefined ? '' : adviceText(subject.value)}</p>
  </div>`;
}

const SUBJECTS: readonly Subject[] = [
  'sunset',
  'city-into-night',
  'stars',
  'fast-clouds',
  'clouds',
  'slow-clouds',
  'traffic',
  'people',
  'shadows',
  'plants',
  'construction',
];

function adviceText(asked: Subject): string {
  const { minS, maxS, rows } = INTERVALS_BY_SUBJECT[asked];
  const sources = new Set(rows.map(({ source }) => source)).size;
  return moveWords().clip.advice(
    minS === maxS ? secondsText(minS) : `${secondsText(minS)}–${secondsText(maxS)}`,
    sources,
  );
}
