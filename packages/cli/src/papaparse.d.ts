// The part of papaparse that is used; it comes without types of its own.
declare module 'papaparse' {
  const Papa: {
    parse<Row = Readonly<Record<string, string>>>(
      text: string,
      options: { header: true; skipEmptyLines?: boolean; newline?: string },
    ): {
      readonly data: readonly Row[];
      readonly errors: readonly { readonly message: string }[];
      readonly meta: {
        readonly fields?: readonly string[];
        readonly delimiter: string;
        readonly linebreak: string;
      };
    };
  };
  export default Papa;
}
