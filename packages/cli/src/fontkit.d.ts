// The part of fontkit this package uses; it comes without types of its own.
declare module 'fontkit' {
  export interface OpenFont {
    readonly unitsPerEm: number;
    layout(text: string): {
      readonly glyphs: readonly { readonly id: number; readonly codePoints: readonly number[] }[];
      readonly positions: readonly {
        readonly xAdvance: number;
        readonly xOffset: number;
        readonly yOffset: number;
      }[];
    };
  }
  export function create(file: Uint8Array): OpenFont;
}
