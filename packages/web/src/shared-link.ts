// A shoot that comes or goes in the page's address.

import { fragmentOf, valueInFragment } from './link.js';
import { say } from './parts/message.js';
import { loadReader, reader } from './state/reader.js';
import { putAside } from './state/shelf.js';
import { inWords, openShoot, shoot } from './state/shoot.js';
import { zoneFollows } from './state/zone-follows.js';
import { words } from './words/words.js';

/** Takes the shoot out of the page's address, if one is there, and says so. */
export async function openFragment(): Promise<void> {
  const found = valueInFragment(location.hash);
  if (found === undefined) return;
  // Left there, it would come back over later work on every reload.
  history.replaceState(null, '', location.pathname + location.search);
  await loadReader();
  const read = reader.peek()?.(found.value);
  if (read?.kind !== 'ok') {
    const faults = read === undefined ? [] : read.errors.slice(0, 3).map(inWords);
    say(words().files.linkWrong, faults.length === 0 ? {} : { lines: faults.map(({ message }) => message) });
  } else {
    putAside();
    openShoot(read.shoot);
    const told = () => say(words().files.openedLink, { undo: true });
    if (read.shoot.place.timeZone === undefined) void zoneFollows().then(told);
    else told();
  }
}

export async function copyLink(): Promise<void> {
  const url = new URL(location.href);
  url.hash = fragmentOf(shoot.peek());
  try {
    await navigator.clipboard.writeText(url.href);
    say(words().files.linkCopied);
  } catch {
    history.replaceState(null, '', url.href);
    say(words().files.linkReady);
  }
}
