/**
 * Distances written out in a file, in the forms of TSPLIB 95 (Reinelt, 1995, section 2). Null where the numbers are too few, not
 * whole, or in a form that is not known.
 */
export function explicitDistances(numbers: readonly number[], form: string, width: number): Float64Array | null {
  const cells = cellsOf(form, width);
  if (cells === null || cells.length !== numbers.length || numbers.some((each) => !Number.isFinite(each))) return null;
  const distances = new Float64Array(width * width);
  cells.forEach(([row, column], at) => {
    distances[row * width + column] = numbers[at] as number;
    if (form !== 'FULL_MATRIX') distances[column * width + row] = numbers[at] as number;
  });
  for (let node = 0; node < width; node += 1) distances[node * width + node] = 0;
  return distances;
}

/** Which cell each number of the file stands for. */
function cellsOf(form: string, width: number): readonly (readonly [number, number])[] | null {
  const rows = Array.from({ length: width }, (_, row) => row);
  const columns = (row: number): readonly number[] | null => {
    switch (form) {
      case 'FULL_MATRIX':
        return rows;
      case 'UPPER_ROW':
        return rows.slice(row + 1);
      case 'UPPER_DIAG_ROW':
        return rows.slice(row);
      case 'LOWER_ROW':
        return rows.slice(0, row);
      case 'LOWER_DIAG_ROW':
        return rows.slice(0, row + 1);
      default:
        return null;
    }
  };
  const cells: (readonly [number, number])[] = [];
  for (const row of rows) {
    const own = columns(row);
    if (own === null) return null;
    for (const column of own) cells.push([row, column]);
  }
  return cells;
}
