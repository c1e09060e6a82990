// Readings as numbers to type; the same that stand as marks on the chart.

import { rfc3339, wallToMs, zoneOf } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { run } from '../field/run.js';
import { offsetOfTwo } from '../parts/clock.js';
import { say } from '../parts/message.js';
import { numberOr, typed } from '../parts/typed.js';
import { cursorFrame } from '../state/cursor.js';
import { addReadingAtCursor, readingsList, removeReading, setReading } from '../state/readings.js';
import { faultsAt, put, shoot, shown } from '../state/shoot.js';
import { words } from '../words/words.js';

/** The clock time on the reading's own day. */
function moveTo(index: number, at: string, time: string): void {
  if (time === '') return;
  const zone = zoneOf(shoot.peek().place);
  const [atMs] = wallToMs(at.slice(0, 10), time, zone);
  if (atMs === undefined) say(words().place.clockWrong);
  else setReading(index, { at: rfc3339(atMs, zone) });
}

export function readingsSection() {
  const w = words().readings;
  const list = readingsList.value;
  return html`<section class="readings">
    <h2>${w.title}</h2>
    <p class="help">${run.value?.mode === 'live' ? w.underWay : w.help}</p>
    ${
      list.length === 0
        ? nothing
        : html`<ul>
            ${list.map(
              ({ index, at }) => html`<li>
                <input
                  type="time"
                  step="1"
                  aria-label=${w.at(index + 1)}
                  .value=${live(at.slice(11, 19))}
                  @change=${(event: Event) => moveTo(index, at, (event.target as HTMLInputElement).value)}
                />
                ${offsetOfTwo(at)}
                <span class="entry"
                  ><span class="unit">EV</span
                  ><input
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    aria-label=${w.ev(index + 1)}
                    aria-invalid=${faultsAt(['readings', index]).length > 0 ? 'true' : nothing}
                    ${typed(shown(['readings', index, 'ev100']), numberOr)}
                    @input=${(event: Event) =>
                      put(
                        ['readings', index, 'ev100'],
                        numberOr((event.target as HTMLInputElement).value) ?? '',
                      )}
                /></span>
                <button
                  type="button"
                  class="small plain"
                  aria-label=${w.remove(index + 1)}
                  @click=${() => removeReading(index)}
                >
                  ${words().kit.removeShort}
                </button>
                ${faultsAt(['readings', index]).map(({ text }) => html`<p class="fault">${text}</p>`)}
              </li>`,
            )}
          </ul>`
    }
    <button type="button" ?disabled=${cursorFrame.value === undefined} @click=${addReadingAtCursor}>${w.add}</button>
  </section>`;
}
