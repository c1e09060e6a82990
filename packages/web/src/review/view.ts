// After the shoot: frames dropped or chosen, and what happened told in sentences, a chart and two tables.

import {
  cueDoneText,
  languages,
  reviewChart,
  reviewFacts,
  reviewNoteText,
  type Words,
  wordsFor,
} from '@evenfall/chart';
import { type PlanMade, type Review, type ReviewFrame, writeReview, writeReviewCsv } from '@evenfall/core';
import { computed } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { unsafeHTML } from 'lit-html/directives/unsafe-html.js';
import { adoptStyles } from '../parts/adopt-styles.js';
import { numberControl, selectControl, tickControl } from '../parts/controls.js';
import { download, plainName } from '../parts/download.js';
import { changeText } from '../parts/text.js';
import { made } from '../state/plan.js';
import { words } from '../words/words.js';
import { given } from './open.js';
import css from './review.css?inline';
import { reviewWords } from './words.js';
import { how, ownPlan, progress, reviewed, taken } from './work.js';

adoptStyles(css);

/** Rows that somebody may read; the table to save has all. */
const MOST_ROWS = 100;
const FAULTS = ['beyond', 'spoilt', 'doubled', 'unplanned', 'ranOver', 'clipped'] as const;

const chartWords = (): Words =>
  wordsFor({ language: languages.find((code) => code === words().language) ?? 'en' });

function choose(event: Event): void {
  const input = event.target as HTMLInputElement;
  if (input.files && input.files.length > 0) given.value = [...input.files];
  // The same files may be chosen again.
  input.value = '';
}

export function reviewView() {
  const w = reviewWords();
  const fileInput = (text: string, folder: boolean) => html`<label class="button"
    >${text}
    <input type="file" class="unseen" multiple ?webkitdirectory=${folder} @change=${choose}
  /></label>`;
  return html`<div class="review-in">
    <p class="help">${w.help}</p>
    <div class="buttons">
      ${fileInput(w.files, false)}
      ${'webkitdirectory' in HTMLInputElement.prototype ? fileInput(w.folder, true) : nothing}
    </div>
    ${progressView()}
    <div role="status">${stateView()}</div>
    ${taken.value === undefined ? nothing : optionsView()} ${reviewed.value ? resultView(reviewed.value) : nothing}
    ${passedOverView()}
  </div>`;
}

function progressView() {
  const now = progress.value;
  if (now === undefined) return nothing;
  return html`<label class="progress"
    >${reviewWords().reading(now.done, now.all)} <progress max=${now.all} .value=${now.done}></progress
  ></label>`;
}

function stateView() {
  const w = reviewWords();
  const own = ownPlan.value;
  if (own !== undefined && own.plan === undefined) return html`<p class="fault">${w.planWrong(own.name)}</p>`;
  if (taken.value === undefined) return nothing;
  if (taken.value.frames.length === 0) return html`<p class="fault">${w.noFrames}</p>`;
  if (own !== undefined) return html`<p>${w.against(own.name)}</p>`;
  return made.value === undefined ? html`<p class="fault">${w.noPlan}</p>` : nothing;
}

const MOST_EV = [1, 2, 3, 4, 6];

function optionsView() {
  const w = reviewWords();
  const now = how.value;
  const change = (some: Partial<typeof now>) => {
    how.value = { ...how.peek(), ...some };
  };
  const tick = (key: 'levels' | 'evenFlicker' | 'replaceSpoilt', label: string) =>
    tickControl({
      path: ['review', key],
      label,
      value: now[key] === true,
      choose: (value) => change({ [key]: value }),
    });
  return html`<fieldset class="fields how">
    <legend>${w.options}</legend>
    ${tick('levels', w.levels)} ${now.levels ? tick('evenFlicker', w.flicker) : nothing}
    ${tick('replaceSpoilt', w.replace)}
      ${selectControl<number>({
        path: ['review', 'mostEv'],
        label: w.most,
        value: now.mostEv,
        choices: MOST_EV.map((ev) => [ev, w.stops(words().plain(ev))] as const),
        choose: (mostEv) => change({ mostEv }),
      })}
      ${numberControl({
        path: ['review', 'clockFastS'],
        label: w.clockFast,
        unit: w.seconds,
        help: w.clockHelp,
        placeholder: w.found,
        signed: true,
        show: () => now.clockFastS,
        choose: (value) => {
          const { clockFastS: _, ...rest } = how.peek();
          how.value = typeof value === 'number' ? { ...rest, clockFastS: value } : rest;
        },
      })}
  </fieldset>`;
}

interface Result {
  readonly plan: PlanMade;
  readonly review: Review;
}

function resultView({ plan, review }: Result) {
  const w = reviewWords();
  const own = chartWords();
  const base = `${plainName(plan.shoot.title) || words().files.fileName}-${plan.shoot.date}-${w.fileName}`;
  const saves = [
    [w.csv, () => download(`${base}.csv`, 'text/csv', writeReviewCsv(review))],
    [w.json, () => download(`${base}.json`, 'application/json', writeReview(review))],
    [w.svg, () => download(`${base}.svg`, 'image/svg+xml', reviewChart(plan, review, { words: own }))],
  ] as const;
  return html`<section>
      <h3>${w.facts}</h3>
      <dl class="facts">
        ${reviewFacts(review, own).map(({ name, text }) => html`<div><dt>${name}</dt><dd>${text}</dd></div>`)}
      </dl>
      <div class="notes">
        <ul>
          ${review.notes.map(
            (note) =>
              html`<li class=${note.level}>
                <strong>${words().levels[note.level]}.</strong> ${reviewNoteText(note, own)}
              </li>`,
          )}
        </ul>
      </div>
    </section>
    <section>
      <h3>${w.chart}</h3>
      <div class="review-chart" tabindex="0" role="region" aria-label=${w.chart}>${unsafeHTML(chart.value)}</div>
    </section>
    ${cuesView(plan, review, own)} ${wrongView(review)}
    <div class="buttons" role="group" aria-label=${w.save}>
      <span class="lead">${w.save}</span>
      ${saves.map(([name, save]) => html`<button type="button" class="small" @click=${save}>${name}</button>`)}
    </div>`;
}

/** SVG made here from checked text, escaped where it is drawn. */
const chart = computed(() =>
  reviewed.value === undefined
    ? ''
    : reviewChart(reviewed.value.plan, reviewed.value.review, { variant: 'screen', words: chartWords() }),
);

function tableOf(
  title: string,
  columns: readonly string[],
  rows: readonly (readonly string[])[],
  all: number,
) {
  const w = reviewWords();
  return html`<section>
    <h3>${title}</h3>
    ${
      rows.length === 0
        ? html`<p>${w.none}</p>`
        : html`<div class="scroll" tabindex="0" role="region" aria-label=${title}>
            <table>
              <thead>
                <tr>
                  ${columns.map((name) => html`<th scope="col">${name}</th>`)}
                </tr>
              </thead>
              <tbody>
                ${rows.map(
                  ([first, ...rest]) =>
                    html`<tr>
                      <th scope="row">${first}</th>
                      ${rest.map((cell) => html`<td>${cell}</td>`)}
                    </tr>`,
                )}
              </tbody>
            </table>
          </div>`
    }
    ${all > rows.length ? html`<p class="help">${w.more(all - rows.length)}</p>` : nothing}
  </section>`;
}

function cuesView(plan: PlanMade, { cues }: Review, own: Words) {
  const w = reviewWords();
  const off = cues.filter(({ lateS, seen }) => seen && lateS !== 0);
  const rows = off
    .slice(0, MOST_ROWS)
    .map(({ cue, at, frame, lateS }) => [
      String(cue),
      own.clock(at, true),
      String(frame + 1),
      (plan.cues[cue - 1]?.changes ?? []).map(changeText).join(', '),
      cueDoneText(lateS, own),
    ]);
  return tableOf(w.cuesOff, w.cueColumns, rows, off.length);
}

const hasFault = (frame: ReviewFrame, fault: (typeof FAULTS)[number]) =>
  fault === 'beyond' ? frame.beyondEv !== undefined : frame[fault] === true;

function wrongView({ frames }: Review) {
  const w = reviewWords();
  const own = chartWords();
  const wrong = frames.filter((frame) => FAULTS.some((fault) => hasFault(frame, fault)));
  const rows = wrong.slice(0, MOST_ROWS).map((frame) => [
    frame.file,
    frame.frame === null ? '–' : String(frame.frame + 1),
    own.clock(frame.at, true),
    words().signed(frame.offsetEv, 2),
    FAULTS.filter((fault) => hasFault(frame, fault))
      .map((fault) => w.faults[fault])
      .join(', '),
  ]);
  return tableOf(w.wrong, w.wrongColumns, rows, wrong.length);
}

function passedOverView() {
  const w = reviewWords();
  const list = taken.value?.passedOver ?? [];
  if (list.length === 0) return nothing;
  return html`<details class="passed-over">
    <summary>${w.passedOver(list.length)}</summary>
    <ul>
      ${list.slice(0, MOST_ROWS).map(({ name, why }) => html`<li>${name}: ${w.because[why]}</li>`)}
    </ul>
  </details>`;
}
