import { type AppError, err, type Result } from '../../../core/base/index.ts';
import {
  type Blank,
  type Entries,
  readEntries,
  SHEETS,
  type Sheet,
  typedBlanks,
} from '../../../core/calibrate/index.ts';
import type { ProductUnit } from '../../../core/units/index.ts';
import { type Option, type Typed, UsageFault } from '../command.ts';

const PRODUCT_UNITS: readonly ProductUnit[] = ['fl-oz', 'oz', 'lb'];

/** Options that are no figures, and the kinds that take them. */
const CHOICES: readonly { readonly option: Option; readonly kinds: readonly string[] }[] = [
  choice('size', 'NUMBER', 'size of the tip as ISO 10625 numbers it: 03', ['tip']),
  choice('sizes', 'LIST', 'sizes to choose from where a rate is wanted; all where it is not said', ['tip']),
  choice('droplets', 'WORDS', 'what the maker states of the droplets; only repeated in the answer', ['tip']),
  choice('product-unit', 'UNIT', 'unit of the product: fl-oz (where it is not said), oz or lb', ['mix', 'catch']),
];

function choice(name: string, value: string, words: string, kinds: readonly string[]) {
  return { option: { name, value, words: `${words} (${kinds.join(', ')})` }, kinds };
}

/** Every option of the command: the figures of all kinds, each with the kinds that take it. */
export function calibrateOptions(): readonly Option[] {
  const blanks = new Map<string, Blank>();
  for (const sheet of SHEETS)
    for (const blank of typedBlanks(sheet)) blanks.set(blank.name, blanks.get(blank.name) ?? blank);
  const figures = [...blanks.values()].map(({ name, words, many }) => {
    const kinds = SHEETS.filter((sheet) => typedBlanks(sheet).some((each) => each.name === name));
    return { name, value: many ? 'LIST' : 'FIGURE', words: `${words} (${kinds.map(({ kind }) => kind).join(', ')})` };
  });
  return [...figures, ...CHOICES.map((each) => each.option)];
}

/** Throws UsageFault for an option that this kind does not take. */
export function checkOptions(sheet: Sheet, { options }: Typed): void {
  const figures = typedBlanks(sheet).map(({ name }) => name);
  const choices = CHOICES.filter(({ kinds }) => kinds.includes(sheet.kind)).map(({ option }) => option.name);
  const other = Object.keys(options).find((name) => !figures.includes(name) && !choices.includes(name));
  if (other === undefined) return;
  const takes = [...figures, ...choices].map((name) => `--${name}`).join(' ');
  throw new UsageFault(`calibrate ${sheet.kind} has no --${other}; it takes ${takes}.`);
}

/** The figures that were typed, in the units of their names. */
export function entriesOf(sheet: Sheet, { options }: Typed): Result<Entries> {
  const { size } = options;
  const productUnit = productUnitOf(options['product-unit']);
  const read = readEntries(sheet, options, { productUnit, ...(size === undefined ? {} : { tipSize: size }) });
  return read.ok ? read : placed(read.error);
}

const placed = ({ code, where, detail, hint }: AppError) => err(code, `--${where}`, detail, hint);

function productUnitOf(text: string | undefined): ProductUnit {
  const unit = PRODUCT_UNITS.find((each) => each === (text ?? 'fl-oz'));
  if (unit !== undefined) return unit;
  throw new UsageFault(`--product-unit is one of ${PRODUCT_UNITS.join(', ')}, not "${text}".`);
}

/** Words of a list: "02, 03" as two. */
export function listOf(text: string | undefined): readonly string[] {
  return (text ?? '').split(/[,;\s]+/).filter((each) => each !== '');
}
