// The shoots of this device: another one, the same once more, and those put aside.

import { html, nothing } from 'lit-html';
import { nameOf } from '../design/headline.js';
import { dayText } from '../parts/day-text.js';
import { say } from '../parts/message.js';
import { isGroup } from '../state/path.js';
import { duplicate, newShoot, others, takeOff, takeUp } from '../state/shelf.js';
import { words } from '../words/words.js';

/** What is on the shelf may be anything: name and date as far as they are there. */
function told(draft: unknown): { readonly name: string; readonly date: string } {
  const { title, place, date } = isGroup(draft) ? draft : {};
  const { latitudeDeg, longitudeDeg } = isGroup(place) ? place : {};
  const name = nameOf({
    title: typeof title === 'string' ? title : '',
    place: { latitudeDeg: Number(latitudeDeg), longitudeDeg: Number(longitudeDeg) },
  });
  return { name, date: dayText(String(date), { dateStyle: 'medium' }) };
}

export function shootsView() {
  const w = words().shoots;
  const list = others();
  return html`<div class="fields">
    <p class="help">${w.help}</p>
    <div class="buttons">
      <button type="button" @click=${newShoot}>${w.another}</button>
      <button type="button" @click=${() => duplicate(w.copyOf)}>${w.duplicate}</button>
    </div>
    ${
      list.length === 0
        ? nothing
        : html`<ul class="shelf">
            ${list.map((entry) => {
              const { name, date } = told(entry.draft);
              return html`<li>
                <button type="button" @click=${() => takeUp(entry)}>${name} <small>${date}</small></button>
                <button
                  type="button"
                  class="small plain"
                  aria-label=${words().kit.remove(name)}
                  @click=${() => say(w.removed(name), { undo: { name: words().undo, act: takeOff(entry.id) } })}
                >
                  ${words().kit.removeShort}
                </button>
              </li>`;
            })}
          </ul>`
    }
  </div>`;
}
