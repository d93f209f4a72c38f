import { type AppError, err, ok, type Result } from '../../../core/base/index.ts';
import {
  type BenchAnswer,
  type Entries,
  isTipWish,
  SHEETS,
  type Sheet,
  SOURCES,
  type TipCombination,
  type TipWish,
  tipCombinations,
  tipWish,
  unitOf,
  workSheet,
} from '../../../core/calibrate/index.ts';
import { type Answer, type Command, type Typed, UsageFault } from '../command.ts';
import type { CalibrateOutput } from '../output/index.ts';
import { calibrateOptions, checkOptions, entriesOf, listOf } from './calibrate-entries.ts';
import { calibrateText } from './calibrate-text.ts';

/** So many combinations of tip, pressure and speed are listed. */
const MOST_COMBINATIONS = 40;
/** A rate passes where it is off by no more than this share: W. Buhler, Spray Gun, NC Cooperative Extension. */
const PASSES = 0.05;

export const calibrateCommand: Command = {
  name: 'calibrate',
  summary: 'Works out what is missing from the figures of a calibration, with the arithmetic and its source.',
  details: [
    'Give what was measured; whatever follows from it is worked out, in either direction. A bare number is in the unit that the option has in its name or its words; other units are converted: --mph "8 km/h", --spacing-in "50 cm", --gpm "32 oz/min". Options that take a LIST want commas between the readings, and count their mean.',
    'An answer has the name of the option that would take it. Figures that serve for nothing, that are missing, or that contradict each other by more than 1 % make the command line wrong (exit code 2); figures that cannot be right are quantity-out-of-range (exit code 1).',
    ...SHEETS.map(({ kind, words }) => `${kind}: ${words}.`),
    "tip with --want-gal-per-1000 or --want-gpa: for each size and speed within the limits, the whole pressure that comes nearest to the rate; the nearest first. Nothing is said of droplets: the class is the maker's to state.",
  ],
  operands: [{ name: 'KIND', words: `one of ${SHEETS.map(({ kind }) => kind).join(', ')}` }],
  options: calibrateOptions(),
  usage: 'KIND --FIGURE VALUE ... [--json]',
  schema: 'calibrate',
  example: 'npx swardway calibrate boom --gpm 0.25 --mph 5 --spacing-in 20',
  run: async (typed) => answer(sheetOf(typed), typed),
};

function sheetOf({ operands }: Typed): Sheet {
  const { KIND: kind } = operands;
  const sheet = SHEETS.find((each) => each.kind === kind);
  if (sheet !== undefined) return sheet;
  throw new UsageFault(`There is no calibration "${kind}"; there are ${SHEETS.map((each) => each.kind).join(', ')}.`);
}

function answer(sheet: Sheet, typed: Typed): Result<Answer> {
  checkOptions(sheet, typed);
  const entries = entriesOf(sheet, typed);
  if (!entries.ok) return entries;
  const { droplets } = typed.options;
  const worked = isTipWish(sheet, entries.value.values)
    ? chosen(sheet, entries.value, typed)
    : ordinary(sheet, entries.value);
  if (!worked.ok) return refused(worked.error);
  const json: CalibrateOutput = { ...worked.value, ...(droplets === undefined ? {} : { droplets }) };
  return ok({ json, text: () => calibrateText(json), remarks: [] });
}

/** Missing and contradicting figures are the fault of the command line, anything else of the figures. */
function refused(error: AppError): Result<Answer> {
  if (error.code === 'request-invalid') throw new UsageFault(`${error.detail} ${error.hint}`);
  return err(error.code, `--${error.where}`, error.detail, error.hint);
}

function header(sheet: Sheet, entries: Entries): Pick<CalibrateOutput, 'format' | 'version' | 'kind' | 'given'> {
  const given = Object.entries(entries.values).map(([name, value]) => ({
    name,
    value,
    unit: unitOf(sheet, name, entries),
  }));
  return { format: 'swardway-calibration', version: 1, kind: sheet.kind, given };
}

function ordinary(sheet: Sheet, entries: Entries): Result<CalibrateOutput> {
  const worked = workSheet(sheet, entries);
  return worked.ok ? ok({ ...header(sheet, entries), ...worked.value }) : worked;
}

function chosen(sheet: Sheet, entries: Entries, { options }: Typed): Result<CalibrateOutput> {
  if (entries.tipSize !== undefined) throw new UsageFault('Where a rate is wanted the sizes are --sizes, not --size.');
  const wish = tipWish(entries, listOf(options.sizes));
  if (!wish.ok) return wish;
  const found = tipCombinations(wish.value);
  if (!found.ok) return found;
  const [nearest] = found.value;
  return ok({
    ...header(sheet, entries),
    answers: nearest === undefined ? [] : answersOf(nearest),
    working: [wishLine(wish.value), ...listLines(found.value)],
    source: [SOURCES.cornellGuide, SOURCES.coreManual, SOURCES.arizona].join('; '),
    combinations: found.value.slice(0, MOST_COMBINATIONS),
  });
}

function answersOf({ psi, mph, gpm, gpa, galPer1000SqFt }: TipCombination): readonly BenchAnswer[] {
  return [
    { name: 'psi', value: psi, unit: 'psi' },
    { name: 'mph', value: mph, unit: 'mph' },
    { name: 'gpm', value: gpm, unit: 'gal/min' },
    { name: 'gal-per-1000', value: galPer1000SqFt, unit: 'gal/1000ft2' },
    { name: 'gpa', value: gpa, unit: 'gal/acre' },
  ];
}

const wishLine = ({ leastPsi, mostPsi, leastMph, mostMph }: TipWish): string =>
  `psi = 40 × (gpa × mph × spacing-in / 5,940 / gpm at 40 psi)², a whole psi from ${leastPsi} to ${mostPsi}, at ${leastMph} to ${mostMph} mph`;

/** How many there are, how many would pass, and how many are listed. */
function listLines(found: readonly TipCombination[]): readonly string[] {
  const passing = found.filter((each) => Math.abs(each.difference) <= PASSES).length;
  const listed = Math.min(found.length, MOST_COMBINATIONS);
  return [
    `${found.length} combinations of size and speed, ${passing} of them within 5 % of the rate; the nearest ${listed} are listed`,
  ];
}
