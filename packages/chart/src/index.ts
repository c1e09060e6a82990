export { lightChart } from './light-chart.js';
export { type ChartOptions, planChart } from './plan-chart.js';
export { english, type Words } from './words.js';
