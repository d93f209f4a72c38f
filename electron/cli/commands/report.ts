import { err, issue, ok, type Result } from '../../../core/base/index.ts';
import type { Book, Property } from '../../../core/book/index.ts';
import { lastChange, measureProperty } from '../../../core/measure/index.ts';
import type { Plan, PlanDay } from '../../../core/plan/result/index.ts';
import { lawnQuote } from '../../../core/quote/index.ts';
import { SHEETS, type Sheet, type SheetKind, sheetsHtml, sheetText } from '../../../core/reports/index.ts';
import { describePlace, writeWhole } from '../../services/files/index.ts';
import { type Answer, type Command, fileOf, type Typed, UsageFault } from '../command.ts';
import {
  type BookInput,
  mayWrite,
  problemOfPlan,
  propertiesOf,
  readBookFile,
  readPlanFile,
  rigOf,
  roundOf,
} from '../input/index.ts';
import type { ReportOutput } from '../output/index.ts';
import { dateOf } from '../parse.ts';
import { counted, issueLines } from '../text/index.ts';

const SHEET_IDS = SHEETS.map((each) => each.id);

export const reportCommand: Command = {
  name: 'report',
  summary: 'Makes the sheets of a plan: run sheet, load tickets, truck list, measure sheet.',
  details: [
    `Sheets: ${SHEETS.map((each) => `${each.id} (${each.about.charAt(0).toLowerCase()}${each.about.slice(1)})`).join('; ')}. Without --sheet all that belong to a day are made, for every day and rig of the plan that --date and --rig leave.`,
    'With --html the sheets are written into one page that can be printed from a browser; an existing file is overwritten only where it is an HTML page. A plan for an earlier state of the book is told about.',
  ],
  operands: [
    { name: 'BOOK', words: 'book file or its JSON form' },
    { name: 'PLAN', words: 'plan in its JSON form, as written by plan --out' },
  ],
  options: [
    { name: 'sheet', value: 'ID', words: 'only this sheet' },
    { name: 'date', value: 'D', words: 'only this day of the plan, YYYY-MM-DD' },
    { name: 'rig', value: 'ID', words: 'only this rig' },
    { name: 'customer', value: null, words: "the customer's copy of measure sheets: no machines, costs or margin" },
    { name: 'html', value: 'FILE', words: 'write the sheets as one HTML page instead of printing them' },
  ],
  schema: 'report',
  example: 'npx swardway report sample-routes/residential-day.json plan.json --sheet run-sheet',
  run: async (typed) => {
    const kinds = kindsOf(typed);
    dateOf(typed, 'date');
    if (typed.options.html !== undefined) {
      const free = await mayWrite(fileOf(typed, 'html'), /^\s*<!doctype html/i, 'HTML page');
      if (!free.ok) return free;
    }
    const read = await readBookFile(fileOf(typed, 'BOOK'));
    if (!read.ok) return read;
    const plan = await readPlanFile(fileOf(typed, 'PLAN'));
    if (!plan.ok) return plan;
    const sheets = sheetsOf(read.value, plan.value, kinds, typed);
    return sheets.ok ? finish(read.value, plan.value, sheets.value, typed) : sheets;
  },
};

function kindsOf(typed: Typed): readonly SheetKind[] {
  const { sheet } = typed.options;
  if (sheet === undefined) return SHEETS.filter((each) => each.scope === 'day');
  const found = SHEETS.filter((each) => each.id === sheet);
  if (found.length === 0) throw new UsageFault(`--sheet knows ${SHEET_IDS.join(', ')}; not "${sheet}".`);
  return found;
}

function sheetsOf(
  { book, where }: BookInput,
  plan: Plan,
  kinds: readonly SheetKind[],
  typed: Typed,
): Result<readonly Made[]> {
  const round = roundOf(book, where, plan.roundId);
  if (!round.ok) return round;
  const rig = rigOf(book, where, typed.options.rig);
  if (!rig.ok) return rig;
  const days = plan.days.filter(
    (day) =>
      (typed.options.date === undefined || day.date === typed.options.date) &&
      (typed.options.rig === undefined || day.rigId === typed.options.rig),
  );
  const wantsDays = kinds.some((each) => each.scope === 'day');
  if (wantsDays && days.length === 0) return noSuchDay(plan, fileOf(typed, 'PLAN'));
  return ok([
    ...days.flatMap((day) => kinds.flatMap((kind) => daySheet(kind, book, plan, day))),
    ...kinds.flatMap((kind) =>
      propertiesOf(book, round.value).flatMap((property) =>
        propertySheet(kind, book, property, typed.flags.has('customer')),
      ),
    ),
  ]);
}

/** A sheet and what it is of. */
type Made = { readonly kind: SheetKind; readonly sheet: Sheet; readonly day?: PlanDay; readonly property?: Property };

function daySheet(kind: SheetKind, book: Book, plan: Plan, day: PlanDay): readonly Made[] {
  return kind.scope === 'day' ? [{ kind, day, sheet: kind.make({ scope: 'day', book, plan, day }) }] : [];
}

function propertySheet(kind: SheetKind, book: Book, property: Property, forCustomer: boolean): readonly Made[] {
  if (kind.scope !== 'property') return [];
  const measure = measureProperty(property);
  const sheet = kind.make({
    scope: 'property',
    book,
    property,
    measure,
    change: lastChange(property, measure),
    quote: lawnQuote(book, property, measure),
    reader: forCustomer ? 'customer' : 'office',
  });
  return [{ kind, property, sheet }];
}

function noSuchDay(plan: Plan, file: string): Result<never> {
  const known = plan.days.map((each) => `${each.date} ${each.rigId}`).join(', ');
  const detail = known === '' ? 'The plan has no day: nothing could be placed.' : 'The plan has no such day.';
  const hint = known === '' ? 'Its list of what was not placed says why.' : `It has these: ${known}.`;
  return err('reference-missing', `${describePlace(file)}, days`, detail, hint);
}

async function finish(
  { book, where, issues }: BookInput,
  plan: Plan,
  made: readonly Made[],
  typed: Typed,
): Promise<Result<Answer>> {
  const problem = problemOfPlan(book, plan, where);
  const current = problem.ok && problem.value.hash === plan.problemHash;
  const stale = issue(
    'warning',
    'plan-stale',
    where,
    'The book was changed after this plan was made. Plan again before using the sheets.',
  );
  const all = current ? issues : [stale, ...issues];
  const remarks = [...issueLines(all)];
  const json: ReportOutput = {
    format: 'swardway-report',
    version: 1,
    bookId: book.id,
    roundId: plan.roundId,
    current,
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
  if (typed.options.html === undefined)
    return ok({ json, text: () => json.sheets.map((each) => each.text).join('\n'), remarks });
  const page = fileOf(typed, 'html');
  const written = await writeWhole(page, sheetsHtml(made.map((each) => each.sheet)));
  if (!written.ok) return written;
  remarks.push(`page written: ${describePlace(page)}`);
  return ok({ json, text: () => `${counted(made.length, 'sheet')} made.`, remarks });
}
