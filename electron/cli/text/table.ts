/** A column of a table for people. */
export type Column<Row> = {
  readonly title: string;
  readonly cell: (row: Row) => string;
  /** Figures stand at the right. */
  readonly right?: boolean;
};

/** Lines of a table: title row, rule, rows. Columns are two spaces apart; nothing is cut off. */
export function tableLines<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): readonly string[] {
  const cells = rows.map((row) => columns.map(({ cell }) => cell(row).replace(/\s+/g, ' ')));
  const widths = columns.map(({ title }, index) =>
    Math.max(title.length, ...cells.map((row) => (row[index] ?? '').length)),
  );
  const line = (texts: readonly string[]): string =>
    texts
      .map((text, index) =>
        columns[index]?.right ? text.padStart(widths[index] ?? 0) : text.padEnd(widths[index] ?? 0),
      )
      .join('  ')
      .trimEnd();
  return [line(columns.map(({ title }) => title)), line(widths.map((width) => '-'.repeat(width))), ...cells.map(line)];
}
