// The style of this part comes with it: the first page needs none of it.

import css from './moves.css?inline';

export function wearStyle(): void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(css);
  document.adoptedStyleSheets.push(sheet);
}
