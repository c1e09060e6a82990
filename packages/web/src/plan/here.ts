// Planning in the page itself: loaded only where there are no workers.

export { planShoot } from '@evenfall/core';
