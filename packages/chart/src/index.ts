export { cardHtml } from './card-html.js';
export { cardPages } from './card-pages.js';
export { cardText } from './card-text.js';
export { lightChart } from './light-chart.js';
export { type ChartOptions, planChart } from './plan-chart.js';
export { english, type Words } from './words.js';
