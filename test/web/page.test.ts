// The built page in a real browser: one build, one server, one browser for all of it.

import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { anywhere } from './anywhere.js';
import { bracketing } from './bracketing.js';
import { type Site, startSite } from './build.js';
import { choosing } from './choosing.js';
import { days } from './days.js';
import { designing } from './designing.js';
import { givenUp } from './given-up.js';
import { inField } from './in-field.js';
import { livedEvening } from './lived-evening.js';
import { moving } from './moving.js';
import { onAMap } from './on-a-map.js';
import { onThePicture } from './on-the-picture.js';
import { ownEvening } from './own-evening.js';
import { renewed } from './renewed.js';
import { reviewing } from './reviewing.js';

let site: Site | undefined;
const running = (): Site => {
  if (site === undefined) throw new Error('the page is not being served');
  return site;
};

beforeAll(async () => {
  site = await startSite();
});
afterAll(() => site?.close());

designing(running);
ownEvening(running);
choosing(running);
days(running);
moving(running);
inField(running);
livedEvening(running);
anywhere(running);
bracketing(running);
onThePicture(running);
onAMap(running);
renewed(running);
reviewing(running);
givenUp(running);

describe('all of it', () => {
  it('asked no other host for anything, and no browser complained', () => {
    expect(running().strangers).toEqual([]);
    expect(running().complaints).toEqual([]);
  });
});
