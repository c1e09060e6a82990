/** Flags under which Chromium asks no other host for anything. */
export const FLAGS: string[];
/** Path of Chromium; throws an error of one line where there is none. */
export function chromiumPath(): string;
