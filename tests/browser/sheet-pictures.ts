import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { gunzipSync } from 'node:zlib';
import { readBook } from '../../core/book/index.ts';
import { readPlan } from '../../core/plan/result/index.ts';
import { SHEETS, sheetsHtml } from '../../core/reports/index.ts';
import { printWithChromium } from '../../electron/services/printer/index.ts';
import { findChromium } from './chromium.ts';

const DOTS_PER_INCH = 80;
/** Pages of the sheets of a day that the guide shows, as printed. */
const SHOWN = [
  { sheet: 'run-sheet', page: 3, name: 'sheet-1-run' },
  { sheet: 'load-tickets', page: 3, name: 'sheet-2-ticket' },
  { sheet: 'truck-list', page: 1, name: 'sheet-3-truck' },
] as const;

/** Prints the sheets of the sample day and keeps a page of each as a picture. Needs a Chromium and pdftoppm. */
export async function takeSheetPictures(folder: string): Promise<void> {
  // Bundled before it runs, so that files are found from the project's root.
  const book = readBook(readFileSync('sample-routes/residential-day.json', 'utf8'), 'book');
  const plan = readPlan(
    gunzipSync(readFileSync('tests/fixtures/plans/residential-day.plan.json.gz')).toString(),
    'plan',
  );
  if (!book.ok || !plan.ok) throw new Error('the sample or its plan cannot be read');
  const [day] = plan.value.days;
  if (day === undefined) throw new Error('the plan has no day');
  const input = { scope: 'day', book: book.value.book, plan: plan.value, day } as const;
  const scratch = mkdtempSync(path.join(tmpdir(), 'swardway-sheets-'));
  try {
    for (const { sheet, page, name } of SHOWN) {
      const kind = SHEETS.find((each) => each.id === sheet);
      if (kind?.scope !== 'day') throw new Error(`${sheet} is of no day`);
      const printed = await printWithChromium(findChromium(), sheetsHtml([kind.make(input)]));
      if (!printed.ok) throw new Error(printed.error.detail);
      const file = path.join(scratch, 'sheet.pdf');
      writeFileSync(file, printed.value);
      const words = ['-png', '-gray', '-singlefile', '-r', String(DOTS_PER_INCH), '-f', String(page), file];
      execFileSync('pdftoppm', [...words, path.join(folder, name)]);
      process.stdout.write(`docs/pictures/${name}.png\n`);
    }
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}
