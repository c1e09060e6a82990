// The whole of planning: for the worker where a shoot needs it, for the page where there are no workers.

export { planShoot } from '@evenfall/core';
