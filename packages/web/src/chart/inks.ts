// The chart's colours, read from the page's style so that both follow the same theme.

const NAMES = [
  'scene',
  'target',
  'settings',
  'band',
  'grid',
  'text',
  'day',
  'civil',
  'nautical',
  'astronomical',
  'night',
] as const;

export type Inks = Readonly<Record<(typeof NAMES)[number], string>>;

/** Colours as they hold at an element: custom properties alone would come back unresolved. */
export function inksAt(element: HTMLElement): Inks {
  const probe = document.createElement('span');
  element.append(probe);
  const inks = Object.fromEntries(
    NAMES.map((name) => {
      probe.style.color = `var(--chart-${name})`;
      return [name, getComputedStyle(probe).color];
    }),
  ) as Inks;
  probe.remove();
  return inks;
}
