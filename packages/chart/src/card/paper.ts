// Sizes of paper, and how the pages of a card lie on them.

const POINTS_PER_MM = 72 / 25.4;

/** Sheets by their names in ISO 216 and ANSI/ASME Y14.1. Source: ISO 216 and ANSI/ASME Y14.1. */
export type Paper = 'a6' | 'a5' | 'a4' | 'letter';

/**
 * All of them, the smallest first.
 *
 * @example
 * ```ts
 * import { PAPERS } from '@evenfall/chart';
 *
 * PAPERS; // → ['a6', 'a5', 'a4', 'letter']
 * ```
 */
export const PAPERS: readonly Paper[] = ['a6', 'a5', 'a4', 'letter'];

interface Form {
  readonly widthMm: number; // of the sheet, upright
  readonly heightMm: number;
  readonly across: number; // card pages side by side
  readonly scale: number; // of type and lines, against their sizes on A6
}

// Four cards of a quarter sheet are A6 on A4, and nearly so on Letter; A5 is one card in larger type.
const FORMS: Readonly<Record<Paper, Form>> = {
  a6: { widthMm: 105, heightMm: 148, across: 1, scale: 1 },
  a5: { widthMm: 148, heightMm: 210, across: 1, scale: Math.SQRT2 },
  a4: { widthMm: 210, heightMm: 297, across: 2, scale: 1 },
  letter: { widthMm: 215.9, heightMm: 279.4, across: 2, scale: 1 },
};

/**
 * A sheet, upright. Source: ISO 216 and ANSI/ASME Y14.1.
 *
 * @param paper its name
 * @returns millimetres
 * @throws RangeError on paper that is none
 * @example
 * ```ts
 * import { sheetMm } from '@evenfall/chart';
 *
 * sheetMm('a6'); // → { widthMm: 105, heightMm: 148 }
 * // 8.5 by 11 inches.
 * sheetMm('letter'); // → { widthMm: 8.5 * 25.4, heightMm: 11 * 25.4 }
 * ```
 */
export function sheetMm(paper: Paper): { readonly widthMm: number; readonly heightMm: number } {
  const { widthMm, heightMm } = formOf(paper);
  return { widthMm, heightMm };
}

function formOf(paper: Paper): Form {
  if (Object.hasOwn(FORMS, paper)) return FORMS[paper];
  throw new RangeError(`paper must be one of ${PAPERS.join(', ')}, got ${paper}`);
}

/** Length of millimetres in points of 1/72 inch. */
export function points(mm: number): number {
  return mm * POINTS_PER_MM;
}

/** One page of the card on a paper, lengths in the points it is laid out in. */
export interface PageForm {
  readonly paper: Paper;
  readonly width: number;
  readonly height: number;
  readonly left: number; // of what is printed
  readonly right: number;
  readonly inner: number; // from left to right
  readonly across: number; // pages side by side on a sheet, and one above the other
  readonly scale: number; // points on paper for one of these
}

/** White on every side of a page, points: most printers leave 4.2 mm, 12 points, white. */
export const EDGE = 14.5;

export function pageForm(paper: Paper): PageForm {
  const { widthMm, heightMm, across, scale } = formOf(paper);
  const width = points(widthMm) / across / scale;
  const height = points(heightMm) / across / scale;
  return {
    paper,
    width,
    height,
    left: EDGE,
    right: width - EDGE,
    inner: width - 2 * EDGE,
    across,
    scale,
  };
}
