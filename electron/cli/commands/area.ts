import { ok, type Result } from '../../../core/base/index.ts';
import type { AreaWorking, PlainShape } from '../../../core/book/index.ts';
import { workedArea } from '../../../core/field-work/index.ts';
import { SQUARE_FEET_PER_ACRE, SQUARE_METRES_PER_SQUARE_FOOT } from '../../../core/units/index.ts';
import { type Answer, type Command, type Option, type Typed, UsageFault } from '../command.ts';
import type { AreaOutput } from '../output/index.ts';
import { tableLines } from '../text/index.ts';
import {
  areaSource,
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
import { AMOUNTS } from './calibrate-text.ts';

const figure = (name: string, words: string): Option => ({ name, value: 'LENGTH', words });

const OTHER_OPTIONS: Readonly<Record<string, readonly string[]>> = {
  offsets: ['interval-ft', 'offsets-ft', 'rule'],
  radii: ['radii-ft'],
};

export const areaCommand: Command = {
  name: 'area',
  summary: 'Works out an area from what tape or wheel measured: plain shapes, offsets from a line, radii.',
  details: [
    'Lengths are in feet, or in metres with --metric; other units are converted: "12 yd", "3 ft 6 in". Parts are added with --plus and taken off with --less, each as often as needed: --less "rectangle 10 x 20" --less "circle 12".',
    "offsets: widths measured across a line at equal distances, 0 where the lawn ends in a point. Simpson's rule follows curved edges; with an even number of offsets the last gap is a trapezoid. radii: measured at equal angles from one point inside; the mean reads a little low where they differ much.",
  ],
  operands: [
    { name: 'KIND', words: `one of ${[...Object.keys(SHAPE_OPTIONS), ...Object.keys(OTHER_OPTIONS)].join(', ')}` },
  ],
  options: [
    figure('length-ft', 'length (rectangle, ellipse)'),
    figure('width-ft', 'width (rectangle, ellipse)'),
    figure('base-ft', 'base (triangle)'),
    figure('height-ft', 'height (triangle)'),
    figure('diameter-ft', 'distance across (circle)'),
    figure('side-ft', 'one parallel side (trapezoid)'),
    figure('other-side-ft', 'the other parallel side (trapezoid)'),
    figure('apart-ft', 'distance between them (trapezoid)'),
    figure('interval-ft', 'distance from offset to offset (offsets)'),
    { name: 'offsets-ft', value: 'LIST', words: 'widths across, with commas between (offsets)' },
    { name: 'rule', value: 'NAME', words: 'trapezoid (where it is not said) or simpson (offsets)' },
    { name: 'radii-ft', value: 'LIST', words: 'radii at equal angles, with commas between (radii)' },
    { name: 'plus', value: 'SHAPE', words: 'a plain shape to add (plain shapes)', many: true },
    { name: 'less', value: 'SHAPE', words: 'a plain shape to take off (plain shapes)', many: true },
    { name: 'metric', value: null, words: 'bare numbers are metres, and the working is in metres' },
  ],
  usage: 'KIND --FIGURE VALUE ... [--less SHAPE] [--metric] [--json]',
  schema: 'area',
  example: 'npx swardway area rectangle --length-ft 80 --width-ft 60 --less "circle 12"',
  run: async (typed) => answer(typed),
};

function answer(typed: Typed): Result<Answer> {
  const working = workingOf(typed);
  if (!working.ok) return working;
  const worked = workedArea(working.value, typed.flags.has('metric') ? 'metric' : 'us');
  if (!worked.ok) return worked;
  const { areaSqFt, lines } = worked.value;
  const json: AreaOutput = {
    format: 'swardway-area',
    version: 1,
    kind: typed.operands.KIND ?? '',
    answers: [
      { name: 'area-ft2', value: areaSqFt, unit: 'ft2' },
      { name: 'area-acre', value: areaSqFt / SQUARE_FEET_PER_ACRE, unit: 'acre' },
      { name: 'area-m2', value: areaSqFt * SQUARE_METRES_PER_SQUARE_FOOT, unit: 'm2' },
    ],
    working: lines,
    source: areaSource(working.value),
  };
  return ok({ json, text: () => textOf(json), remarks: [] });
}

function textOf({ answers, working, source }: AreaOutput): string {
  return [...tableLines(AMOUNTS, answers), '', ...working, '', `Source: ${source}`].join('\n');
}

function workingOf(typed: Typed): Result<AreaWorking> {
  const kind = typed.operands.KIND ?? '';
  const read = lengthReader(typed.flags.has('metric'));
  if (isPlainKind(kind)) return shapesOf(kind, typed, read);
  const names = OTHER_OPTIONS[kind];
  if (names === undefined) throw new UsageFault(`There is no shape "${kind}".`);
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
  const shapes: PlainShape[] = [];
  const figures: number[] = [];
  for (const name of names) {
    const length = positives([needed(typed, name)], `--${name}`, read);
    if (!length.ok) return length;
    figures.push(...length.value);
  }
  shapes.push(shapeOf(kind, figures, 'add'));
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
