// The time zone of coordinates, from a table that is loaded when it is first asked for.

/** IANA name, or undefined where the table has none or cannot be loaded. */
export async function lookUpZone(latitudeDeg: number, longitudeDeg: number): Promise<string | undefined> {
  try {
    const { zoneAt } = await import('./zone-table.js');
    return zoneAt(latitudeDeg, longitudeDeg);
  } catch {
    return undefined;
  }
}
