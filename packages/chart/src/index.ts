/**
 * Charts and cue cards of a plan, as SVG, HTML and plain text.
 *
 * @module @evenfall/chart
 */

export { cardHtml } from './card/html.js';
export { type CardOptions, cardPages } from './card/pages.js';
export { PAPERS, type Paper, sheetMm } from './card/paper.js';
export { cardText } from './card/text.js';
export { lightChart } from './plot/light.js';
export { type ChartOptions, planChart } from './plot/plan.js';
export { reviewChart } from './plot/review.js';
export type { TwilightName } from './plot/twilight.js';
export { INKS, type Ink, type Variant } from './svg/ink.js';
export { calendarTexts } from './text/calendar.js';
export { type Language, languages } from './text/languages.js';
export type { LibrarySentences } from './text/library.js';
export { travelText } from './text/move.js';
export { placeTexts } from './text/place.js';
export { reviewNoteText } from './text/review.js';
export { cueDoneText, type ReviewFact, reviewFacts } from './text/review-facts.js';
export {
  cueNoteText,
  faultText,
  findingText,
  missingText,
  noteText,
  reasonText,
  refusalText,
  remedyText,
  reserveText,
  warningText,
} from './text/sentences.js';
export { type Exposed, exposureText, labelText, settingText, shutterEnds } from './text/setting.js';
export { english, type Words, wordsFor } from './text/words.js';
export type { English } from './text/words-en.js';
