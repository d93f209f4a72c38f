import { type Block, BOX, type Column, type Sheet, type TableRow } from './blocks.ts';
import { escapeHtml } from './escape.ts';
import { picturesSvg } from './map-picture.ts';
import { mapSvg } from './map-svg.ts';
import type { PageOptions } from './page.ts';
import { pageName, pagesStyle, sheetStyle } from './style.ts';
import { PAGE } from './texts/index.ts';

/**
 * Sheets as one standalone HTML page without scripts: what the screens show, what the browser prints and what becomes a PDF.
 * Every text from the book is escaped.
 *
 * @param sheets printed one after the other, each from a new page with its name at the head of every page
 * @param page   paper and size of print; absent: letter paper, normal print
 */
export function sheetsHtml(sheets: readonly Sheet[], page: PageOptions = {}): string {
  const title = escapeHtml(sheets.map((each) => each.title).join('; '));
  const foot = sheets.some((each) => each.invented) ? `${PAGE.program} · ${PAGE.invented}` : PAGE.program;
  const heads = sheets.map((each) => [each.title, each.subtitle].filter((text) => text !== '').join(' · '));
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>${title}</title><style>${sheetStyle(page)}</style><style class="pages">${pagesStyle(page, foot, heads)}</style></head><body>${sheets.map(sheetHtml).join('')}</body></html>`;
}

function sheetHtml(sheet: Sheet, index: number): string {
  const invented = sheet.invented ? `<p class="invented">${PAGE.invented}</p>` : '';
  const head = `<header><h1>${kept(sheet.title)}</h1><p class="subtitle">${kept(sheet.subtitle)}</p>${invented}</header>`;
  return `<article style="page:${pageName(index)}">${head}${picturesSvg(sheet.pictures ?? [])}${sheet.blocks.map(blockHtml).join('')}</article>`;
}

function blockHtml(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return `<h2>${kept(block.text)}</h2>`;
    case 'subheading':
      return `<h3>${kept(block.text)}</h3>`;
    case 'facts':
      return `<dl${block.wide === true ? ' class="wide"' : ''}>${block.facts.map((each) => `<div><dt>${kept(each.label)}</dt><dd>${kept(each.value)}</dd></div>`).join('')}</dl>`;
    case 'table':
      return tableHtml(block.columns, block.rows);
    case 'checklist':
      return `<ul class="checklist">${block.items.map((each) => `<li>${kept(each)}</li>`).join('')}</ul>`;
    case 'cautions':
      return `<section class="cautions"><h3>${kept(block.title)}</h3><ul>${block.items.map((each) => `<li>${kept(each)}</li>`).join('')}</ul></section>`;
    case 'note':
      return `<p class="note">${boxed(block.text)}</p>`;
    case 'own-text':
      return `<div class="own-text ${block.look}">${kept(block.text)}</div>`;
    case 'map':
      return mapSvg(block);
    case 'blanks':
      return `<div class="blanks">${block.labels.map((each) => `<span>${kept(each)}</span>`).join('')}</div>`;
    case 'group':
      return `<section class="group">${block.blocks.map(blockHtml).join('')}</section>`;
    case 'page':
      return `<section class="page${block.runsOn === true ? ' runs-on' : ''}">${block.blocks.map(blockHtml).join('')}</section>`;
  }
}

/** What is longer may be broken between its rows: moved as a whole it would leave most of a page empty. */
const MOST_ROWS_TOGETHER = 14;

/** A header that is printed again on every page; rows from one stop to the next stay together. */
function tableHtml(columns: readonly Column[], rows: readonly TableRow[]): string {
  const head = columns
    .map((each) => `<th scope="col" class="${each.align}">${kept(breakable(each.label))}</th>`)
    .join('');
  const isFixed = columns.every((each) => each.share !== undefined);
  const shares = isFixed ? columns.map((each) => `<col style="width:${each.share}%">`).join('') : '';
  const bodies: string[][] = [[]];
  for (const row of rows) {
    if (isStop(row) && bodies.at(-1)?.length !== 0) bodies.push([]);
    bodies.at(-1)?.push(rowHtml(columns, row));
  }
  const keep = rows.some(isStop);
  const body = bodies.map((each) => {
    const isKept = keep && each.length <= MOST_ROWS_TOGETHER;
    return `<tbody${isKept ? ' class="together"' : ''}>${each.join('')}</tbody>`;
  });
  return `<table${isFixed ? ' class="fixed"' : ''}>${shares}<thead><tr>${head}</tr></thead>${body.join('')}</table>`;
}

/** Words in headings and cells stay whole, but for those that would push other columns off the paper. */
function breakable(text: string): string {
  return text.replace(/\S{21,}/gu, (word) => word.replace(/\S{6}(?=\S)/gu, '$&\u200b'));
}

function isStop(row: TableRow): boolean {
  return 'look' in row && row.look === 'stop';
}

function rowHtml(columns: readonly Column[], row: TableRow): string {
  if (!('look' in row)) return `<tr>${cellsHtml(columns, row)}</tr>`;
  const tail = row.tail ?? [];
  const span = Math.max(1, columns.length - row.lead.length - tail.length);
  const lead = cellsHtml(columns.slice(0, row.lead.length), row.lead);
  const end = cellsHtml(columns.slice(row.lead.length + span), tail);
  return `<tr class="${row.look}">${lead}<td colspan="${span}">${boxed(breakable(row.text))}</td>${end}</tr>`;
}

function cellsHtml(columns: readonly Column[], texts: readonly string[]): string {
  return columns
    .map((each, index) => `<td class="${each.align}">${boxed(breakable(texts[index] ?? ''))}</td>`)
    .join('');
}

/** A figure and its unit, which stay on one line. */
const FIGURE =
  /(\d) (?=(?:gal|fl|oz|lb|bags?|ft²?|in|ac|mi|mph|psi|h|min|s|am|pm|L|mL|kg|g|m²?|cm|km|°[CF]|%)(?![\p{L}\d]))/gu;

/** Words of Hebrew, Arabic and their neighbours: set apart, so that figures and marks beside them keep their order. */
const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]+(?: [\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]+)*/gu;

/** Text in which figures keep to their units and the mark for a box becomes a box to tick. */
function boxed(text: string): string {
  return kept(text).replaceAll(BOX, '<span class="box"></span>');
}

function kept(text: string): string {
  return escapeHtml(text).replace(FIGURE, '$1\u00a0').replace(RIGHT_TO_LEFT, '<bdi>$&</bdi>');
}
