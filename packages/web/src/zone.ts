// The time zone of coordinates, from a table that is loaded when it is first asked for.

import { signal } from '@preact/signals-core';
import type { borderView } from './zone-table.js';

/** What is said near a border, once the table is there. */
export const border = signal<typeof borderView | undefined>(undefined);

/** IANA name, or undefined where the table has none or cannot be loaded. */
export async function lookUpZone(latitudeDeg: number, longitudeDeg: number): Promise<string | undefined> {
  try {
    const table = await import('./zone-table.js');
    border.value = table.borderView;
    return table.zoneAt(latitudeDeg, longitudeDeg);
  } catch {
    return undefined;
  }
}
