// The browser's Print gives the cue card. What draws it is loaded ahead, in idle time; the card itself is drawn when
// a print begins, which takes less than a blink: drawn after every change it would get in the way of typing.

import type { Plan, PlanMade } from '@evenfall/core';
import { computed } from '@preact/signals-core';
import { partMissing } from './state/part.js';
import { placeName } from './state/place-name.js';
import { answered, gaveUp, impossible, made, plan } from './state/plan.js';
import { reading } from './state/shoot.js';
import { words } from './words/words.js';

/** Whether the shoot as it stands has a card, or will have once it is planned. */
export const printable = computed(
  () =>
    made.value !== undefined &&
    impossible.value === undefined &&
    gaveUp.value === undefined &&
    reading.value.kind === 'ok',
);

let draw: ((plan: PlanMade) => string[]) | undefined;
let drawn: { readonly plan: Plan; readonly language: string } | undefined;
let loading: Promise<void> | undefined;

/** What draws the card. */
export function loadCard(): Promise<void> {
  loading ??= import('@evenfall/chart')
    .then(({ cardPages, languages, wordsFor }) => {
      const language = () => languages.find((code) => code === words().language) ?? 'en';
      draw = (made) => cardPages(made, { words: wordsFor({ language: language() }) });
    })
    .catch(() => {
      loading = undefined; // asked for again when it is needed
    });
  return loading;
}

/** Without a title of its own the card bears the name of the place. */
function titled(made: PlanMade): PlanMade {
  const { title, place } = made.shoot;
  const name = title === '' ? placeName(place.latitudeDeg, place.longitudeDeg) : undefined;
  return name === undefined ? made : { ...made, shoot: { ...made.shoot, title: name } };
}

/** The card of the plan as it stands; where there is none, why: an old card must not pass for the new one. */
function drawNow(): void {
  const now = plan.peek();
  const holder = document.getElementById('card');
  if (holder === null) return;
  if (now === undefined || draw === undefined) {
    // In the first second: a sheet that says so is better than an empty one.
    holder.textContent = words().summary.planning;
    return;
  }
  const { language } = words();
  if (drawn?.plan === now && drawn.language === language) return;
  drawn = { plan: now, language };
  if (now.kind === 'ok') {
    // SVG made here from checked text, escaped where it is drawn.
    holder.innerHTML = draw(titled(now))
      .map((page) => `<section>${page}</section>`)
      .join('');
  } else {
    const why = document.createElement('p');
    why.textContent = words().library.why(now.infeasible);
    holder.replaceChildren(why);
  }
}

export function printByBrowser(): void {
  addEventListener('beforeprint', drawNow);
}

export async function printCard(): Promise<void> {
  // The card is that of the shoot as it stands: what was just changed is planned first.
  await Promise.all([loadCard(), answered()]);
  if (draw === undefined) partMissing.value = true;
  else window.print();
}
