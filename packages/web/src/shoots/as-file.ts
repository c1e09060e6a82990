// The shoot as its file, to be read and changed whole: everything that a file can say, also what has no control.

import { type FileError, readShoot, writeShoot } from '@evenfall/core';
import { computed, signal } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { say } from '../parts/message.js';
import { inWords, replaceShoot, shoot } from '../state/shoot.js';
import { words } from '../words/words.js';
import { parse, yamlOf } from '../yaml.js';

/** What has been typed and not yet taken, and what is wrong with it. */
const typed = signal<string | undefined>(undefined);
const wrong = signal<readonly FileError[]>([]);

/** Not anew whenever the page is drawn. */
const asText = computed(() => yamlOf(writeShoot(shoot.value)));

function take(): void {
  const text = typed.peek();
  if (text === undefined) return;
  const { value, where } = parse(text) ?? { value: undefined };
  const read = readShoot(value, where);
  wrong.value = read.kind === 'wrong' ? read.errors.slice(0, 8) : [];
  if (read.kind === 'wrong') return;
  replaceShoot(read.shoot);
  typed.value = undefined;
  say(words().shoots.taken, { undo: true });
}

export function asFileView() {
  const w = words().shoots;
  const text = typed.value ?? asText.value;
  return html`<div class="fields">
    <p class="help" id="as-file-help">${w.asFileHelp}</p>
    <textarea
      rows="16"
      spellcheck="false"
      autocapitalize="off"
      aria-label=${w.asFile}
      aria-describedby="as-file-help"
      aria-invalid=${wrong.value.length > 0 ? 'true' : nothing}
      .value=${live(text)}
      @input=${(event: Event) => {
        typed.value = (event.target as HTMLTextAreaElement).value;
      }}
    ></textarea>
    ${
      wrong.value.length === 0
        ? nothing
        : html`<ul role="alert">
            ${wrong.value
              .map(inWords)
              .map(
                ({ line, message }) =>
                  html`<li class="fault">${line === undefined ? '' : `${w.line(line)}: `}${message}</li>`,
              )}
          </ul>`
    }
    <div class="buttons">
      <button type="button" ?disabled=${typed.value === undefined} @click=${take}>${w.take}</button>
      <button
        type="button"
        class="plain"
        ?disabled=${typed.value === undefined}
        @click=${() => {
          typed.value = undefined;
          wrong.value = [];
        }}
      >
        ${w.drop}
      </button>
    </div>
  </div>`;
}
