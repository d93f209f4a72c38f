import path from 'node:path';
import { err, ok, type Result } from '../../../core/base/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import {
  drivesOfDay,
  PAPERS,
  type PageOptions,
  paperOf,
  SHEETS,
  sheetsHtml,
  sheetText,
} from '../../../core/reports/index.ts';
import { describePlace, writeWhole } from '../../services/files/index.ts';
import { findPrinter, printWithChromium } from '../../services/printer/index.ts';
import { type Answer, type Command, fileOf, type Typed, UsageFault } from '../command.ts';
import {
  type BookInput,
  mayWrite,
  ROADS_OPTION,
  readBookFile,
  readPlanFile,
  staleIssues,
  withDrives,
} from '../input/index.ts';
import type { ReportOutput } from '../output/index.ts';
import { dateOf } from '../parse.ts';
import { counted, issueLines } from '../text/index.ts';
import { type FleetPlan, kindsOf, type Made, sheetsOf } from './report-sheets.ts';

export const reportCommand: Command = {
  name: 'report',
  summary: 'Makes sheets for paper: run sheet, load tickets, truck list, records, notices, summaries.',
  details: [
    `Sheets: ${SHEETS.map((each) => `${each.id} (${each.about.charAt(0).toLowerCase()}${each.about.slice(1)})`).join('; ')}. Without --sheet all that the crew takes along are made, for every day and rig of the plan that --date and --rig leave.`,
    'With --html the sheets are written into one page that can be printed from a browser, with --pdf into a PDF by a Chromium of this machine; the variable CHROMIUM may name it. An existing file is overwritten only where it is of the same kind. A plan for an earlier state of the book is told about.',
  ],
  operands: [
    { name: 'BOOK', words: 'book file or its JSON form' },
    {
      name: 'PLAN',
      words: 'plan in its JSON form, as written by plan --out; only sheets of a day cannot do without',
      optional: true,
    },
  ],
  options: [
    { name: 'sheet', value: 'ID', words: 'only this sheet' },
    { name: 'date', value: 'D', words: 'only this day of the plan, YYYY-MM-DD' },
    { name: 'rig', value: 'ID', words: 'only this rig' },
    { name: 'property', value: 'ID', words: 'only this lawn, for sheets of a lawn' },
    { name: 'round', value: 'ID', words: 'round, where there is no plan that says it; absent: the first' },
    { name: 'year', value: 'Y', words: 'calendar year of the season ledger; absent: the last one of the book' },
    {
      name: 'fleets',
      value: 'LIST',
      words: 'plans to compare, as fleet=file,fleet=file: each as written by plan --out --fleet',
    },
    ROADS_OPTION,
    { name: 'customer', value: null, words: "the customer's copy of measure sheets: no machines, costs or margin" },
    { name: 'paper', value: 'SIZE', words: `paper of --html and --pdf: ${PAPERS.join(' or ')}; absent: letter` },
    { name: 'large', value: null, words: 'large print: 16 pt and up' },
    { name: 'units', value: 'U', words: 'us or metric; absent: as the book says' },
    { name: 'clock', value: 'C', words: '12-hour or 24-hour; absent: as the book says, or as its units go' },
    { name: 'dates', value: 'D', words: 'month-first or day-first; absent: as the book says, or month-first' },
    { name: 'html', value: 'FILE', words: 'write the sheets as one HTML page instead of printing them' },
    { name: 'pdf', value: 'FILE', words: 'write the sheets as one PDF instead of printing them' },
  ],
  schema: 'report',
  example: 'npx swardway report sample-routes/residential-day.json plan.json --sheet run-sheet',
  run: async (typed, world) => {
    const kinds = kindsOf(typed);
    const page = pageOf(typed);
    dateOf(typed, 'date');
    const free = await outputsFree(typed);
    if (!free.ok) return free;
    const book = await readBookFile(fileOf(typed, 'BOOK'));
    if (!book.ok) return book;
    const plan = typed.operands.PLAN === undefined ? ok(null) : await readPlanFile(fileOf(typed, 'PLAN'));
    if (!plan.ok) return plan;
    const drives = plan.value?.days.flatMap((day) => drivesOfDay(book.value.book, day)) ?? [];
    const read = plan.value === null ? book : await withDrives(book.value, typed, world, drives);
    if (!read.ok) return read;
    const fleetPlans = await fleetPlansOf(read.value, typed);
    if (!fleetPlans.ok) return fleetPlans;
    const sheets = sheetsOf(read.value, plan.value, fleetPlans.value, kinds, typed);
    if (!sheets.ok) return sheets;
    const written = await write(sheets.value, page, typed);
    return written.ok ? ok(answer(read.value, plan.value, sheets.value, written.value)) : written;
  },
};

/** Plans by fleets of the book, "fleet=file,fleet=file". Fails for a fleet that the book does not have and for what is no plan. */
async function fleetPlansOf({ book, where }: BookInput, typed: Typed): Promise<Result<readonly FleetPlan[]>> {
  const plans: FleetPlan[] = [];
  for (const entry of typed.options.fleets?.split(',') ?? []) {
    const at = entry.indexOf('=');
    if (at < 1) throw new UsageFault(`--fleets is a list such as one=one.json,two=two.json; not "${entry}".`);
    const fleetId = entry.slice(0, at).trim();
    if (!book.fleets.some((each) => each.id === fleetId)) {
      const known = book.fleets.map((each) => each.id).join(', ');
      const hint = known === '' ? 'It has none.' : `It has ${known}.`;
      return err('reference-missing', `${where}, fleets`, `The book has no fleet "${fleetId}".`, hint);
    }
    const plan = await readPlanFile(path.resolve(entry.slice(at + 1).trim()));
    if (!plan.ok) return plan;
    plans.push({ fleetId, plan: plan.value });
  }
  return ok(plans);
}

function pageOf(typed: Typed): PageOptions {
  const paper = paperOf(typed.options.paper ?? PAPERS[0]);
  if (!paper.ok) throw new UsageFault(`--paper: ${paper.error.detail} ${paper.error.hint}`);
  return { paper: paper.value, print: typed.flags.has('large') ? 'large' : 'normal' };
}

async function outputsFree(typed: Typed): Promise<Result<true>> {
  if (typed.options.html !== undefined) {
    const free = await mayWrite(fileOf(typed, 'html'), /^\s*<!doctype html/i, 'HTML page');
    if (!free.ok) return free;
  }
  // Every PDF file starts with "%PDF-" (ISO 32000-1, 7.5.2).
  return typed.options.pdf === undefined ? ok(true) : mayWrite(fileOf(typed, 'pdf'), /^%PDF-/, 'PDF');
}

/** Writes the files that were asked for; tells which. */
async function write(made: readonly Made[], page: PageOptions, typed: Typed): Promise<Result<readonly string[]>> {
  const { html, pdf } = typed.options;
  const remarks: string[] = [];
  const whole = sheetsHtml(
    made.map((each) => each.sheet),
    page,
  );
  if (html !== undefined) {
    const file = fileOf(typed, 'html');
    const written = await writeWhole(file, whole);
    if (!written.ok) return written;
    remarks.push(`page written: ${describePlace(file)}`);
  }
  if (pdf !== undefined) {
    const printed = await printWithChromium(await findPrinter(), whole);
    if (!printed.ok) return printed;
    const file = fileOf(typed, 'pdf');
    const written = await writeWhole(file, printed.value);
    if (!written.ok) return written;
    remarks.push(`PDF written: ${describePlace(file)}`);
  }
  return ok(remarks);
}

function answer(input: BookInput, plan: Plan | null, made: readonly Made[], written: readonly string[]): Answer {
  const { book, issues } = input;
  const stale = plan === null ? [] : staleIssues(input, plan);
  const all = [...stale, ...issues];
  const json: ReportOutput = {
    format: 'swardway-report',
    version: 1,
    bookId: book.id,
    roundId: plan?.roundId ?? '',
    current: stale.length === 0,
    sheets: made.map(({ kind, sheet, day, property }) => ({
      sheet: kind.id,
      date: day?.date ?? '',
      rigId: day?.rigId ?? '',
      propertyId: property?.id ?? '',
      title: sheet.title,
      subtitle: sheet.subtitle,
      invented: sheet.invented,
      text: sheetText(sheet),
    })),
    issues: all,
  };
  const text = () =>
    written.length > 0 ? `${counted(made.length, 'sheet')} made.` : json.sheets.map((each) => each.text).join('\n');
  return { json, text, remarks: [...issueLines(all), ...written] };
}
