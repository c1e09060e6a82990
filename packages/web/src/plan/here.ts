// Planning in the page itself: loaded only where there are no workers.

export { planWith } from '../field/readings.js';
