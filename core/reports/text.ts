import type { Block, Sheet, TableRow } from './blocks.ts';
import { PAGE } from './texts/index.ts';

const WIDTH = 96;

/** A sheet as plain text, for a terminal. */
export function sheetText(sheet: Sheet): string {
  const head = [sheet.title, sheet.subtitle, ...(sheet.invented ? [PAGE.invented.toUpperCase()] : [])].filter(
    (each) => each !== '',
  );
  return `${head.join('\n')}\n\n${blocksText(sheet.blocks)}\n`;
}

function blocksText(blocks: readonly Block[]): string {
  return blocks
    .map(blockText)
    .filter((each) => each !== '')
    .join('\n\n');
}

function blockText(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return `${block.text}\n${'-'.repeat(Math.min(WIDTH, block.text.length))}`;
    case 'facts': {
      const width = Math.max(0, ...block.facts.map((each) => each.label.length));
      return block.facts.map((each) => `${each.label.padEnd(width)}  ${each.value}`).join('\n');
    }
    case 'table':
      return tableText(block);
    case 'checklist':
      return block.items.map((each) => wrap(each, '[  ] ')).join('\n');
    case 'cautions':
      return [block.title, ...block.items.map((each) => wrap(each, '  - '))].join('\n');
    case 'note':
      return wrap(block.text, '');
    case 'blanks':
      return block.labels.map((each) => `${each}: ________`).join('   ');
    case 'map':
      return '';
    case 'group':
      return blocksText(block.blocks);
    case 'page':
      return `${'='.repeat(WIDTH)}\n\n${blocksText(block.blocks)}`;
  }
}

type Table = Extract<Block, { readonly kind: 'table' }>;

function tableText({ columns, rows }: Table): string {
  const widths = columns.map((column, index) =>
    Math.max(column.label.length, ...rows.map((row) => cellAt(row, index).length)),
  );
  const shaped = (texts: readonly string[], from: number): string =>
    texts
      .map((text, index) => {
        const width = widths[from + index] ?? 0;
        return columns[from + index]?.align === 'right' ? text.padStart(width) : text.padEnd(width);
      })
      .join('  ');
  const line = (row: TableRow): string => {
    if (!('look' in row))
      return shaped(
        columns.map((_, index) => row[index] ?? ''),
        0,
      ).trimEnd();
    const lead = row.lead.length === 0 ? '' : `${shaped(row.lead, 0)}  `;
    if (row.text === '') return shaped(spread(columns.length, row.lead, row.tail ?? []), 0).trimEnd();
    const tail = (row.tail ?? []).filter((each) => each !== '').join('  ');
    return wrap(tail === '' ? row.text : `${row.text}  ${tail}`, lead).trimEnd();
  };
  return [
    shaped(
      columns.map((each) => each.label),
      0,
    ).trimEnd(),
    widths.map((width) => '-'.repeat(width)).join('  '),
    ...rows.flatMap((row) => ('look' in row && row.look === 'stop' ? ['', line(row)] : [line(row)])),
  ].join('\n');
}

/** Texts of the first and of the last columns, with nothing between them. */
function spread(count: number, lead: readonly string[], tail: readonly string[]): readonly string[] {
  const between = Math.max(0, count - lead.length - tail.length);
  return [...lead, ...Array.from({ length: between }, () => ''), ...tail];
}

/** The text that decides how wide a column has to be. */
function cellAt(row: TableRow, index: number): string {
  return ('look' in row ? row.lead[index] : row[index]) ?? '';
}

function wrap(text: string, lead: string): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line.length > 0 && lead.length + line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines.map((each, index) => (index === 0 ? lead : ' '.repeat(lead.length)) + each).join('\n');
}
