/** Puts on the style of a part that is loaded later: the first page needs none of it. */
export function adoptStyles(css: string): void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(css);
  document.adoptedStyleSheets.push(sheet);
}
