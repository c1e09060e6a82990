/** About how wide a text of 12 px is: measured ones would cost a layout. Taken from system fonts' widest common face. */
export const textPx = (text: string) => text.length * 6.7;
