import type { Block, Sheet } from './blocks.ts';

const WIDTH = 96;

/** A sheet as plain text, for a terminal. */
export function sheetText(sheet: Sheet): string {
  const head = [sheet.title, sheet.subtitle, ...(sheet.invented ? ['INVENTED DATA, NOT FOR USE'] : [])].filter(
    (each) => each !== '',
  );
  return `${[head.join('\n'), ...sheet.blocks.map(blockText).filter((each) => each !== '')].join('\n\n')}\n`;
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
    case 'page-break':
      return '='.repeat(WIDTH);
  }
}

function tableText({ columns, rows }: Extract<Block, { readonly kind: 'table' }>): string {
  const widths = columns.map((column, index) =>
    Math.max(column.label.length, ...rows.map((row) => (row[index] ?? '').length)),
  );
  const line = (cells: readonly string[]): string =>
    columns
      .map(({ align }, index) =>
        align === 'right'
          ? (cells[index] ?? '').padStart(widths[index] ?? 0)
          : (cells[index] ?? '').padEnd(widths[index] ?? 0),
      )
      .join('  ')
      .trimEnd();
  return [
    line(columns.map((each) => each.label)),
    widths.map((width) => '-'.repeat(width)).join('  '),
    ...rows.map(line),
  ].join('\n');
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
