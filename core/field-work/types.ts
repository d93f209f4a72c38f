/** An area from field work with the arithmetic behind it, a line of text for each step. ft2 */
export type FieldArea = { readonly areaSqFt: number; readonly lines: readonly string[] };
