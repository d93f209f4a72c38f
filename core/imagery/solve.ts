/**
 * Least squares by the normal equations, with rows of the same weight; the numbers handed in are scaled to about one first.
 *
 * @param rows one row for each equation
 * @param values the right sides
 * @returns null where the rows do not fix every unknown
 */
export function leastSquares(
  rows: readonly (readonly number[])[],
  values: readonly number[],
): readonly number[] | null {
  const count = rows[0]?.length ?? 0;
  const matrix = Array.from({ length: count }, (_, i) => [
    ...Array.from({ length: count }, (_, j) => rows.reduce((sum, row) => sum + (row[i] ?? 0) * (row[j] ?? 0), 0)),
    rows.reduce((sum, row, index) => sum + (row[i] ?? 0) * (values[index] ?? 0), 0),
  ]);
  return eliminate(matrix);
}

/** A pivot below this share of the largest figure means that the equations do not fix the unknowns. */
const SMALLEST_PIVOT = 1e-11;

/** Gauss-Jordan with row exchange; the last column of the matrix holds the right sides. */
function eliminate(matrix: number[][]): readonly number[] | null {
  const count = matrix.length;
  const largest = matrix.flat().reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  for (let column = 0; column < count; column += 1) {
    const pivotAt = largestBelow(matrix, column);
    const pivotRow = matrix[pivotAt];
    const pivot = pivotRow?.[column] ?? 0;
    if (pivotRow === undefined || !(Math.abs(pivot) > largest * SMALLEST_PIVOT)) return null;
    matrix[pivotAt] = matrix[column] ?? pivotRow;
    matrix[column] = pivotRow.map((value) => value / pivot);
    for (const [index, row] of matrix.entries()) {
      const factor = row[column] ?? 0;
      if (index === column || factor === 0) continue;
      matrix[index] = row.map((value, at) => value - factor * (matrix[column]?.[at] ?? 0));
    }
  }
  return matrix.map((row) => row[count] ?? 0);
}

function largestBelow(matrix: readonly (readonly number[])[], column: number): number {
  let best = column;
  for (let row = column + 1; row < matrix.length; row += 1) {
    if (Math.abs(matrix[row]?.[column] ?? 0) > Math.abs(matrix[best]?.[column] ?? 0)) best = row;
  }
  return best;
}
