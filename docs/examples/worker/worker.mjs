// Plans away from the page, so that typing and scrolling never wait. The text of a shoot file in, an answer out.

import { planShoot, readShoot } from '@evenfall/core';

self.onmessage = ({ data: { id, file } }) => {
  const read = readShoot(file);
  const answer =
    read.kind === 'wrong'
      ? { errors: read.errors.map(({ message }) => message) }
      : { plan: planShoot(read.shoot) };
  self.postMessage({ id, ...answer });
};
