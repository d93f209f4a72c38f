import { describe, expect, test } from 'vitest';
import type { Book } from '../../../core/book/index.ts';
import { measureProperty } from '../../../core/measure/index.ts';
import { type Block, SHEETS, type Sheet, type SheetKind, sheetText } from '../../../core/reports/index.ts';
import { SAMPLE_NAMES, sampleBook } from '../../support/samples.ts';
import { storedPlan } from '../../support/stored-plans.ts';

const KINDS = ['run-sheet', 'load-tickets', 'truck-list', 'measure-sheet'];
/** Pages of one kind that are kept of each sheet: the first and the last ones. */
const PAGES_KEPT = 2;

/** A sheet without the pages in its middle, which are like the others. */
function shortened(sheet: Sheet): Sheet {
  const pages = sheet.blocks.filter((block) => block.kind === 'page');
  const kept = new Set<Block>([...pages.slice(0, PAGES_KEPT), ...pages.slice(-1)]);
  return { ...sheet, blocks: sheet.blocks.filter((block) => block.kind !== 'page' || kept.has(block)) };
}

function made(kind: SheetKind, book: Book, name: (typeof SAMPLE_NAMES)[number]): readonly Sheet[] {
  const plan = storedPlan(name);
  if (kind.scope === 'day') return plan.days.map((day) => kind.make({ scope: 'day', book, plan, day }));
  const [property] = book.properties;
  if (kind.scope !== 'property' || property === undefined) return [];
  return [kind.make({ scope: 'property', book, property, measure: measureProperty(property) })];
}

/**
 * The sheets of the sample books as they were read by eye once; a change is read again before it is taken over (npx vitest -u). Their
 * plans are stored, so that they do not change with the search.
 */
describe.each(SAMPLE_NAMES)('the sheets of %s', (name) => {
  test.each(KINDS)('%s is as it was read', async (id) => {
    const kind = SHEETS.find((each) => each.id === id);
    if (kind === undefined) throw new Error(`no sheet ${id}`);
    const sheets = made(kind, sampleBook(name), name);
    expect(sheets.length).toBeGreaterThan(0);
    const text = sheets.map((sheet) => sheetText(shortened(sheet))).join('\n');
    await expect(text).toMatchFileSnapshot(`golden/${name}.${id}.txt`);
  });
});
