/** What a spreadsheet may take for a formula: = + - @, a tab or the end of a line, also in full width, and the same behind apostrophes. */
const FORMULA = /^'*[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/;
/** A plain figure is what it is. */
const FIGURE = /^-?\d+(?:\.\d+)?$/;

/** A cell that no spreadsheet works out: an apostrophe stands before what could be a formula. `plainCell` takes it off again. */
export function harmlessCell(cell: string): string {
  return FORMULA.test(cell) && !FIGURE.test(cell) ? `'${cell}` : cell;
}

/** A cell as it was before it was made harmless. */
export function plainCell(cell: string): string {
  return cell.startsWith("'") && FORMULA.test(cell) ? cell.slice(1) : cell;
}
