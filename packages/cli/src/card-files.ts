// The cue card in each form it can take on disk.

import { cardHtml, cardPages, cardText, sheetMm } from '@evenfall/chart';
import type { PlanMade } from '@evenfall/core';
import type { Makers } from './output.js';
import { cardOptions, type PrintOptions, refuse, wordsOf } from './print-options.js';

/** Several sheets as SVG are numbered: card-1.svg, card-2.svg. */
export function cardMakers(asked: PrintOptions): Makers<PlanMade> {
  const options = cardOptions(asked);
  const { words, paper } = options;
  return {
    '.pdf': async (plan, path) => {
      // Loaded where a PDF is asked for: it is most of what the command loads.
      const { pdfOf } = await import('./pdf.js');
      const { shoot, summary } = plan;
      const form = {
        ...sheetMm(paper),
        title: shoot.title === '' ? words.cardTitle(words.date(shoot.date)) : shoot.title,
        language: words.language,
        madeAt: new Date(summary.startAt),
      };
      return [{ path, ...(await pdfOf(cardPages(plan, options), form)) }];
    },
    '.svg': (plan, path) => {
      const pages = cardPages(plan, options);
      if (pages.length === 1) return [{ path, content: pages[0]! }];
      return pages.map((content, i) => ({ path: path.replace(/(\.[^.]*)$/, `-${i + 1}$1`), content }));
    },
    '.html': (plan, path) => [{ path, content: cardHtml(plan, options) }],
    '.txt': (plan, path) => {
      refuse(asked, ['paper', 'dark'], path);
      return [{ path, content: cardText(plan, { words: wordsOf(asked) }) }];
    },
  };
}
