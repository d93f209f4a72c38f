/** How an outline as well-known text begins in a cell; its own commas part it where it is not in quotation marks. */
const OUTLINE_START = /^\s*(?:SRID=\d+;\s*)?(?:MULTI)?(?:POINT|LINESTRING|POLYGON|GEOMETRYCOLLECTION)\b/i;
const SYSTEM_ONLY = /^\s*SRID=\d+\s*$/i;

const MOST_PASSES = 3;

/**
 * Puts outlines together again that the delimiter has cut up: "SRID=4326;POLYGON…" in a table with semicolons, and outlines
 * without quotation marks in a table with commas. Rows with no more cells than the header are left alone.
 */
export function joinOutlines(cells: readonly string[], columns: number, delimiter: string): readonly string[] {
  if (cells.length <= columns) return cells;
  const joined: string[] = [];
  // Brackets that are never closed are looked for a few times only, so that no row takes long.
  let left = cells.length * MOST_PASSES;
  for (let at = 0; at < cells.length; at += 1) {
    const isCut = SYSTEM_ONLY.test(cells[at] ?? '') && OUTLINE_START.test(cells[at + 1] ?? '');
    const start = isCut ? at + 1 : at;
    const isOutline = left > 0 && OUTLINE_START.test(cells[start] ?? '');
    const closing = isOutline ? endOfOutline(cells, start) : start;
    const end = closing ?? start;
    left -= closing === null ? cells.length - start : 0;
    joined.push(cells.slice(at, end + 1).join(isCut && end === start ? ';' : delimiter));
    at = end;
  }
  return joined;
}

/** The cell in which the brackets that were opened are closed again; null where they never are. */
function endOfOutline(cells: readonly string[], start: number): number | null {
  let open = 0;
  for (let at = start; at < cells.length; at += 1) {
    for (const character of cells[at] ?? '') open += character === '(' ? 1 : character === ')' ? -1 : 0;
    if (open <= 0) return at;
  }
  return null;
}
