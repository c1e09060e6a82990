// The cue card in each form it can take on disk.

import { cardHtml, cardPages, cardText } from '@evenfall/chart';
import type { PlanMade } from '@evenfall/core';
import type { Makers } from './output.js';
import { pdfOf } from './pdf.js';

/** Several pages as SVG are numbered: card-1.svg, card-2.svg. */
export const CARD_MAKERS: Makers<PlanMade> = {
  '.pdf': async (plan, path) => {
    const { shoot, summary } = plan;
    const title = shoot.title === '' ? `Cue card ${shoot.date}` : shoot.title;
    return [{ path, content: await pdfOf(cardPages(plan), title, new Date(summary.startAt)) }];
  },
  '.svg': (plan, path) => {
    const pages = cardPages(plan);
    if (pages.length === 1) return [{ path, content: pages[0]! }];
    return pages.map((content, i) => ({ path: path.replace(/(\.[^.]*)$/, `-${i + 1}$1`), content }));
  },
  '.html': (plan, path) => [{ path, content: cardHtml(plan) }],
  '.txt': (plan, path) => [{ path, content: cardText(plan) }],
};
