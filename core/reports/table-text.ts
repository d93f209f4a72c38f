import type { Block, Column, TableRow } from './blocks.ts';

type Table = Extract<Block, { readonly kind: 'table' }>;
/** Columns as wide as their texts, the widest ones narrowed until all fit side by side. */
type Shape = { readonly columns: readonly Column[]; readonly widths: readonly number[] };

const GAP = '  ';
/** No column is narrowed below this. */
const LEAST_WIDTH = 12;

/** A table as plain text; long cells run over several lines. */
export function tableText({ columns, rows }: Table, width: number): string {
  const widths = columns.map((column, index) =>
    Math.max(column.label.length, ...rows.map((row) => cellAt(row, index, columns.length).length)),
  );
  const shape = { columns, widths: narrowed(widths, width) };
  return [
    ...rowLines(
      columns.map((each) => each.label),
      shape,
    ),
    shape.widths.map((each) => '-'.repeat(each)).join(GAP),
    ...rows.flatMap((row) => {
      const lines = linesOf(row, shape, width);
      return 'look' in row && row.look === 'stop' ? ['', ...lines] : lines;
    }),
  ].join('\n');
}

function linesOf(row: TableRow, shape: Shape, width: number): readonly string[] {
  if (!('look' in row))
    return rowLines(
      shape.columns.map((_, index) => row[index] ?? ''),
      shape,
    );
  const tail = row.tail ?? [];
  if (row.text === '') return rowLines(spread(shape.columns.length, row.lead, tail), shape);
  const lead = row.lead.length === 0 ? '' : `${padded(row.lead, shape)}${GAP}`;
  const end = tail.filter((each) => each !== '').join(GAP);
  return wrapped(end === '' ? row.text : `${row.text}${GAP}${end}`, lead, width);
}

/** Cells side by side, each wrapped to the width of its column. */
function rowLines(texts: readonly string[], shape: Shape): readonly string[] {
  const cells = texts.map((text, index) => wrapped(text, '', shape.widths[index] ?? 0));
  const height = Math.max(1, ...cells.map((each) => each.length));
  return Array.from({ length: height }, (_, line) =>
    padded(
      cells.map((each) => each[line] ?? ''),
      shape,
    ).trimEnd(),
  );
}

function padded(texts: readonly string[], { columns, widths }: Shape): string {
  return texts
    .map((text, index) => {
      const width = widths[index] ?? 0;
      return columns[index]?.align === 'right' ? text.padStart(width) : text.padEnd(width);
    })
    .join(GAP);
}

function narrowed(widths: readonly number[], width: number): readonly number[] {
  const narrow = [...widths];
  const room = width - GAP.length * (widths.length - 1);
  for (let over = sum(narrow) - room; over > 0; over -= 1) {
    const widest = narrow.indexOf(Math.max(...narrow));
    if ((narrow[widest] ?? 0) <= LEAST_WIDTH) break;
    narrow[widest] = (narrow[widest] ?? 0) - 1;
  }
  return narrow;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, each) => total + each, 0);
}

/** Texts of the first and of the last columns, with nothing between them. */
function spread(count: number, lead: readonly string[], tail: readonly string[]): readonly string[] {
  const between = Math.max(0, count - lead.length - tail.length);
  return [...lead, ...Array.from({ length: between }, () => ''), ...tail];
}

/** The text that decides how wide a column has to be. */
function cellAt(row: TableRow, index: number, count: number): string {
  if (!('look' in row)) return row[index] ?? '';
  const tail = row.tail ?? [];
  return row.lead[index] ?? (row.text === '' ? tail[index - count + tail.length] : '') ?? '';
}

/** A text broken between words, every line behind the first one set in as far as the lead reaches. */
export function wrapped(text: string, lead: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line.length > 0 && lead.length + line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines.map((each, index) => ((index === 0 ? lead : ' '.repeat(lead.length)) + each).trimEnd());
}
