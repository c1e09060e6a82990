// From opening to the card of an own place and kit, as somebody goes who has never seen the page: only what is in
// view is pressed, whatever is not is looked for by swipes; counted, and timed by a keystroke-level model.

import type { ElementHandle, Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { planned, planOn, SIZES, type Site, textOf } from './build.js';

/**
 * Seconds. Card, Moran & Newell, The Psychology of Human-Computer Interaction (1983): a key 0.28, to point 1.1, to
 * press 0.2, a mental act 1.35 before each of what follows. Those of a phone, a swipe and 240 words a minute are our
 * assumptions. Read is, once, every word of the headline and of the controls from the top of what is in view to what is
 * pressed, and all of them where that is not in view. Waiting is not counted: it was a second or two.
 */
const MODEL = {
  phone: { press: 1.3, character: 0.4, swipe: 1 },
  desk: { press: 1.1 + 0.2, character: 0.28, swipe: 1 },
} as const;
const MENTAL_S = 1.35;
const WORD_S = 60 / 240;

/** A phone has a calendar: the field, next month, the day, done. At a desk the day is typed. */
const DATE = { phone: { presses: 4, characters: 0 }, desk: { presses: 1, characters: 8 } } as const;
/** A list of a phone is gone through by a swipe; at a desk twenty marks about the one that stands are in view. */
const LIST_SWIPES = { phone: 1, desk: 0 } as const;

type Size = keyof typeof MODEL;

/** Texts of headline and controls in view, from the top to a target, or all of them. */
const textsInView = (page: Page, target: ElementHandle | null) =>
  page.evaluate((until) => {
    const nodes = document.createTreeWalker(document.querySelector('#app')!, NodeFilter.SHOW_TEXT);
    const texts: string[] = [];
    for (let node = nodes.nextNode(); node !== null; node = nodes.nextNode()) {
      const holder = node.parentElement!;
      if (holder.closest('.top, .headline, .controls') === null) continue;
      if (holder.closest('option, .unseen') !== null || !holder.checkVisibility()) continue;
      const place = until?.compareDocumentPosition(node) ?? 0;
      if ((place & Node.DOCUMENT_POSITION_FOLLOWING) !== 0 && !until?.contains(node)) break;
      const range = document.createRange();
      range.selectNodeContents(node);
      const { top, bottom, height } = range.getBoundingClientRect();
      if (height > 0 && bottom > 0 && top < innerHeight) texts.push(node.textContent!.trim());
    }
    return texts;
  }, target);

/** A person on the way: what they did, and how long that takes. */
function walker(page: Page, size: Size) {
  const did = { presses: 0, characters: 0, swipes: 0, acts: 0, words: 0 };
  const seen = new Set<string>();
  const read = async (until: ElementHandle | null) => {
    const fresh = (await textsInView(page, until)).filter((text) => !seen.has(text));
    for (const text of fresh) seen.add(text);
    did.words += fresh.join(' ').match(/\p{L}{2,}/gu)?.length ?? 0;
  };
  const inView = (target: Locator) =>
    target.evaluate((element) => {
      const { x, y, width, height } = element.getBoundingClientRect();
      const there = document.elementFromPoint(x + width / 2, y + height / 2);
      return there !== null && (element.contains(there) || there.contains(element));
    });
  async function find(target: Locator): Promise<void> {
    await target.waitFor();
    for (let swipes = 0; !(await inView(target)); swipes++) {
      if (swipes > 12) throw new Error(`${target} did not come into view`);
      const down = ((await target.boundingBox())?.y ?? 0) > 0;
      // Two thirds of a screen, over the controls.
      await read(null);
      await page.evaluate((by) => scrollBy(0, innerHeight * by), down ? 2 / 3 : -2 / 3);
      did.swipes += 1;
    }
    await read(await target.elementHandle());
  }
  return {
    did,
    async press(target: Locator): Promise<void> {
      await find(target);
      await (size === 'phone' ? target.tap() : target.click());
      await planned(page);
      did.presses += 1;
      did.acts += 1;
    },
    /** A panel that is folded costs a press. */
    async unfolded(name: string): Promise<void> {
      const panel = page
        .locator('details.panel')
        .filter({ has: page.locator('> summary', { hasText: name }) });
      if (!(await panel.evaluate((details) => (details as HTMLDetailsElement).open)))
        await this.press(panel.locator('> summary'));
    },
    /** Where the focus is. */
    async type(text: string): Promise<void> {
      await page.keyboard.type(text);
      did.characters += text.length;
      did.acts += 1;
      await planned(page);
    },
    async key(name: string): Promise<void> {
      await page.keyboard.press(name);
      did.characters += 1;
      await planned(page);
    },
    /** From a list of the browser's own: it opens, is gone through, and one is pressed. */
    async choose(target: Locator, option: string): Promise<void> {
      await find(target);
      await target.selectOption(option);
      did.presses += 2;
      did.swipes += LIST_SWIPES[size];
      did.acts += 2;
      await planned(page);
    },
    async date(target: Locator, day: string): Promise<void> {
      await find(target);
      await target.fill(day);
      did.presses += DATE[size].presses;
      did.characters += DATE[size].characters;
      did.acts += 2;
      await planned(page);
    },
    seconds(): number {
      const { press, character, swipe } = MODEL[size];
      const { presses, characters, swipes, acts, words } = did;
      const hands = presses * press + characters * character + swipes * swipe;
      return hands + acts * MENTAL_S + words * WORD_S;
    },
  };
}

const NAMES = {
  en: {
    locale: 'en-GB',
    begin: 'Plan your own evening',
    city: ['Vienn', 'Vienna Austria', 'Vienna'],
    date: 'Date',
    kit: 'Kit',
    rhythm: 'Interval and clip',
    iso: 'Highest ISO',
    aperture: 'Aperture',
    filter: (stops: number) => `Add a filter of ${stops} stops`,
    focal: 'Focal length',
    clip: 'By the length of the clip',
    print: 'Print the cue card',
    card: /Vienna.*Saturday 12 December 2026.*every 10 s/,
  },
  de: {
    locale: 'de-DE',
    begin: 'Den eigenen Abend planen',
    city: ['Wien', 'Wien Österreich', 'Wien'],
    date: 'Datum',
    kit: 'Ausrüstung',
    rhythm: 'Intervall und Clip',
    iso: 'Höchste ISO',
    aperture: 'Blende',
    filter: (stops: number) => `Filter von ${stops} Blenden hinzufügen`,
    focal: 'Brennweite',
    clip: 'Nach der Länge des Clips',
    print: 'Einsatzkarte drucken',
    card: /Wien.*12\. Dezember 2026.*alle 10 s/,
  },
} as const;

export function ownEvening(site: () => Site): void {
  describe('an own evening, by somebody who has never seen the page', () => {
    for (const [size, language, most] of [
      ['phone', 'en', { presses: 15, swipes: 5, seconds: 180 }],
      ['phone', 'de', { presses: 15, swipes: 5, seconds: 180 }],
      ['desk', 'en', { presses: 12, swipes: 3, seconds: 120 }],
    ] as const) {
      it(`comes from opening to a printed card in few presses, ${size}, ${language}`, async () => {
        const names = NAMES[language];
        const page = await site().open({
          ...SIZES[size],
          ...(size === 'desk' && { viewport: { width: 1280, height: 800 } }),
          locale: names.locale,
          before: async (opened) => {
            await opened.clock.setSystemTime(new Date('2026-11-30T12:00:00Z'));
            await opened.addInitScript(() => {
              globalThis.print = () => dispatchEvent(new Event('beforeprint'));
            });
          },
        });
        const person = walker(page, size);
        const { did } = person;
        await person.press(page.getByRole('button', { name: names.begin }));
        const [typed, found, name] = names.city;
        await person.type(typed);
        await person.press(page.getByRole('button', { name: found }));
        await person.date(page.getByLabel(names.date), '2026-12-12');
        await person.unfolded(names.kit);
        await person.choose(page.getByLabel(names.iso), '3200');
        await person.choose(page.getByLabel(names.aperture, { exact: true }), 'f/2.8');
        await person.press(page.getByRole('button', { name: names.filter(3) }));
        await person.press(page.getByRole('button', { name: names.filter(6) }));
        await person.press(page.getByLabel(names.focal));
        for (const one of ['End', 'Backspace', 'Backspace']) await person.key(one);
        await person.type('18');
        await person.unfolded(names.rhythm);
        await person.press(page.getByText(names.clip));
        await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('clip-wanted');
        await person.type('30');
        await person.key('Enter');
        await person.press(page.getByRole('button', { name: names.print }).first());
        await expect.poll(() => textOf(page.locator('#card'))).toMatch(names.card);

        const { shoot } = await planOn(page);
        expect(shoot.place).toEqual({ latitudeDeg: 48.2, longitudeDeg: 16.37, timeZone: 'Europe/Vienna' });
        expect(shoot).toMatchObject({
          date: '2026-12-12',
          intervalS: 10,
          camera: { iso: { highest: 3200 }, aperture: '2.8', lens: { focalMm: 18 } },
        });
        expect(shoot.filters).toMatchObject([{ stops: 3 }, { stops: 6 }]);
        expect(await page.locator('.headline h2').textContent()).toBe(name);
        const told = JSON.stringify({ ...did, seconds: person.seconds() });
        expect(did.presses, told).toBeLessThanOrEqual(most.presses);
        expect(did.swipes, told).toBeLessThanOrEqual(most.swipes);
        expect(person.seconds(), told).toBeLessThan(most.seconds);
        await page.context().close();
      });
    }
  });
}
