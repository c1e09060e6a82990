declare module 'virtual:cities' {
  export const zones: readonly string[];
  /** "Name|country, ISO 3166|latitude|longitude|place in the list of zones", one a line, largest city first. */
  export const lines: string;
}
