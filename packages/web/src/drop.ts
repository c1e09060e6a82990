// Files dropped anywhere on the page: one shoot or plan is opened, frames are reviewed. Without this the browser would
// leave the page to show them.

import { inField } from './field/run.js';
import { given, opened } from './review/open.js';
import { part } from './state/part.js';

const hasFiles = ({ dataTransfer }: DragEvent) => dataTransfer?.types.includes('Files') === true;

export function takeDrops(): void {
  addEventListener('dragover', (event) => {
    if (hasFiles(event)) event.preventDefault();
  });
  addEventListener('drop', (event) => {
    const { dataTransfer } = event;
    if (dataTransfer === null || !hasFiles(event)) return;
    event.preventDefault();
    if (inField.peek()) return;
    const [first, ...more] = dataTransfer.files;
    if (first !== undefined && more.length === 0 && /\.(?:ya?ml|json)$/i.test(first.name)) {
      void part(import('./file-work.js')).then((work) => work?.open(first));
      return;
    }
    // Only now does the browser tell folders from files.
    given.value = [...dataTransfer.items].flatMap(
      (item) => item.webkitGetAsEntry() ?? item.getAsFile() ?? [],
    );
    opened.value = true;
    document.querySelector('details.review')?.scrollIntoView();
  });
}
