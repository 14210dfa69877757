/**
 * What is used of the CSV library. Its published types bring in those of Node,
 * and `process` would compile in the window.
 */
declare module "papaparse" {
  const Papa: {
    /** Rows as CSV by RFC 4180. A cell of text that `escapeFormulae` finds gets an apostrophe in front. */
    unparse(
      rows: readonly (readonly (string | number | boolean)[])[],
      config: { readonly escapeFormulae: RegExp; readonly newline: string },
    ): string;
  };
  export default Papa;
}
