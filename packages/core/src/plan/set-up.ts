// When everything should stand ready, so that plan, card and calendar say the same.

import { parseRfc3339 } from '../sky/clock.js';

const LEAD_MS = 20 * 60_000;
const ROUND_MS = 5 * 60_000;

/**
 * The time by which to be set up: twenty minutes before the start, down to whole five minutes of the place's clock.
 * A start at 18:07:31+01:00 gives 17:45:00+01:00.
 *
 * @param startAt RFC 3339 with offset; the answer keeps the offset
 * @throws RangeError where startAt is no such time
 */
export function setUpAt(startAt: string): string {
  const ms = parseRfc3339(startAt);
  const [offset, sign, hours, minutes] = /(?:Z|([+-])(\d\d):(\d\d))$/i.exec(startAt) ?? [];
  if (ms === undefined || offset === undefined) {
    throw new RangeError(`startAt must be a time with its offset, got "${startAt}"`);
  }
  const offsetMin = sign === undefined ? 0 : Number(`${sign}1`) * (Number(hours) * 60 + Number(minutes));
  // Five minutes of local time are not five of UTC where the offset is none of whole five.
  const localMs = Math.floor((ms + offsetMin * 60_000 - LEAD_MS) / ROUND_MS) * ROUND_MS;
  return new Date(localMs).toISOString().slice(0, 19) + offset;
}
