// The colours of the lanes, read from the page's style so that both follow the same theme.

const NAMES = ['settings', 'text', 'grid'] as const;

export type Inks = Readonly<Record<(typeof NAMES)[number], string>>;

/** Colours as they hold at an element: custom properties alone would come back unresolved. */
export function inksAt(element: HTMLElement): Inks {
  const probe = document.createElement('span');
  const spots = NAMES.map((name) => {
    const spot = document.createElement('span');
    spot.style.color = `var(--chart-${name})`;
    return spot;
  });
  probe.append(...spots);
  // All are set before the first is read: the page is restyled only once.
  element.append(probe);
  const inks = Object.fromEntries(
    NAMES.map((name, i) => [name, getComputedStyle(spots[i] as HTMLElement).color]),
  ) as Inks;
  probe.remove();
  return inks;
}
