declare module 'virtual:land' {
  /** SVG path of all land, a unit a degree, north up. */
  export const path: string;
}
