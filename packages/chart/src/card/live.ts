// The cues as a list on a phone: ticked ones stay ticked, the next one stays in sight. It reads without its script.

import type { PlanMade } from '@evenfall/core';
import { escapeXml } from '../svg/svg.js';
import { bracketEnds } from '../text/bracket.js';
import { clockText, instantMs, wordsOver } from '../text/local-time.js';
import { settingText } from '../text/setting.js';
import type { Words } from '../text/words.js';
import { type CueFacts, type CueStep, rowFacts, stepText } from './cue-facts.js';
import { cardFacts } from './facts.js';
import type { Mark } from './marks.js';

/** A list of HTML, without its style and script. */
export function liveList(plan: PlanMade, inWords: Words): string {
  const words = wordsOver(plan, inWords);
  const { card } = words;
  const facts = cardFacts(plan, words);
  const at = (row: CueFacts | Mark) => ('cue' in row ? row.cue.at : row.at);
  const rows = [...rowFacts(plan, words), ...facts.marks].sort((a, b) => instantMs(at(a)) - instantMs(at(b)));
  const items = rows.map((row) => {
    const clock = `<time>${clockText(at(row), facts.withSeconds, words)}</time>`;
    if (!('cue' in row)) return item(row.toDo, `${clock} <b>${escapeXml(row.text)}</b>`);
    // Of one step the clicks stand beside the clock, where there is room on a narrow phone.
    const isOne = row.steps.length === 1;
    const beside = isOne ? clicks(row, row.steps[0]!, words) : '';
    const steps = row.steps.map((step, i) =>
      isOne
        ? `<span class="step">${stepHtml(step, words)}</span>`
        : `<span class="step">${i + 1} ${stepHtml(step, words)}${clicks(row, step, words)}</span>`,
    );
    const change = row.filterChange ? `<em>${escapeXml(card.filterChange)}</em>` : '';
    const { mayCost } = row;
    const cost = [
      ...(mayCost === undefined ? [] : [card.mayCost(mayCost.first, mayCost.last)]),
      ...row.notes,
    ].map((text) => `<small>${escapeXml(text)}</small>`);
    const meta = [
      card.wholeCueOf(row.number, row.cueCount),
      card.frame(String(row.frameNumber)),
      card.ev(words.number(row.after.sceneEv100, 1)),
    ];
    const ends = bracketEnds(row.after, words);
    const whole = [settingText(row.after, words), ends].filter((text) => text !== '').join(', ');
    const setting = `<small>= ${escapeXml(whole)}</small>`;
    if (row.byRig) return item(false, `${clock} ${setting}`);
    const after = `<small>${escapeXml(meta.join(' · '))}</small>`;
    return item(true, [clock + beside, change, ...steps, ...cost, setting, after].join(' '));
  });
  const first = `${card.firstSetting}: ${settingText(plan.frames[0]!, words)}`;
  const bracket =
    facts.bracket === undefined
      ? ''
      : `\n<p><strong>${escapeXml(facts.bracket.setTo)}.</strong> ${escapeXml(facts.bracket.how)}</p>`;
  return `<div class="live" data-key="${escapeXml(`evenfall ${plan.summary.startAt} ${plan.cues.length}`)}">
<h1>${escapeXml(facts.title)}</h1>
<p>${escapeXml(words.date(plan.shoot.date))} · ${escapeXml(facts.setUpBy)} · ${escapeXml(facts.startAndEnd)}</p>
<p class="first">${escapeXml(first)}</p>${bracket}
<ol>
${items.join('\n')}
</ol>
</div>`;
}

function item(toDo: boolean, inner: string): string {
  return toDo
    ? `<li><label><input type="checkbox"><span>${inner}</span></label></li>`
    : `<li><span>${inner}</span></li>`;
}

/** A control and its values, which stay on one line where that holds them. */
function stepHtml(step: CueStep, words: Words): string {
  if (step.kind !== 'dial') return `<b>${escapeXml(stepText(step, words))}</b>`;
  const values = `${step.from} → ${step.to}`.replaceAll(' ', '\u00a0');
  return `<b>${escapeXml(words.controls[step.control])} ${escapeXml(values)}</b>`;
}

function clicks({ clicks: by }: CueFacts, step: CueFacts['steps'][number], words: Words): string {
  if (step.kind !== 'dial' || by[step.control] === 0) return '';
  return ` <i>${escapeXml(words.card.clicks(by[step.control]))}</i>`;
}

/** On a screen alone: on paper there are pages. */
export const LIVE_STYLE = `
.live { font: 1rem/1.35 system-ui, sans-serif; max-width: 40rem; margin: 0 auto; padding: 0.5rem }
.live h1 { font-size: 1.1rem; margin: 0 }
.live p { margin: 0.2rem 0 }
.live .first { font-weight: bold; font-size: 1.2rem }
.live ol { list-style: none; margin: 0; padding: 0 }
.live li { border-top: 1px solid; padding: 0.5rem 0.4rem; scroll-margin: 20vh }
.live label { display: flex; gap: 0.5rem; min-height: 2.8rem }
.live input { flex: none; width: 2rem; height: 2rem; margin: 0; appearance: none; border: 3px solid; background: none; color: inherit }
.live input:checked { background: currentColor }
.live time, .live b { font-size: 1.5rem; font-weight: bold; margin-right: 0.4rem }
.live b { overflow-wrap: anywhere }
.live .step { display: block }
.live em { font-style: normal; font-weight: bold; border: 2px solid; padding: 0 0.3rem }
.live i { font-style: normal; font-weight: bold; white-space: nowrap }
.live small { display: block; font-size: 0.95rem }
.live li:has(:checked) { opacity: 0.65 }
.live li:has(:checked) b { text-decoration: line-through }
.live li.next { outline: 3px solid; outline-offset: -1px }
@media print { .live { display: none } }
`;

/** Storage may be refused, as for a file in some browsers: ticks then last as long as the page. */
export const LIVE_SCRIPT = `
(() => {
  const list = document.querySelector('.live');
  const boxes = [...list.querySelectorAll('input')];
  const key = list.dataset.key;
  let ticked = [];
  try { ticked = JSON.parse(localStorage.getItem(key)) || [] } catch {}
  boxes.forEach((box, i) => { box.checked = ticked.includes(i) });
  const show = () => {
    const next = boxes.find((box) => !box.checked)?.closest('li');
    for (const each of list.querySelectorAll('.next')) each.classList.remove('next');
    next?.classList.add('next');
    if (boxes.some((box) => box.checked)) next?.scrollIntoView({ block: 'center' });
  };
  list.addEventListener('change', () => {
    try { localStorage.setItem(key, JSON.stringify(boxes.flatMap((box, i) => (box.checked ? [i] : [])))) } catch {}
    show();
  });
  show();
})();
`;
