import { ok, type Result } from '../../../core/base/index.ts';
import { type GroundWriter, PLAN_WRITERS, type PlanFileWriter, WRITERS } from '../../../core/formats/index.ts';
import { measureProperty } from '../../../core/measure/index.ts';
import { type Plan, type PlanDay, writePlan } from '../../../core/plan/result/index.ts';
import { describePlace, writeWhole } from '../../services/files/index.ts';
import { type Answer, type Command, fileOf, type Typed, UsageFault, type World } from '../command.ts';
import {
  type BookInput,
  daysOfPlan,
  mayWrite,
  ROADS_OPTION,
  readBookFile,
  readPlanFile,
  rigOf,
  staleIssues,
  withDrives,
} from '../input/index.ts';
import type { ExportOutput } from '../output/index.ts';
import { dateOf } from '../parse.ts';
import { counted, issueLines } from '../text/index.ts';

type Writer = GroundWriter | PlanFileWriter;

const idsOf = (writers: readonly Writer[]): string => writers.map((each) => each.id).join(', ');
const aboutOf = (writers: readonly Writer[]): string =>
  writers.map((each) => `${each.id} (${each.title}. ${each.leavesOut})`).join('; ');

export const exportCommand: Command = {
  name: 'export',
  summary: 'Writes the lawns of a book, or with --plan the days of a plan, as a file for other programs.',
  details: [
    `Kinds of the lawns: ${aboutOf(WRITERS)}`,
    `Kinds of a plan, with --plan: ${aboutOf(PLAN_WRITERS)}`,
    'Outlines have nine decimals. GeoJSON, KML and CSV of the lawns are read back by import without a change. Tables are in US units; a cell that a spreadsheet would take for a formula begins with an apostrophe.',
    'Without --out the file is printed; an existing file is overwritten only where it is of the same kind. A plan for an earlier state of the book is told about.',
  ],
  operands: [{ name: 'BOOK', words: 'book file or its JSON form' }],
  options: [
    { name: 'as', value: 'KIND', words: `kind of file: ${idsOf(WRITERS)}; with --plan ${idsOf(PLAN_WRITERS)}` },
    { name: 'plan', value: 'PLAN', words: 'write days of this plan, as written by plan --out, instead of the lawns' },
    { name: 'date', value: 'D', words: 'with --plan: only this day, YYYY-MM-DD' },
    { name: 'rig', value: 'ID', words: 'with --plan: only this rig' },
    ROADS_OPTION,
    { name: 'out', value: 'FILE', words: 'write the file here instead of printing it' },
  ],
  required: ['as'],
  schema: 'export',
  example: 'npx swardway export sample-routes/residential-day.json --plan plan.json --as ics --out days.ics',
  run: async (typed, world) => {
    if (typed.options.plan !== undefined) return exportPlan(typed, world);
    for (const name of ['date', 'rig', 'roads'] as const) {
      if (typed.options[name] !== undefined) throw new UsageFault(`--${name} needs --plan: lawns have no days.`);
    }
    const writer = writerOf(WRITERS, typed);
    const free = await outputFree(writer, typed);
    if (!free.ok) return free;
    const read = await readBookFile(fileOf(typed, 'BOOK'));
    if (!read.ok) return read;
    const { book } = read.value;
    const text = writer.write(book.properties, { title: book.name, measure: measureProperty });
    return finish(read.value, writer, { text, properties: book.properties.length, days: 0 }, typed);
  },
};

async function exportPlan(typed: Typed, world: World): Promise<Result<Answer>> {
  const writer = writerOf(PLAN_WRITERS, typed);
  dateOf(typed, 'date');
  if (writer.isWhole && (typed.options.date ?? typed.options.rig) !== undefined) {
    throw new UsageFault(`--as ${writer.id} is always the whole plan; leave --date and --rig out.`);
  }
  const free = await outputFree(writer, typed);
  if (!free.ok) return free;
  const read = await readBookFile(fileOf(typed, 'BOOK'));
  if (!read.ok) return read;
  const input = await withDrives(read.value, typed, world);
  if (!input.ok) return input;
  const { book, where, issues } = input.value;
  const plan = await readPlanFile(fileOf(typed, 'plan'));
  if (!plan.ok) return plan;
  const rig = rigOf(book, where, typed.options.rig);
  if (!rig.ok) return rig;
  const days: Result<readonly PlanDay[]> = writer.isWhole
    ? ok(plan.value.days)
    : daysOfPlan(plan.value, typed, fileOf(typed, 'plan'));
  if (!days.ok) return days;
  const source = { book, plan: plan.value, days: days.value };
  const text = writer.write(source, { title: titleOf(book.name, plan.value), nowMs: Date.now(), planText: writePlan });
  const lawns = new Set(days.value.flatMap((day) => day.stops.map((stop) => stop.propertyId)));
  const found = { ...read.value, issues: [...staleIssues(input.value, plan.value), ...issues] };
  return finish(found, writer, { text, properties: lawns.size, days: days.value.length }, typed);
}

const titleOf = (book: string, { roundName }: Plan): string => `${book}: ${roundName}`;

function writerOf<Kind extends Writer>(writers: readonly Kind[], { options }: Typed): Kind {
  const found = writers.find((each) => each.id === options.as);
  if (found !== undefined) return found;
  const what = options.plan === undefined ? '--as' : '--as with --plan';
  throw new UsageFault(`${what} knows ${idsOf(writers)}; not "${options.as}".`);
}

async function outputFree(writer: Writer, typed: Typed): Promise<Result<true>> {
  return typed.options.out === undefined ? ok(true) : mayWrite(fileOf(typed, 'out'), writer.begins, writer.title);
}

type Made = Pick<ExportOutput, 'text' | 'properties' | 'days'>;

async function finish({ book, issues }: BookInput, writer: Writer, made: Made, typed: Typed): Promise<Result<Answer>> {
  const { text, properties, days } = made;
  const json: ExportOutput = {
    format: 'swardway-export',
    version: 1,
    bookId: book.id,
    as: writer.id,
    properties,
    days,
    leavesOut: writer.leavesOut,
    text: typed.options.out === undefined ? text : '',
    issues,
  };
  const remarks = [...issueLines(issues)];
  if (typed.options.out === undefined) return ok({ json, text: () => text.trimEnd(), remarks });
  const file = fileOf(typed, 'out');
  const written = await writeWhole(file, text);
  if (!written.ok) return written;
  remarks.push(`file written: ${describePlace(file)}`);
  const lawns = counted(properties, 'property', 'properties');
  const what = typed.options.plan === undefined ? lawns : `${counted(days, 'day')} with ${lawns}`;
  return ok({ json, text: () => `${what} written. ${writer.leavesOut}`, remarks });
}
