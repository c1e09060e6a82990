// The card as one page of HTML that needs nothing else and prints at its right size.

import type { PlanMade } from '@evenfall/core';
import { PAGE } from './card-page.js';
import { cardPages } from './card-pages.js';
import { escapeXml } from './svg.js';
import { english, type Words } from './words.js';

const STYLE = `
@page { size: ${PAGE.widthMm}mm ${PAGE.heightMm}mm; margin: 0 }
html { background: #fff }
body { margin: 0 }
main { display: flex; flex-wrap: wrap; gap: 4mm; padding: 4mm; justify-content: center }
section { width: ${PAGE.widthMm}mm; height: ${PAGE.heightMm}mm; outline: 0.3mm solid #000 }
svg { display: block }
@media print {
  main { display: block; padding: 0 }
  section { outline: none; break-after: page; break-inside: avoid; overflow: hidden }
  section:last-child { break-after: auto }
}
`;

/** The pages of `cardPages` in one file: no scripts, no fonts or pictures from elsewhere. */
export function cardHtml(plan: PlanMade, { words = english }: { readonly words?: Words } = {}): string {
  const title = plan.shoot.title === '' ? words.untitled : plan.shoot.title;
  const pages = cardPages(plan, { words });
  const sections = pages.map(
    (svg, i) => `<section aria-label="${escapeXml(words.card.page(i + 1, pages.length))}">${svg}</section>`,
  );
  return `<!doctype html>
<html lang="${words.language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeXml(title)} · ${escapeXml(words.date(plan.shoot.date))}</title>
<style>${STYLE}</style>
</head>
<body>
<main>
${sections.join('\n')}
</main>
</body>
</html>
`;
}
