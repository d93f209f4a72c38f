import { beforeAll, describe, expect, test } from 'vitest';
import { SHEETS } from '../../../core/calibrate/index.ts';
import { buildFirst, here, jsonOf } from './support.ts';

type Amount = { readonly name: string; readonly value: number; readonly unit: string };
type Output = {
  readonly kind: string;
  readonly given: readonly Amount[];
  readonly answers: readonly Amount[];
  readonly working: readonly string[];
  readonly source: string;
  readonly combinations?: readonly { readonly size: string; readonly psi: number; readonly difference: number }[];
  readonly droplets?: string;
};

beforeAll(buildFirst, 120_000);

async function asked(command: 'calibrate' | 'area', words: readonly string[]): Promise<Output> {
  const run = await here([command, ...words, '--json']);
  expect(run.code, run.remarks).toBe(0);
  expect(run.remarks).toBe('');
  return jsonOf<Output>(run, command);
}

/** The answer of one name, rounded as it is printed. */
function answer(output: Output, name: string, decimals: number): string {
  const found = output.answers.find((each) => each.name === name);
  return found === undefined ? `no ${name}` : `${found.value.toFixed(decimals)} ${found.unit}`;
}

describe('calibrate', () => {
  test.each<readonly [string, string, string, number, string]>([
    // Cornell Cooperative Extension, Crop and Pest Management Guidelines (grapes) 7.6
    ['boom --gpa 20 --mph 4 --spacing-in 20', 'gpm', '0.27 gal/min', 2, 'Cornell'],
    // NC State Extension: 20 GPA at 3 mph is 10 GPA at 6 mph
    ['speed --gpa 20 --mph 3 --new-mph 6', 'new-gpa', '10.0 gal/acre', 1, 'Nova Scotia'],
    // Notes on the Core Manual, ch. 11: twice the flow, four times the pressure
    ['tip --gpm 0.2 --psi 40 --new-gpm 0.4', 'new-psi', '160 psi', 0, 'Core Manual'],
    // UMass Extension: 5 lb in two passes
    ['spreader --lb-per-1000 5 --passes 2', 'lb-per-1000-per-pass', '2.5 lb/1000ft2', 1, 'UMass'],
    // W. Buhler, Spray Gun
    ['gun --advance-ft 5 --seconds 77,79,78 --caught-gal 5.25', 'gpa', '228.7 gal/acre', 1, 'Buhler'],
    // 1/128 Method of Calibration (slides)
    ['catch --oz 40 --seconds 51', 'gpa', '40 gal/acre', 0, 'Ohio'],
    // Core Manual text, Calculating dilutions
    ['mix --tank-gal 500 --product-per-100-gal 2 --product-unit lb', 'product-per-tank', '10 lb', 0, 'dilutions'],
    // US Army MD0173
    ['granular --ai-lb-per-acre 10 --ai-share 5%', 'lb-per-acre', '200 lb/acre', 0, 'MD0173'],
    // Iowa State University Extension A3-24
    ['capacity --mph 6 --swath-ft 40 --efficiency 70%', 'acres-per-hour', '20.4 acre/h', 1, 'A3-24'],
    // 144 / (2 x 4)
    ['aerator --across-in 2 --along-in 4', 'holes-per-ft2', '18 holes/ft2', 0, 'arithmetic'],
  ])('%s', async (line, name, value, decimals, source) => {
    const output = await asked('calibrate', line.split(' '));
    expect(answer(output, name, decimals)).toBe(value);
    expect(output.source).toContain(source);
    expect(output.working.some((each) => each.startsWith(`${name} = `))).toBe(true);
  });

  test('every kind has its example above', () => {
    expect(SHEETS.map((each) => each.kind)).toEqual(
      'boom tip speed spreader gun catch mix granular capacity aerator'.split(' '),
    );
  });

  test('other units are converted: 0.25 gpm is 32 fl oz or 0.946353 L a minute, 20 in are 50.8 cm', async () => {
    const words = ['boom', '--gpm', '32 oz/min', '--mph', '8.04672 km/h', '--spacing-in', '50.8 cm'];
    const output = await asked('calibrate', words);
    expect(answer(output, 'gpa', 6)).toBe('14.850000 gal/acre');
    expect(output.given.map((each) => `${each.name} ${each.value.toFixed(6)} ${each.unit}`)).toEqual([
      'gpm 0.250000 gal/min',
      'spacing-in 20.000000 in',
      'mph 5.000000 mph',
    ]);
  });

  test('an answer can be given back as an option, and the first figure comes out again', async () => {
    const gpa = (await asked('calibrate', ['boom', '--gpm', '0.3', '--mph', '4.2', '--spacing-in', '15'])).answers.find(
      (each) => each.name === 'gpa',
    );
    const back = await asked('calibrate', ['boom', '--gpa', String(gpa?.value), '--mph', '4.2', '--spacing-in', '15']);
    expect(answer(back, 'gpm', 9)).toBe('0.300000000 gal/min');
  });

  test('which tip: nearest first, within the limits, droplets only repeated', async () => {
    const limits = '--least-psi 20 --most-psi 60 --least-mph 3 --most-mph 5 --spacing-in 20'.split(' ');
    const output = await asked('calibrate', [
      'tip',
      '--want-gal-per-1000',
      '0.4',
      ...limits,
      '--droplets',
      'as the maker says',
    ]);
    const list = output.combinations ?? [];
    expect(list.length).toBe(40);
    const off = list.map((each) => Math.abs(each.difference));
    expect(off).toEqual(off.toSorted((left, right) => left - right));
    for (const { psi } of list) expect(psi >= 20 && psi <= 60).toBe(true);
    expect(output.droplets).toBe('as the maker says');
    expect(answer(output, 'psi', 0)).toBe(`${list[0]?.psi} psi`);
  });

  test('for people: a table, the arithmetic, the source', async () => {
    const { out, code } = await here(['calibrate', 'boom', '--gpm', '0.25', '--mph', '5', '--spacing-in', '20']);
    expect(code).toBe(0);
    expect(out).toMatch(/^answer +value +unit\n/);
    expect(out).toMatch(/\ngpa +14\.85 +gal\/acre\n/);
    expect(out).toContain('= 5,940 × 0.25 / (5 × 20) = 14.85 gal/acre');
    expect(out).toMatch(/\nSource: .*Cornell/);
  });
});

describe('area', () => {
  test.each<readonly [string, string, number, string]>([
    // Core Manual, ch. 11
    ['rectangle --length-ft 1320 --width-ft 120', 'area-acre', 1, '3.6 acre'],
    // Virginia Turfgrass Council
    ['triangle --base-ft 40 --height-ft 80', 'area-ft2', 0, '1600 ft2'],
    // S. Stone-Schmidt, UC ANR, with all of pi
    ['circle --diameter-ft 40', 'area-ft2', 1, '1256.6 ft2'],
    // surveying thread, mathhelpforum.com 126576
    ['trapezoid --side-ft 19.4 --other-side-ft 39.6 --apart-ft 25', 'area-ft2', 1, '737.5 ft2'],
    // informedfarmers.com gives 312.8 with a factor of 0.8; pi / 4 is 307.1
    ['ellipse --metric --length-ft 23 --width-ft 17', 'area-m2', 1, '307.1 m2'],
    // quizall.hivanix.in, question 64713
    [
      'offsets --metric --interval-ft 30 --offsets-ft 0,2.65,3.80,3.75,4.65,3.60,5.00,5.80 --rule simpson',
      'area-m2',
      6,
      '781.000000 m2',
    ],
    // How to Measure a Putting Green: 305.27 with 3.14 and the mean rounded to 9.86
    [
      'radii --radii-ft 7.1,8.9,9.7,10.9,12.4,11.7,11.8,9.9,6.8,8.2,9.7,10.4,12.0,11.4,8.9,8.0',
      'area-ft2',
      1,
      '305.6 ft2',
    ],
  ])('%s', async (line, name, decimals, value) => {
    const output = await asked('area', line.split(' '));
    expect(answer(output, name, decimals)).toBe(value);
    expect(output.working.length).toBeGreaterThan(0);
    expect(output.source).not.toBe('');
  });

  test('sums of shapes: 80 x 60 less 10 x 20 and a circle of 12 yd, and a triangle more', async () => {
    const parts = ['--less', 'rectangle 10 x 20', '--less', 'circle 12 yd', '--plus', 'triangle 30, 20'];
    const output = await asked('area', ['rectangle', '--length-ft', '80', '--width-ft', '60', ...parts]);
    const expected = 4800 - 200 - Math.PI * 18 ** 2 + 300;
    expect(answer(output, 'area-ft2', 6)).toBe(`${expected.toFixed(6)} ft2`);
    expect(output.working).toHaveLength(5);
  });
});

describe('a command line that makes no sense ends with 2 and names the figure', () => {
  test.each<readonly [readonly string[], string]>([
    [['calibrate', 'mow'], 'There is no calibration "mow"'],
    [['calibrate', 'boom'], 'No figure is given'],
    [['calibrate', 'boom', '--gpm', '0.25', '--mph', '5'], 'needs one of gpa, spacing-in'],
    [['calibrate', 'boom', '--gpm', '0.25', '--mph', '5', '--spacing-in', '20', '--gpa', '20'], 'contradict'],
    [['calibrate', 'boom', '--bag-lb', '50'], 'has no --bag-lb'],
    [
      ['calibrate', 'tip', '--want-gpa', '20', '--spacing-in', '20', '--psi', '40'],
      'needs mph, or least-mph and most-mph',
    ],
    [['calibrate', 'mix', '--tank-gal', '50', '--product-unit', 'cups'], '--product-unit is one of'],
    [['area', 'star'], 'There is no shape "star"'],
    [['area', 'circle'], '--diameter-ft is missing'],
    [['area', 'circle', '--diameter-ft', '4', '--width-ft', '5'], 'has no --width-ft'],
    [['area', 'circle', '--diameter-ft', '40', '--less', 'rectangle 10'], '--less needs a shape'],
    [
      ['area', 'offsets', '--interval-ft', '3', '--offsets-ft', '1,2', '--rule', 'best'],
      '--rule is trapezoid or simpson',
    ],
  ])('%j', async (words, told) => {
    const run = await here([...words, '--json']);
    expect(run.code).toBe(2);
    expect(run.remarks).toContain(told);
    expect(jsonOf<{ error: { code: string } }>(run, 'failure').error.code).toBe('request-invalid');
  });
});

describe('figures that cannot be right end with 1', () => {
  test.each<readonly [readonly string[], string]>([
    [['calibrate', 'boom', '--gpm', '0.25', '--mph', '0', '--spacing-in', '20'], 'quantity-out-of-range'],
    [['calibrate', 'boom', '--gpm', '0.25', '--mph=-5', '--spacing-in', '20'], 'quantity-out-of-range'],
    [['calibrate', 'boom', '--gpm', '0.25', '--mph', '300', '--spacing-in', '20'], 'quantity-out-of-range'],
    [['calibrate', 'boom', '--gpm', '400', '--mph', '0.1', '--spacing-in', '1'], 'quantity-out-of-range'],
    [['calibrate', 'boom', '--gpm', 'much', '--mph', '5', '--spacing-in', '20'], 'quantity-unreadable'],
    [['calibrate', 'tip', '--size', '03', '--psi', '20', '--least-psi', '30'], 'quantity-out-of-range'],
    [['calibrate', 'spreader', '--pans', '9,9,9', '--pan-spacing-ft', '1'], 'quantity-out-of-range'],
    [['area', 'circle', '--diameter-ft', '0'], 'quantity-out-of-range'],
    [
      ['area', 'rectangle', '--length-ft', '10', '--width-ft', '10', '--less', 'rectangle 10 20'],
      'quantity-out-of-range',
    ],
    [['area', 'radii', '--radii-ft', '4,5'], 'quantity-out-of-range'],
    [['area', 'circle', '--diameter-ft', '2,5'], 'quantity-unreadable'],
  ])('%j is %s', async (words, code) => {
    const run = await here([...words, '--json']);
    expect(run.code).toBe(1);
    const { error } = jsonOf<{ error: { code: string; where: string } }>(run, 'failure');
    expect(error.code).toBe(code);
    expect(run.out + run.remarks).not.toMatch(/NaN|undefined/);
  });
});
