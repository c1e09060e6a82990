/**
 * Charts and cue cards of a plan, as SVG, HTML and plain text.
 *
 * @module @evenfall/chart
 */

export { calendarTexts } from './calendar-texts.js';
export { cardHtml } from './card-html.js';
export { type CardOptions, cardPages } from './card-pages.js';
export { cardText } from './card-text.js';
export { INKS, type Ink, type Variant } from './ink.js';
export { lightChart } from './light-chart.js';
export { PAPERS, type Paper, sheetMm } from './paper.js';
export { placeTexts } from './place-text.js';
export { type ChartOptions, planChart } from './plan-chart.js';
export { exposureText, labelText, settingText } from './setting-text.js';
export { english, type Language, languages, type Words, wordsFor } from './words.js';
