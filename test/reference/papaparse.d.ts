// The part of papaparse the tests use; it comes without types of its own.
declare module 'papaparse' {
  export interface Parsed {
    readonly data: Readonly<Record<string, string>>[];
    readonly errors: readonly { readonly message: string }[];
    readonly meta: {
      readonly fields?: readonly string[];
      readonly delimiter: string;
      readonly linebreak: string;
    };
  }
  const Papa: {
    parse(text: string, options: { header: true; skipEmptyLines?: boolean; newline?: string }): Parsed;
  };
  export default Papa;
}
