import type { TableRow } from '../blocks.ts';
import type { RowGroup } from './day-rows.ts';

/** Heights in normal print, mm, measured on printed sheets: what a page has below its heading, its map and the head of its table. */
const PAGE_MM = 186;
const LINE_MM = 5.3;
const ROW_PADDING_MM = 2.1;
const DETAIL_PADDING_MM = 0.4;
/** Letters that fit into a line of a detail, of another wide cell, and of the cells of a zone and of its method. */
const DETAIL_LETTERS = 92;
const WIDE_LETTERS = 70;
const NARROW_LETTERS = 23;

/**
 * Groups of rows in order, as many on each page as its height takes beside a small map, and one stop at least. What is done before the
 * first stop and after the last one has no page of its own.
 */
export function pagesOf(groups: readonly RowGroup[]): readonly (readonly RowGroup[])[] {
  const pages: RowGroup[][] = [];
  let leftMm = 0;
  for (const group of groups) {
    const neededMm = group.rows.reduce((sum, row) => sum + heightMm(row), 0);
    const page = pages.at(-1);
    const isFull = neededMm > leftMm && group.stop !== null && (page?.some((each) => each.stop !== null) ?? false);
    if (page === undefined || isFull) {
      pages.push([group]);
      leftMm = PAGE_MM - neededMm;
    } else {
      page.push(group);
      leftMm -= neededMm;
    }
  }
  return pages;
}

function heightMm(row: TableRow): number {
  if (!('look' in row)) return linesOf(Math.max(...row.map((each) => each.length)), NARROW_LETTERS) + ROW_PADDING_MM;
  if (row.look === 'detail') return linesOf(row.text.length, DETAIL_LETTERS) + DETAIL_PADDING_MM;
  return linesOf(row.text.length, WIDE_LETTERS) + ROW_PADDING_MM;
}

function linesOf(letters: number, perLine: number): number {
  return Math.max(1, Math.ceil(letters / perLine)) * LINE_MM;
}
