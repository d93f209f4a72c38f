import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Entries, SHEETS, type Sheet, workSheet } from '../../../core/calibrate/index.ts';

const sheetOf = (kind: string): Sheet => SHEETS.find((each) => each.kind === kind)!;

function work(kind: string, entries: Partial<Entries>) {
  return workSheet(sheetOf(kind), { values: {}, lists: {}, ...entries });
}

/** The answer of one name. */
function found(kind: string, name: string, values: Entries['values'], rest: Partial<Entries> = {}): number {
  const result = work(kind, { values, ...rest });
  if (!result.ok) throw new Error(`${result.error.detail} ${result.error.hint}`);
  const answer = result.value.answers.find((each) => each.name === name);
  if (answer === undefined) throw new Error(`${name} was not found`);
  return answer.value;
}

const printed = (value: number, decimals: number): number => Number(value.toFixed(decimals));

type Example = readonly [string, string, string, number, number, Entries['values'], Partial<Entries>?];

const EXAMPLES: readonly Example[] = [
  [
    'Albany County Weed and Pest: 222 in, 480 fl oz a minute in all, 5 mph is 20 GPA',
    'boom',
    'gpa',
    20,
    0,
    { 'total-gpm': 480 / 128, 'swath-ft': 222 / 12, mph: 5 },
  ],
  [
    'Cornell Cooperative Extension, grapes 7.6: 20 GPA, 4 mph, 20 in is 0.27 gpm',
    'boom',
    'gpm',
    0.27,
    2,
    { gpa: 20, mph: 4, 'spacing-in': 20 },
  ],
  [
    'NC State Extension: 20 GPA at 3 mph is 10 GPA at 6 mph',
    'speed',
    'new-gpa',
    10,
    6,
    { gpa: 20, mph: 3, 'new-mph': 6 },
  ],
  ['D. Gerken, OSU-Oklahoma City: 40 GPA is 0.92 gal per 1,000 ft2', 'boom', 'gal-per-1000', 0.92, 2, { gpa: 40 }],
  ['1/128 Method of Calibration (slides): 40 fl oz in 51 s are 40 GPA', 'catch', 'gpa', 40, 6, { oz: 40, seconds: 51 }],
  [
    'the same slides: 1 quart an acre is then 0.8 fl oz to the gallon',
    'catch',
    'product-per-gal',
    0.8,
    6,
    { oz: 40, 'product-per-acre': 32 },
  ],
  ['the same slides: a gallon covers 1/40 acre', 'catch', 'ft2-per-gal', 1089, 6, { oz: 40 }],
  [
    'Ohio State University Extension, Bulletin 817-00: 20 in apart is a course of 204 ft',
    'catch',
    'course-ft',
    204,
    0,
    { oz: 20, 'spacing-in': 20 },
  ],
  [
    'Florida study guide p. 213: gal in 660 ft x 66 / swath',
    'catch',
    'gpa',
    4.4,
    6,
    { 'used-gal': 2, 'course-ft': 660, 'swath-ft': 30 },
  ],
  [
    'W. Buhler, Spray Gun: 5.25 gal in the time of the walk are 228.7 GPA',
    'gun',
    'gpa',
    228.7,
    1,
    { 'advance-ft': 5, seconds: 78, 'caught-gal': 5.25 },
  ],
  [
    'W. Buhler, Spray Gun: a pass of 5 ft is a course of 200 ft',
    'gun',
    'course-ft',
    200,
    6,
    { 'advance-ft': 5, 'caught-gal': 5.25 },
  ],
  [
    'D. Gerken: 3.6 pints an acre are 1.3 fl oz on 1,000 ft2',
    'mix',
    'product-per-1000',
    1.3,
    1,
    { 'product-per-acre': 3.6 * 16 },
  ],
  [
    'Core Manual text: 500 gal at 2 lb to the 100 gal take 10 lb',
    'mix',
    'product-per-tank',
    10,
    6,
    { 'tank-gal': 500, 'product-per-100-gal': 2 },
    { productUnit: 'lb' },
  ],
  [
    'Agrochemical and Pesticide Safety p. 128: 2 lb ai an acre from an 80 % powder is 2.5 lb',
    'mix',
    'lb-per-acre',
    2.5,
    6,
    { 'ai-lb-per-acre': 2, 'ai-share': 0.8 },
  ],
  [
    'Limited Lawn and Ornamental practice questions: 3 fl oz to the gallon, 4 gal, 12 fl oz',
    'mix',
    'product-per-tank',
    12,
    6,
    { 'product-per-gal': 3, 'tank-gal': 4 },
  ],
  [
    'UMass Extension: 1 lb of nitrogen from 20-5-10 is 5.00 lb',
    'granular',
    'lb-per-1000',
    5,
    2,
    { 'nutrient-lb-per-1000': 1, 'nutrient-share': 0.2 },
  ],
  [
    'UMass Extension: two passes of 2.5 lb for 5 lb',
    'spreader',
    'lb-per-1000-per-pass',
    2.5,
    6,
    { 'lb-per-1000': 5, passes: 2 },
  ],
  [
    'University of Nebraska-Lincoln: 1 lb of nitrogen from 28-3-6 is 3.57 lb',
    'granular',
    'lb-per-1000',
    3.57,
    2,
    { 'nutrient-lb-per-1000': 1, 'nutrient-share': 0.28 },
  ],
  [
    'US Army MD0173: 10 lb ai an acre from a 5 % product is 200 lb',
    'granular',
    'lb-per-acre',
    200,
    6,
    { 'ai-lb-per-acre': 10, 'ai-share': 0.05 },
  ],
  [
    'spreader slides: 12 ft effective swath is 83 ft 4 in for 1,000 ft2',
    'spreader',
    'course-for-1000-ft',
    83.33,
    2,
    { 'swath-ft': 12 },
  ],
  [
    'label abstract 40896: 5.2 lb on 1,000 ft2, the label prints 225 lb an acre (226.5)',
    'granular',
    'lb-per-acre',
    226.5,
    1,
    { 'lb-per-1000': 5.2 },
  ],
  [
    'Iowa State University Extension A3-24: 40 ft, 6 mph, 70 % is 20.4 acres an hour',
    'capacity',
    'acres-per-hour',
    20.4,
    1,
    { 'swath-ft': 40, mph: 6, efficiency: 0.7 },
  ],
  [
    'progressiveforage.com: 30 ft, 5 mph, 60 % is 10.9 acres an hour',
    'capacity',
    'acres-per-hour',
    10.9,
    1,
    { 'swath-ft': 30, mph: 5, efficiency: 0.6 },
  ],
  [
    'Cornell, Sprayer Calibration: 200 ft at 3 mph take 45.5 s',
    'speed',
    'seconds',
    45.5,
    1,
    { 'course-ft': 200, mph: 3 },
  ],
  [
    'University of Arizona, Nozzles and Droplets: a blue 03 gives 0.30 gpm at 40 psi',
    'tip',
    'gpm',
    0.3,
    6,
    { psi: 40 },
    { tipSize: '03' },
  ],
];

describe('published examples', () => {
  it.each(EXAMPLES.map((each) => [each[0], each] as const))(
    '%s',
    (_, [, kind, name, value, decimals, values, rest]) => {
      expect(printed(found(kind, name, values, rest), decimals)).toBe(value);
    },
  );

  it('University of Nebraska-Lincoln: 6,000 ft2 of it take 21.42 lb (21.43 unrounded)', () => {
    const values = { 'nutrient-lb-per-1000': 1, 'nutrient-share': 0.28, 'area-ft2': 6000 };
    expect(printed(found('granular', 'total-lb', values), 2)).toBe(21.43);
  });
});

describe('worked out here', () => {
  it('a course for a wanted rate of the gun: 10.5 gal at 5.25 gal on 1,000 ft2 are 2,000 ft2, 400 ft of 5', () => {
    const values = { 'advance-ft': 5, 'caught-gal': 10.5, 'gal-per-1000': 5.25 };
    expect(found('gun', 'course-ft', values)).toBeCloseTo(400, 9);
  });

  it('a job of a full and a part tank: 130,000 ft2 at 2 gal are 260 gal, 200 and 60 with 60 x 0.37 / 2 = 11.1 fl oz', () => {
    const values = { 'tank-gal': 200, 'gal-per-1000': 2, 'product-per-1000': 0.37, 'area-ft2': 130_000 };
    expect(found('mix', 'full-tanks', values)).toBe(1);
    expect(found('mix', 'last-tank-gal', values)).toBeCloseTo(60, 9);
    expect(found('mix', 'last-tank-product', values)).toBeCloseTo(11.1, 9);
    expect(found('mix', 'product-per-tank', values)).toBeCloseTo(37, 9);
  });

  it('a job of whole tanks has a last tank of nothing', () => {
    const values = { 'tank-gal': 20, 'gal-per-1000': 1 / 3, 'area-ft2': 60_000 };
    expect(found('mix', 'full-tanks', values)).toBe(1);
    expect(found('mix', 'last-tank-gal', values)).toBe(0);
  });

  it('strength: 0.75 % of 30 gal is 0.225 gal of a pure liquid; powder by the weight of water', () => {
    const values = { 'tank-gal': 30, strength: 0.0075, concentrate: 1 };
    expect(found('mix', 'concentrate-gal', values)).toBeCloseTo(0.225, 12);
    expect(found('mix', 'concentrate-lb', values, { productUnit: 'lb' })).toBeCloseTo(30 * 8.34 * 0.0075, 12);
  });

  it('aerator: 10 tines on 40 in at 3 mph with 600 strokes a minute are 4 x 5.28 in apart', () => {
    const values = { 'width-in': 40, tines: 10, mph: 3, 'strokes-per-min': 600 };
    expect(found('aerator', 'holes-per-ft2', values)).toBeCloseTo(144 / (4 * 5.28), 9);
    expect(found('aerator', 'holes-per-ft2', { ...values, passes: 2 })).toBeCloseTo(288 / (4 * 5.28), 9);
  });

  it('bags are whole: 214.3 lb in bags of 50 lb are 5, 200 lb are 4', () => {
    expect(found('granular', 'bags', { 'lb-per-1000': 3.5715, 'area-ft2': 60_000, 'bag-lb': 50 })).toBe(5);
    expect(found('granular', 'bags', { 'lb-per-1000': 4, 'area-ft2': 50_000, 'bag-lb': 50 })).toBe(4);
  });

  it('a gun sprayed back to the middle: half of what is seen counts, and the full width would give half the rate', () => {
    const seen = found('gun', 'gal-per-1000', { 'seen-ft': 10, 'course-ft': 100, 'caught-gal': 2 });
    const trap = found('gun', 'gal-per-1000', { 'advance-ft': 10, 'course-ft': 100, 'caught-gal': 2 });
    expect(seen).toBeCloseTo(4, 12);
    expect(trap).toBeCloseTo(2, 12);
  });

  it('weigh-back, pans and the 5 % rule on one sheet', () => {
    // Middle 20: half is 10, reached 2.5 pans left and 4 right; 60 - 51.6 lb on 6.5 ft x 200 ft.
    const pans = [2, 8, 12, 18, 20, 19, 17, 14, 10];
    const values = { pans: 13, 'pan-spacing-ft': 1, 'before-lb': 60, 'after-lb': 51.6, 'course-ft': 200 };
    const result = work('spreader', { values: { ...values, 'want-lb-per-1000': 6.5 }, lists: { pans } });
    if (!result.ok) throw new Error(result.error.detail);
    const answers = Object.fromEntries(result.value.answers.map((each) => [each.name, each.value]));
    expect(answers['swath-ft']).toBeCloseTo(6.5, 12);
    expect(answers['lb-per-1000']).toBeCloseTo(8400 / 1300, 9);
    expect(answers['least-lb-per-1000']).toBeCloseTo(6.175, 12);
    expect(result.value.working.at(-1)).toMatch(/0\.6 % under, accepted/);
  });

  it('a rate off the wanted one: 0.3409 for 0.4 is 14.8 % under, and 5 x 0.3409 / 0.4 = 4.26 mph would match', () => {
    const values = { gpm: 0.25, mph: 5, 'spacing-in': 20, 'want-gal-per-1000': 0.4 };
    expect(found('boom', 'matching-mph', values)).toBeCloseTo((5 * 14.85) / 43.56 / 0.4, 9);
    const result = work('boom', { values });
    expect(result.ok && result.value.working.at(-2)).toMatch(
      /14\.8 % under: every product comes to 85\.2 % of its rate/,
    );
    const near = work('gun', {
      values: { 'course-ft': 200, 'advance-ft': 5, 'caught-gal': 2.1, 'want-gal-per-1000': 2 },
    });
    expect(near.ok && near.value.working.at(-1)).toMatch(/5\.0 % over: accepted/);
  });

  it('tips off the mean are named in the working', () => {
    const result = work('catch', { values: { oz: 21.25 }, lists: { oz: [20, 21, 20, 24] } });
    if (!result.ok) throw new Error(result.error.detail);
    const verdicts = result.value.working
      .filter((line) => line.startsWith('tip '))
      .map((line) => line.split(': ').at(-1));
    expect(verdicts).toEqual(['watch', 'even', 'watch', 'replace']);
  });

  it('a flow that no size has names the nearest two', () => {
    const result = work('tip', { values: { gpa: 20, mph: 4, 'spacing-in': 20, psi: 40 } });
    expect(result.ok && result.value.working.at(-1)).toMatch(/^nearest sizes: 025 .*, 03 /);
  });

  it('each line of working has names, figures and the answer; the source stands beside it', () => {
    const result = work('boom', { values: { gpm: 0.25, mph: 5, 'spacing-in': 20 } });
    if (!result.ok) throw new Error(result.error.detail);
    expect(result.value.working).toContain(
      'gpa = 5,940 × gpm / (mph × spacing-in) = 5,940 × 0.25 / (5 × 20) = 14.85 gal/acre',
    );
    expect(result.value.source).toContain('Cornell Cooperative Extension');
  });
});

type Rule = ReturnType<Sheet['rules']>[number];

const figure = fc.double({ min: 0.3, max: 9, noNaN: true });
/** A share stays under 1, and what divides is larger, so that few results are out of range. */
function fitting(sheet: Sheet, rule: Rule, name: string, raw: number): number {
  if (sheet.blanks.find((each) => each.name === name)?.reading === 'share') return raw / 10;
  return rule.below.includes(name) ? 10 * raw : raw;
}

describe('every rule of every sheet', () => {
  const rules = SHEETS.flatMap((sheet) => {
    const units = sheet.kind === 'mix' ? (['fl-oz', 'lb'] as const) : (['fl-oz'] as const);
    return units.flatMap((productUnit) =>
      sheet.rules({ values: {}, lists: {}, productUnit }).map((rule) => ({ sheet, rule, productUnit })),
    );
  });

  it.each(
    rules.map(
      (each) =>
        [`${each.sheet.kind}: ${each.rule.left} from ${each.rule.above} over ${each.rule.below}`, each] as const,
    ),
  )('%s gives back each figure that is left out', (_, { sheet, rule, productUnit }) => {
    const others = [...new Set([...rule.above, ...rule.below])];
    let worked = 0;
    fc.assert(
      fc.property(fc.array(figure, { minLength: others.length, maxLength: others.length }), (raw) => {
        const values = Object.fromEntries(others.map((name, index) => [name, fitting(sheet, rule, name, raw[index]!)]));
        const up = rule.above.reduce((all, name) => all * values[name]!, rule.factor / (rule.over ?? 1));
        const left = rule.below.reduce((all, name) => all / values[name]!, up);
        const whole: Entries['values'] = { ...values, [rule.left]: left };
        for (const unknown of Object.keys(whole)) {
          const given = Object.fromEntries(Object.entries(whole).filter(([name]) => name !== unknown));
          const result = workSheet(sheet, { values: given, lists: {}, productUnit });
          if (!result.ok) {
            expect(result.error.code).toBe('quantity-out-of-range');
            continue;
          }
          worked += 1;
          const answer = result.value.answers.find((each) => each.name === unknown);
          expect(answer!.value / whole[unknown]!).toBeCloseTo(1, 9);
        }
      }),
      { numRuns: 60 },
    );
    expect(worked).toBeGreaterThan(10);
  });

  it('names blanks of its sheet, and no blank is named twice', () => {
    for (const { sheet, rule } of rules) {
      const names = sheet.blanks.map((each) => each.name);
      expect(new Set(names).size).toBe(names.length);
      for (const name of [rule.left, ...rule.above, ...rule.below]) expect(names).toContain(name);
    }
  });
});

describe('figures that do not serve', () => {
  const refusal = (kind: string, entries: Partial<Entries>) => {
    const result = work(kind, entries);
    if (result.ok) throw new Error(`was accepted: ${JSON.stringify(result.value.answers)}`);
    return result.error;
  };

  it.each<readonly [string, string, Partial<Entries>, string, RegExp]>([
    ['missing', 'boom', { values: { gpm: 0.25, mph: 5 } }, 'request-invalid', /needs one of gpa, spacing-in/],
    ['nothing', 'boom', {}, 'request-invalid', /No figure/],
    [
      'contradicting',
      'boom',
      { values: { gpm: 0.25, mph: 5, 'spacing-in': 20, gpa: 20 } },
      'request-invalid',
      /gives 14\.85.*is 20/,
    ],
    ['all there', 'boom', { values: { gpa: 43.56, 'gal-per-1000': 1 } }, 'request-invalid', /nothing is left/],
    ['zero', 'boom', { values: { gpm: 0.25, mph: 0, 'spacing-in': 20 } }, 'quantity-out-of-range', /mph is 0/],
    ['negative', 'boom', { values: { gpm: 0.25, mph: -4, 'spacing-in': 20 } }, 'quantity-out-of-range', /mph is -4/],
    ['absurd', 'boom', { values: { gpm: 0.25, mph: 400, 'spacing-in': 20 } }, 'quantity-out-of-range', /mph is 400/],
    [
      'absurd answer',
      'boom',
      { values: { gpm: 400, mph: 0.1, 'spacing-in': 1 } },
      'quantity-out-of-range',
      /would come to/,
    ],
    [
      'gained weight',
      'spreader',
      { values: { 'before-lb': 50, 'after-lb': 51, 'course-ft': 100, 'swath-ft': 10 } },
      'quantity-out-of-range',
      /used-lb/,
    ],
    ['one weight', 'spreader', { values: { 'before-lb': 50 } }, 'request-invalid', /go together/],
    ['no such size', 'tip', { values: { psi: 40 }, tipSize: '07' }, 'request-invalid', /no tip size "07"/],
    [
      'pressure outside',
      'tip',
      { values: { psi: 20, 'least-psi': 30, 'most-psi': 60 }, tipSize: '03' },
      'quantity-out-of-range',
      /outside the range/,
    ],
    [
      'advance beyond',
      'gun',
      { values: { 'seen-ft': 5, 'advance-ft': 6, 'caught-gal': 2 } },
      'request-invalid',
      /gain more/,
    ],
  ])('%s', (_, kind, entries, code, words) => {
    const error = refusal(kind, entries);
    expect(error.code).toBe(code);
    expect(error.detail).toMatch(words);
    expect(error.hint.length).toBeGreaterThan(8);
  });

  it('rounded figures that agree within 1 % are no contradiction: 0.27 gpm for 0.2694', () => {
    expect(found('boom', 'gal-per-1000', { gpm: 0.27, mph: 4, 'spacing-in': 20, gpa: 20 })).toBeCloseTo(20 / 43.56, 12);
  });

  it('whatever is typed, an answer is a finite number or there is a refusal', () => {
    const wild = fc.oneof(
      figure,
      fc.double(),
      fc.constantFrom(0, -1, 1e-300, 1e300, Number.POSITIVE_INFINITY, Number.NaN),
    );
    for (const sheet of SHEETS) {
      const names = sheet.blanks.filter((each) => !each.onlyFound).map((each) => each.name);
      fc.assert(
        fc.property(fc.dictionary(fc.constantFrom(...names), wild, { maxKeys: 6 }), (values) => {
          const result = workSheet(sheet, { values: { ...values }, lists: {} });
          if (result.ok) for (const { value } of result.value.answers) expect(Number.isFinite(value)).toBe(true);
          else expect(['request-invalid', 'quantity-out-of-range']).toContain(result.error.code);
        }),
        { numRuns: 200 },
      );
    }
  });
});
