// How wide a text will be, without a screen to try it on: advance widths of DejaVu Sans in thousandths
// of the type size. Chart and card place every label by these. Source: docs/sources.md#dejavu.

const REGULAR = widths({
  375: 'ľ',
  227: '′',
  275: "'",
  278: 'ijlı',
  284: 'ł',
  295: 'IJ',
  318: ' ,.‘’·',
  337: '/:;\\|',
  352: 'f',
  361: '-',
  374: '″',
  390: '()[]',
  392: 't',
  401: '!',
  411: 'r',
  460: '"',
  500: '*_`–°',
  518: '“”',
  521: 's',
  525: 'z',
  531: '?',
  550: 'c',
  557: 'L',
  562: 'Ł',
  575: 'F',
  579: 'k',
  592: 'vxy',
  603: 'P',
  611: 'TY',
  612: 'oø',
  613: 'a',
  615: 'e',
  630: 'ß',
  632: 'E',
  634: 'hnu',
  635: 'Sbdgpqđ',
  636: '$0123456789{}',
  656: 'K',
  684: 'AV',
  685: 'XZ',
  686: 'B',
  695: 'R',
  698: 'C',
  732: 'U',
  748: 'N',
  752: 'H',
  770: 'D',
  775: 'G',
  780: '&',
  787: 'OQØ',
  818: 'w',
  838: '#+<=>^~→←−≤≥×≈',
  863: 'M',
  950: '%',
  969: '½⅓⅔¼¾',
  974: 'mÆ',
  982: 'æ',
  989: 'W',
  1000: '@—…',
  1023: 'œ',
});
const BOLD = widths({
  479: 'ľ',
  264: '′',
  306: "'",
  343: 'ijlı',
  348: ' ',
  365: '/\\|',
  371: 'ł',
  372: 'IJ',
  380: ',.‘’·',
  400: ':;',
  415: '-',
  435: 'f',
  447: '″',
  456: '!',
  457: '()[]',
  478: 't',
  493: 'r',
  500: '_`–°',
  521: '"',
  523: '*',
  580: '?',
  582: 'z',
  593: 'c',
  595: 's',
  637: 'L',
  642: 'Ł',
  645: 'x',
  652: 'vy',
  657: '“”',
  665: 'k',
  675: 'a',
  678: 'e',
  682: 'T',
  683: 'EF',
  687: 'oø',
  696: '$0123456789',
  712: 'hnu{}',
  716: 'bdgpqđ',
  719: 'ß',
  720: 'S',
  724: 'Y',
  725: 'Z',
  733: 'P',
  734: 'C',
  762: 'B',
  770: 'R',
  771: 'X',
  774: 'AV',
  775: 'K',
  812: 'U',
  821: 'G',
  830: 'D',
  837: 'HN',
  838: '#+<=>^~→←−≤≥×≈',
  850: 'OQØ',
  872: '&',
  924: 'w',
  995: 'M',
  1000: '@—…',
  1002: '%',
  1035: '½⅓⅔¼¾',
  1042: 'm',
  1048: 'æ',
  1085: 'Æ',
  1094: 'œ',
  1103: 'W',
});

function widths(groups: Readonly<Record<number, string>>): ReadonlyMap<string, number> {
  return new Map(
    Object.entries(groups).flatMap(([width, chars]) => [...chars].map((c) => [c, Number(width)])),
  );
}

// Widest letters of scripts the table leaves out, so that a guess is never too narrow.
const LETTER_WIDTH = 1200;
const WIDE_LETTER_WIDTH = 1420;
const HEBREW_LETTER_WIDTH = 800;
const ROUND_CJK =
  /[\u1100-\u11ff\u2e80-\u9fff\uac00-\ud7af\uf900-\ufaff\uff00-\uff60]|[\u{1f000}-\u{3ffff}]/u;

/**
 * Width of one line of text in the units of `size`: exact for Latin letters, digits and the signs of
 * chart and card, kerning left out; a safe upper guess elsewhere. `textWidth('1/60', 10)` is 22.45.
 */
export function textWidth(text: string, size: number, bold = false): number {
  const table = bold ? BOLD : REGULAR;
  let sum = 0;
  for (const char of text.normalize('NFC')) {
    if (/\p{Mn}|\p{Cf}/u.test(char)) continue;
    // An accent leaves most letters as wide as they are; the table holds those it widens.
    sum += table.get(char) ?? table.get(char.normalize('NFD')[0]!) ?? guess(char);
  }
  return (sum * size) / 1000;
}

function guess(char: string): number {
  if (/\p{Script=Hebrew}/u.test(char)) return HEBREW_LETTER_WIDTH;
  return /\p{Script=Arabic}|\p{Script=Cyrillic}/u.test(char) || ROUND_CJK.test(char)
    ? WIDE_LETTER_WIDTH
    : LETTER_WIDTH;
}

/** The text, shortened with … where it is wider than `width`. */
export function fitText(text: string, width: number, size: number, bold = false): string {
  if (textWidth(text, size, bold) <= width) return text;
  const chars = [...text];
  while (chars.length > 0 && textWidth(`${chars.join('')}…`, size, bold) > width) chars.pop();
  return `${chars.join('').trimEnd()}…`;
}

/** The text broken at spaces into lines no wider than `width`; a word wider than that is shortened. */
export function wrapText(text: string, width: number, size: number, bold = false): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer, size, bold) > width) {
      lines.push(fitText(line, width, size, bold));
      line = word;
    } else line = longer;
  }
  return [...lines, fitText(line, width, size, bold)];
}
