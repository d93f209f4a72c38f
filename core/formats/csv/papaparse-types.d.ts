/**
 * The little of papaparse that is used here. Its published types pull in those of Node and the browser, which core must not
 * see; core/tsconfig.json points the package to this file.
 */
type ParseError = { readonly type: string; readonly code: string; readonly message: string; readonly row?: number };
type ParseResult = {
  readonly data: readonly (readonly string[])[];
  readonly errors: readonly ParseError[];
  readonly meta: { readonly delimiter: string };
};
type ParseOptions = { readonly delimiter?: string; readonly skipEmptyLines?: boolean };

declare const papaparse: { readonly parse: (text: string, options: ParseOptions) => ParseResult };
export = papaparse;
