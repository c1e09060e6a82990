// The card as one page of HTML that needs nothing else: a list to tick on a phone, and pages that print at their right size.

import type { PlanMade } from '@evenfall/core';
import { INKS } from '../svg/ink.js';
import { escapeXml } from '../svg/svg.js';
import { english } from '../text/words.js';
import { LIVE_SCRIPT, LIVE_STYLE, liveList } from './live.js';
import { type CardOptions, cardPages } from './pages.js';
import { sheetMm } from './paper.js';

/**
 * One page of HTML that needs nothing else, no fonts, pictures or scripts from elsewhere: on a screen the cues as a list whose
 * ticks stay, the next one in sight, which reads without its small script too; then the sheets of {@link cardPages}, which
 * alone are printed, at their right size.
 *
 * @param plan from `planShoot` or `readPlan`
 * @param options language, paper and ink
 * @returns a whole document
 * @throws RangeError on a plan whose times are none
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { cardHtml, cardPages } from '@evenfall/chart';
 *
 * const html = cardHtml(plan, { paper: 'a5' });
 * html.slice(0, 15); // → '<!doctype html>'
 * html.match(/<section/g)?.length; // → cardPages(plan, { paper: 'a5' }).length
 * ```
 */
export function cardHtml(plan: PlanMade, options: CardOptions = {}): string {
  const sheets = cardPages(plan, options);
  const { words = english } = options;
  const title = plan.shoot.title === '' ? words.untitled : plan.shoot.title;
  const sections = sheets.map(
    (svg, i) => `<section aria-label="${escapeXml(words.card.page(i + 1, sheets.length))}">${svg}</section>`,
  );
  return `<!doctype html>
<html lang="${words.language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeXml(title)} · ${escapeXml(words.date(plan.shoot.date))}</title>
<style>${styleFor(options)}${LIVE_STYLE}</style>
</head>
<body>
${liveList(plan, words)}
<main>
${sections.join('\n')}
</main>
<script>${LIVE_SCRIPT}</script>
</body>
</html>
`;
}

function styleFor({ paper = 'a6', dark = false }: CardOptions): string {
  const { widthMm, heightMm } = sheetMm(paper);
  const ink = INKS[dark ? 'dark' : 'print'];
  // On a narrow screen a sheet shrinks to its width; on paper it never does.
  return `
@page { size: ${widthMm}mm ${heightMm}mm; margin: 0 }
html { background: ${ink.paper}; color: ${ink.text}; color-scheme: ${dark ? 'dark' : 'light'} }
body { margin: 0 }
main { display: flex; flex-wrap: wrap; gap: 4mm; padding: 4mm 0; justify-content: center }
section { width: min(${widthMm}mm, 100%); outline: 0.3mm solid ${ink.frame} }
svg { display: block; width: 100%; height: auto }
@media print {
  html { print-color-adjust: exact; -webkit-print-color-adjust: exact }
  main { display: block; padding: 0 }
  section { width: ${widthMm}mm; height: ${heightMm}mm; outline: none; break-after: page; break-inside: avoid; overflow: hidden }
  section:last-child { break-after: auto }
}
`;
}
