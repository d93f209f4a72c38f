import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PRINTS, paperOf, SHEETS, sheetsHtml, sheetText } from '../../../core/reports/index.ts';
import { everySheet, fixtureBook } from './fixture.ts';

const VOID = new Set(['meta', 'br', 'hr', 'img', 'link', 'input', 'col']);

/** Names of the elements that are open at the end, or the first one that is closed out of order. */
function unbalanced(html: string): string {
  const open: string[] = [];
  for (const [, slash, name = '', self] of html.matchAll(/<(\/?)([a-z][a-z0-9]*)(?:\s[^<>]*?)?(\/?)>/gi)) {
    if (VOID.has(name.toLowerCase()) || self === '/') continue;
    if (slash === '') open.push(name);
    else if (open.pop() !== name) return `</${name}>`;
  }
  return open.join(' ');
}

describe('sheets as HTML', () => {
  it('are one page of balanced elements, each sheet in its own article', () => {
    const html = sheetsHtml(everySheet());
    expect(html.startsWith('<!doctype html>')).toBe(true);
    expect(html.match(/<article style=/g)).toHaveLength(SHEETS.length);
    expect(unbalanced(html)).toBe('');
  });

  it('ask for nothing from elsewhere and run nothing', () => {
    const html = sheetsHtml(everySheet());
    expect(html).not.toMatch(/<script|javascript:|https?:|<link|<img|@import|\son\w+=/i);
  });

  it('escape every text of the book', () => {
    const hostile = `<img src=x onerror="alert(1)"> & 'q' </style></td>`;
    const html = sheetsHtml(everySheet(fixtureBook((text) => `${text}${hostile}`)));
    expect(html).not.toContain('<img');
    expect(html).not.toContain('onerror="');
    expect(html.match(/<\/style>/g)).toHaveLength(2);
    expect(unbalanced(html)).toBe('');
    expect(html).toContain('&lt;img src=x onerror=&quot;alert(1)&quot;&gt; &amp; &#39;q&#39;');
  });

  it('stay balanced whatever the names are', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 30 }), (text) => {
        const sheets = everySheet(fixtureBook((name) => `${name}${text}`));
        expect(unbalanced(sheetsHtml(sheets))).toBe('');
        for (const sheet of sheets) expect(sheetText(sheet)).not.toContain('undefined');
      }),
      { numRuns: 20, seed: 7 },
    );
  });

  it('repeat the head of a table and keep a stop together', () => {
    const html = sheetsHtml(everySheet());
    expect(html).toContain('thead{display:table-header-group}');
    expect(html).toContain('<tbody class="together"><tr class="stop">');
    expect(html).toContain('counter(page) " of " counter(pages)');
    expect(html).toContain('size:letter');
  });

  it('name sheet, rig and date at the head of every page, as text that cannot end the style', () => {
    const [first] = everySheet();
    expect(sheetsHtml(first === undefined ? [] : [first])).toContain(
      '@page sheet-0{@top-left{content:"Run sheet: Rig North · Tuesday, April 1, 2031"',
    );
    const hostile = { id: 'a', title: 'A"} </style><b>', subtitle: 'c\\d\ne', invented: true, blocks: [] };
    const html = sheetsHtml([hostile]);
    expect(html.match(/<\/style>/g)).toHaveLength(2);
    expect(html).toContain('content:"A\\22 \\7d  \\3c /style\\3e \\3c b\\3e  · c\\5c d\\a e"');
  });

  it('are made for the paper that is asked for', () => {
    expect(sheetsHtml(everySheet(), { paper: 'a4' })).toContain('size:A4');
    expect(paperOf(' A4 ')).toEqual({ ok: true, value: 'a4' });
    const refused = paperOf('foolscap');
    if (refused.ok) throw new Error('foolscap is no paper of ours');
    expect(`${refused.error.detail} ${refused.error.hint}`).toBe(
      '"foolscap" is no paper that sheets are made for. Choose letter or a4.',
    );
  });

  it.each(PRINTS)('print nothing too small in %s print (map labels apart)', (print) => {
    const style = sheetsHtml(everySheet(), { print }).match(/<style>(.*)<\/style>/)?.[1] ?? '';
    const sizes = [...style.matchAll(/(?:font-size:|font:)(\d+(?:\.\d+)?)pt/g)].map((match) => Number(match[1]));
    expect(sizes.length).toBeGreaterThan(8);
    expect(Math.min(...sizes)).toBe(print === 'large' ? 16 : 12);
  });
});

describe('sheets as text', () => {
  it('keep to the width of a terminal', () => {
    for (const sheet of everySheet()) {
      for (const line of sheetText(sheet).split('\n')) expect(line.length).toBeLessThanOrEqual(110);
    }
  });
});
