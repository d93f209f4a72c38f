import { beforeEach, expect, test } from 'vitest';
import { type PageOptions, SHEETS, type Sheet, sheetsHtml } from '../../../core/reports/index.ts';
import { describeWithChromium } from '../../browser/chromium.ts';
import { pagesOf, whyNoPages } from '../../support/pdf.ts';
import { type SampleName, sampleBook } from '../../support/samples.ts';
import { storedPlan } from '../../support/stored-plans.ts';
import { readDay } from './printed-sheets.ts';
import { expectDay } from './rebuilt.ts';

const DAY_SHEETS = ['run-sheet', 'load-tickets', 'truck-list'] as const;
const HEADINGS =
  /^(Stops? \d+ (to \d+ )?of \d+|Load \d+ of \d+.*|Home \d.*|Weather and crew|Where it fills up|Always aboard|Before you start|Order of mixing.*|Ground it must cover|Labels, as entered.*)$/;

function sheetsOf(name: SampleName): readonly Sheet[] {
  const [book, plan] = [sampleBook(name), storedPlan(name)];
  return plan.days.flatMap((day) =>
    DAY_SHEETS.flatMap((id) =>
      SHEETS.flatMap((kind) =>
        kind.scope === 'day' && kind.id === id ? [kind.make({ scope: 'day', book, plan, day })] : [],
      ),
    ),
  );
}

/** Lines of a page between its head and its foot. */
function body(page: string): readonly string[] {
  const lines = page.split('\n').filter((line) => line.trim() !== '');
  return lines.slice(1, -1);
}

/** What has to hold for every page of printed sheets. */
function expectWholePages(sheets: readonly Sheet[], pages: readonly string[]): void {
  const heads = sheets.map((each) => `${each.title} · ${each.subtitle}`);
  for (const [index, page] of pages.entries()) {
    const lines = body(page);
    const [head = ''] = page.split('\n').filter((line) => line.trim() !== '');
    expect(heads).toContain(head.trim().replace(/\s+/g, ' '));
    expect(page).toContain(`Page ${index + 1} of ${pages.length}`);
    expect(page).toContain('Invented data, not for use');
    // Nothing stands at the end of a page without what it heads, and no page has cautions alone.
    expect(lines.at(-1)?.trim() ?? '').not.toMatch(HEADINGS);
    expect(lines.filter((line) => /\S/.test(line)).length).toBeGreaterThan(1);
    if (lines[0]?.trim() === 'Before you start') expect(lines.at(-1)).not.toMatch(/products\.$/);
  }
}

/** The pages of one sheet as one text, without heads and feet. */
function textOf(sheet: Sheet, pages: readonly string[]): string {
  const head = `${sheet.title} · ${sheet.subtitle}`;
  return pages
    .filter((page) => page.trimStart().startsWith(head))
    .flatMap(body)
    .join('\n');
}

describeWithChromium('printed sheets of a sample day', () => {
  const missing = whyNoPages();
  beforeEach((context) => {
    if (missing !== null) context.skip(missing);
  });

  test.each(['residential-day', 'mixed-day'] as const)(
    '%s: a stranger finds the totals of the plan on the paper alone',
    async (name) => {
      const sheets = sheetsOf(name);
      const pages = await pagesOf(sheetsHtml(sheets));
      expectWholePages(sheets, pages);
      storedPlan(name).days.forEach((day, index) => {
        const [run = '', tickets = '', truck = ''] = sheets
          .slice(index * DAY_SHEETS.length, (index + 1) * DAY_SHEETS.length)
          .map((sheet) => textOf(sheet, pages));
        expectDay(name, day, readDay(run, tickets, truck));
      });
    },
    60_000,
  );

  test.each([
    { paper: 'a4', print: 'normal' },
    { paper: 'letter', print: 'large' },
  ] as const)(
    'on $paper in $print print: every load on a page of its own, heads on every page, and the same totals',
    async (page: PageOptions) => {
      const sheets = sheetsOf('residential-day');
      const pages = await pagesOf(sheetsHtml(sheets, page));
      expectWholePages(sheets, pages);
      const [run = '', tickets = '', truck = ''] = sheets.map((sheet) => textOf(sheet, pages));
      const [day] = storedPlan('residential-day').days;
      if (day === undefined) throw new Error('no day');
      if (page.print === 'normal') expectDay('residential-day', day, readDay(run, tickets, truck));
      const begins = pages.filter((each) => /^\s*Load \d+ of \d+:/.test(body(each)[0] ?? ''));
      expect(begins).toHaveLength(day.loads.length);
      expect(tickets.match(/Load \d+ of \d+:/g)).toHaveLength(day.loads.length);
    },
    60_000,
  );
});
