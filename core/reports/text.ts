import type { Block, Sheet } from './blocks.ts';
import { tableText, wrapped } from './table-text.ts';
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
    case 'subheading':
      return `${block.text}\n${'-'.repeat(Math.min(WIDTH, block.text.length))}`;
    case 'facts': {
      const width = Math.max(0, ...block.facts.map((each) => each.label.length));
      return block.facts.map((each) => wrap(each.value, `${each.label.padEnd(width)}  `)).join('\n');
    }
    case 'table':
      return tableText(block, WIDTH);
    case 'checklist':
      return block.items.map((each) => wrap(each, '[  ] ')).join('\n');
    case 'cautions':
      return [block.title, ...block.items.map((each) => wrap(each, '  - '))].join('\n');
    case 'note':
      return wrap(block.text, '');
    case 'own-text':
      return block.text;
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

function wrap(text: string, lead: string): string {
  return wrapped(text, lead, WIDTH).join('\n');
}
