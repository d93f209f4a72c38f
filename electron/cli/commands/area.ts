import { ok, type Result } from '../../../core/base/index.ts';
import { workedArea } from '../../../core/field-work/index.ts';
import { SQUARE_FEET_PER_ACRE, SQUARE_METRES_PER_SQUARE_FOOT } from '../../../core/units/index.ts';
import type { Answer, Command, Option, Typed } from '../command.ts';
import type { AreaOutput } from '../output/index.ts';
import { tableLines } from '../text/index.ts';
import { areaSource } from './area-shapes.ts';
import { AREA_KINDS, workingOf } from './area-working.ts';
import { AMOUNTS } from './calibrate-text.ts';

const figure = (name: string, words: string): Option => ({ name, value: 'LENGTH', words });

export const areaCommand: Command = {
  name: 'area',
  summary: 'Works out an area from what tape or wheel measured: plain shapes, offsets from a line, radii.',
  details: [
    'Lengths are in feet, or in metres with --metric; other units are converted: "12 yd", "3 ft 6 in". Parts are added with --plus and taken off with --less, each as often as needed: --less "rectangle 10 x 20" --less "circle 12".',
    "offsets: widths measured across a line at equal distances, 0 where the lawn ends in a point. Simpson's rule follows curved edges; with an even number of offsets the last gap is a trapezoid. radii: measured at equal angles from one point inside; the mean reads a little low where they differ much.",
  ],
  operands: [{ name: 'KIND', words: `one of ${AREA_KINDS.join(', ')}` }],
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
