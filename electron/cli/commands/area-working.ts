import { ok, type Result } from '../../../core/base/index.ts';
import type { AreaWorking, PlainShape } from '../../../core/book/index.ts';
import { type Typed, UsageFault } from '../command.ts';
import {
  isPlainKind,
  lengthReader,
  lengths,
  partsOf,
  positives,
  type ReadLength,
  SHAPE_OPTIONS,
  shapeInWords,
  shapeOf,
} from './area-shapes.ts';

const OTHER_OPTIONS: Readonly<Record<string, readonly string[]>> = {
  offsets: ['interval-ft', 'offsets-ft', 'rule'],
  radii: ['radii-ft'],
};

/** Every way of working out an area. */
export const AREA_KINDS: readonly string[] = [...Object.keys(SHAPE_OPTIONS), ...Object.keys(OTHER_OPTIONS)];

/** What was measured, from the words of the command line. Throws UsageFault where words are missing or too many. */
export function workingOf(typed: Typed): Result<AreaWorking> {
  const kind = typed.operands.KIND ?? '';
  const read = lengthReader(typed.flags.has('metric'));
  if (isPlainKind(kind)) return shapesOf(kind, typed, read);
  const names = OTHER_OPTIONS[kind];
  if (names === undefined) throw new UsageFault(`There is no shape "${kind}"; there are ${AREA_KINDS.join(', ')}.`);
  checkOptions(kind, names, typed);
  return kind === 'offsets' ? offsetsOf(typed, read) : radiiOf(typed, read);
}

function checkOptions(kind: string, names: readonly string[], { options, lists }: Typed): void {
  const other = [...Object.keys(options), ...Object.keys(lists)].find((name) => !names.includes(name));
  if (other === undefined) return;
  throw new UsageFault(`area ${kind} has no --${other}; it takes ${names.map((name) => `--${name}`).join(' ')}.`);
}

function needed({ options }: Typed, name: string): string {
  const text = options[name];
  if (text === undefined) throw new UsageFault(`--${name} is missing.`);
  return text;
}

function shapesOf(kind: PlainShape['kind'], typed: Typed, read: ReadLength): Result<AreaWorking> {
  const names = SHAPE_OPTIONS[kind];
  checkOptions(kind, [...names, 'plus', 'less'], typed);
  const figures: number[] = [];
  for (const name of names) {
    const length = positives([needed(typed, name)], `--${name}`, read);
    if (!length.ok) return length;
    figures.push(...length.value);
  }
  const shapes: PlainShape[] = [shapeOf(kind, figures, 'add')];
  for (const [take, list] of [
    ['add', typed.lists.plus],
    ['subtract', typed.lists.less],
  ] as const) {
    for (const text of list ?? []) {
      const shape = shapeInWords(text, take, read);
      if (!shape.ok) return shape;
      shapes.push(shape.value);
    }
  }
  return ok({ kind: 'shapes', shapes });
}

function offsetsOf(typed: Typed, read: ReadLength): Result<AreaWorking> {
  const interval = positives([needed(typed, 'interval-ft')], '--interval-ft', read);
  if (!interval.ok) return interval;
  const offsetsFt = lengths(partsOf(needed(typed, 'offsets-ft')), '--offsets-ft', read);
  if (!offsetsFt.ok) return offsetsFt;
  const rule = typed.options.rule ?? 'trapezoid';
  if (rule !== 'trapezoid' && rule !== 'simpson')
    throw new UsageFault(`--rule is trapezoid or simpson, not "${rule}".`);
  return ok({ kind: 'offsets', rule, intervalFt: interval.value[0] ?? 0, offsetsFt: offsetsFt.value });
}

function radiiOf(typed: Typed, read: ReadLength): Result<AreaWorking> {
  const radiiFt = positives(partsOf(needed(typed, 'radii-ft')), '--radii-ft', read);
  return radiiFt.ok ? ok({ kind: 'mean-radius', radiiFt: radiiFt.value }) : radiiFt;
}
