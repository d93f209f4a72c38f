import { describe, expect, it } from 'vitest';
import { readBlank, readList } from '../../../core/calibrate/bench/read.ts';
import { isTipWish, tipWish } from '../../../core/calibrate/bench/tip-wish.ts';
import {
  type Blank,
  type Entries,
  SHEETS,
  type Sheet,
  TIP_SIZES,
  type TipWish,
  tipCombinations,
  workSheet,
} from '../../../core/calibrate/index.ts';

/** What the bench says, word for word: the working of a spreader and a tip, and every refusal of what was typed. */

const sheetOf = (kind: string): Sheet => SHEETS.find((each) => each.kind === kind)!;
const blankOf = (kind: string, name: string): Blank => sheetOf(kind).blanks.find((each) => each.name === name)!;
const work = (kind: string, entries: Partial<Entries>) =>
  workSheet(sheetOf(kind), { values: {}, lists: {}, ...entries });

function workingOf(kind: string, entries: Partial<Entries>): readonly string[] {
  const result = work(kind, entries);
  if (!result.ok) throw new Error(`${result.error.detail} ${result.error.hint}`);
  return result.value.working;
}

type Answer = { readonly ok: true } | { readonly ok: false; readonly error: Refusal };
type Refusal = { readonly code: string; readonly where: string; readonly detail: string; readonly hint: string };
/** Where something is refused, what is wrong, and what to do. */
function refusalOf(answer: Answer, code = 'request-invalid'): string {
  if (answer.ok) throw new Error('it was accepted');
  expect(answer.error.code).toBe(code);
  return `${answer.error.where}: ${answer.error.detail} ${answer.error.hint}`;
}

describe('working of a spreader', () => {
  const PASSES = 'wanted 4: 3.8 to 4.2 lb/1000ft2 passes';

  it('weighed back: 50 lb before the run and 46.5 after it are 3.5 lb', () => {
    expect(workingOf('spreader', { values: { 'before-lb': 50, 'after-lb': 46.5, 'area-ft2': 1000 } })[0]).toBe(
      'used-lb = before-lb - after-lb = 50 - 46.5 = 3.5 lb',
    );
  });

  it.each<readonly [readonly number[], string]>([
    [[9, 10], 'the runs differ by 10.0 %, within 10 %: they agree'],
    [[10, 9.5, 9.2], 'the runs differ by 8.0 %, within 10 %: they agree'],
    [[8.9, 10], 'the runs differ by 11.0 %, more than 10 %: repeat the runs'],
  ])('runs of %j lb', (runs, words) => {
    const values = { 'used-lb': runs.reduce((sum, each) => sum + each, 0) / runs.length, 'area-ft2': 1000 };
    expect(workingOf('spreader', { values, lists: { 'used-lb': runs } })).toContain(words);
  });

  it('one run differs from none', () => {
    const working = workingOf('spreader', { values: { 'used-lb': 9, 'area-ft2': 1000 }, lists: { 'used-lb': [9] } });
    expect(working.filter((line) => line.includes('differ'))).toEqual([]);
  });

  it('pans of 5, 10, 5, two feet apart: 5 is caught 2 ft to each side', () => {
    const pans = [5, 10, 5];
    expect(workingOf('spreader', { values: { pans: 20 / 3, 'pan-spacing-ft': 2 }, lists: { pans } })[0]).toBe(
      'swath-ft: between the points left and right that catch 5, half of the middle pan: 4 ft',
    );
  });

  it.each<readonly [number | null, string]>([
    [null, PASSES],
    [4, `${PASSES}; 4 is 0.0 % over, accepted`],
    [4.2, `${PASSES}; 4.2 is 5.0 % over, accepted`],
    [4.21, `${PASSES}; 4.21 is 5.2 % over, adjust the setting`],
    [3.8, `${PASSES}; 3.8 is 5.0 % under, accepted`],
    [3.79, `${PASSES}; 3.79 is 5.2 % under, adjust the setting`],
  ])('%s lb found where 4 is wanted', (found, words) => {
    const values = { 'want-lb-per-1000': 4, ...(found === null ? {} : { 'lb-per-1000': found }) };
    expect(workingOf('spreader', { values }).at(-1)).toBe(words);
  });

  it.each<readonly [Entries['values'], Entries['lists'], string]>([
    [{ 'before-lb': 50 }, {}, 'before-lb: before-lb and after-lb go together, and one of them is missing. Give both.'],
    [{ 'after-lb': 50 }, {}, 'before-lb: before-lb and after-lb go together, and one of them is missing. Give both.'],
    [
      { 'before-lb': 50, 'after-lb': 40, 'used-lb': 10 },
      {},
      'used-lb: Both weights and the pounds used are given. Give one or the other.',
    ],
    [
      { pans: 7, 'pan-spacing-ft': 1, 'swath-ft': 6 },
      { pans: [5, 10, 5] },
      'swath-ft: Both the pans and the swath are given. Give one or the other.',
    ],
    [
      { pans: 7 },
      { pans: [5, 10, 5] },
      'pans: pans and pan-spacing-ft go together, and one of them is missing. Give both.',
    ],
    [{ 'pan-spacing-ft': 1 }, {}, 'pans: pans and pan-spacing-ft go together, and one of them is missing. Give both.'],
  ])('%j is refused', (values, lists, words) => {
    expect(refusalOf(work('spreader', { values, lists }))).toBe(words);
  });
});

describe('working of a tip', () => {
  it('a size stands for its flow at 40 psi, with the colour of ISO 10625', () => {
    const result = work('tip', { values: { psi: 40 }, tipSize: '3' });
    expect(result.ok && result.value.working[0]).toBe('size 03, blue: 0.3 gal/min at 40 psi');
    expect(result.ok && result.value.source).toContain('University of Arizona');
    expect(result.ok && result.value.working.join()).not.toContain('nearest');
  });

  it('a flow names the sizes on both sides of it', () => {
    const result = work('tip', { values: { gpm: 0.3, psi: 40 } });
    expect(result.ok && result.value.working.at(-1)).toBe(
      'nearest sizes: 03 (blue, 0.3 gal/min), 025 (lilac, 0.25 gal/min)',
    );
    expect(result.ok && result.value.source).toContain('University of Arizona');
  });

  it('a pressure at either limit of the tip is within it', () => {
    for (const psi of [30, 50]) {
      expect(work('tip', { values: { 'least-psi': 30, 'most-psi': 50, psi }, tipSize: '03' }).ok).toBe(true);
    }
  });

  it.each<readonly [Entries['values'], string]>([
    [
      { 'least-psi': 30, psi: 29 },
      'psi: psi is 29 psi, outside the range of the tip. Stay at 30 psi or more: take another size or speed.',
    ],
    [
      { 'least-psi': 30, 'most-psi': 50, psi: 51 },
      'psi: psi is 51 psi, outside the range of the tip. Stay at 30 to 50 psi: take another size or speed.',
    ],
    [
      { 'most-psi': 50, psi: 40, 'new-psi': 60 },
      'new-psi: new-psi is 60 psi, outside the range of the tip. Stay at 0 to 50 psi: take another size or speed.',
    ],
  ])('%j is refused', (values, words) => {
    expect(refusalOf(work('tip', { values, tipSize: '03' }), 'quantity-out-of-range')).toBe(words);
  });

  it('a size that is not in the table, or one beside its flow, is refused', () => {
    expect(refusalOf(work('tip', { values: { psi: 40 }, tipSize: '99' }))).toBe(
      'size: There is no tip size "99". Sizes: 01, 015, 02, 025, 03, 04, 05, 06, 08, 10.',
    );
    expect(refusalOf(work('tip', { values: { psi: 40, 'gpm-at-40-psi': 0.3 }, tipSize: '03' }))).toBe(
      'size: Both the size and gpm-at-40-psi are given. Give one of them.',
    );
  });
});

describe('a wish for a tip', () => {
  const ENOUGH = { 'want-gpa': 43.56, 'spacing-in': 20, psi: 40, mph: 4 };
  const wish = (values: Entries['values'], sizes: readonly string[] = []) => tipWish({ values, lists: {} }, sizes);

  it('is one where a rate is wanted of the sheet of the tip', () => {
    expect(isTipWish(sheetOf('tip'), { 'want-gpa': 40 })).toBe(true);
    expect(isTipWish(sheetOf('tip'), { 'want-gal-per-1000': 1 })).toBe(true);
    expect(isTipWish(sheetOf('tip'), { gpa: 40 })).toBe(false);
    expect(isTipWish(sheetOf('boom'), { 'want-gpa': 40 })).toBe(false);
  });

  it('has one figure or a range, every size or those that are named, and half a mile an hour from speed to speed', () => {
    expect(wish(ENOUGH)).toMatchObject({
      ok: true,
      value: {
        wantedGalPer1000SqFt: 1,
        spacingIn: 20,
        leastPsi: 40,
        mostPsi: 40,
        leastMph: 4,
        mostMph: 4,
        stepMph: 0.5,
      },
    });
    const { psi: _psi, mph: _mph, ...rest } = ENOUGH;
    const ranges = { 'least-psi': 30, 'most-psi': 50, 'least-mph': 3, 'most-mph': 5, 'step-mph': 1 };
    const found = wish({ ...rest, ...ranges }, ['03', '4']);
    expect(found).toMatchObject({
      ok: true,
      value: { leastPsi: 30, mostPsi: 50, leastMph: 3, mostMph: 5, stepMph: 1 },
    });
    expect(found.ok && found.value.tips.map(({ size }) => size)).toEqual(['03', '04']);
  });

  it.each<readonly [string, Entries['values'], readonly string[], string]>([
    [
      'the rate twice',
      { ...ENOUGH, 'want-gal-per-1000': 1 },
      [],
      'want-gpa: The wanted rate is given twice. Give one.',
    ],
    [
      'no spacing',
      { 'want-gpa': 40, psi: 40, mph: 4 },
      [],
      'spacing-in: spacing-in is missing. Give the spacing of the tips.',
    ],
    [
      'a figure that is found',
      { ...ENOUGH, gpm: 0.3 },
      [],
      'gpm: gpm is worked out where a rate is wanted. Leave it out.',
    ],
    [
      'no pressure',
      { 'want-gpa': 40, 'spacing-in': 20, mph: 4 },
      [],
      'psi: The choice of tips needs psi, or least-psi and most-psi. Give one or the other.',
    ],
    [
      'a pressure beside a range',
      { ...ENOUGH, 'least-psi': 30, 'most-psi': 50 },
      [],
      'psi: The choice of tips needs psi, or least-psi and most-psi. Give one or the other.',
    ],
    [
      'half a range',
      { 'want-gpa': 40, 'spacing-in': 20, psi: 40, 'least-mph': 3 },
      [],
      'mph: The choice of tips needs mph, or least-mph and most-mph. Give one or the other.',
    ],
    [
      'a size that is none',
      ENOUGH,
      ['03', '99'],
      'size: There is no tip size "99". Sizes: 01, 015, 02, 025, 03, 04, 05, 06, 08, 10.',
    ],
  ])('%s is refused', (_, values, sizes, words) => {
    expect(refusalOf(wish(values, sizes))).toBe(words);
  });

  const RANGES = { 'least-psi': 20, 'most-psi': 60, 'least-mph': 3, 'most-mph': 5 };
  const choice = (values: Entries['values']) => {
    const asked = wish({ 'want-gpa': 43.56, 'spacing-in': 20, ...RANGES, ...values });
    if (!asked.ok) throw new Error(asked.error.detail);
    return tipCombinations(asked.value);
  };
  it.each<readonly [Entries['values'], string]>([
    [
      { 'least-psi': 61 },
      'choice of tips, pressure: The least pressure, 61 psi, is above the most, 60 psi. Exchange them.',
    ],
    [{ 'least-mph': 6 }, 'choice of tips, speed: The least speed, 6 mph, is above the most, 5 mph. Exchange them.'],
    [
      { 'step-mph': 0.001 },
      'choice of tips, step of speed: Steps of 0.001 mph make more than 1000 speeds. Take longer steps.',
    ],
  ])('%j is refused', (values, words) => {
    expect(refusalOf(choice(values), 'quantity-out-of-range')).toBe(words);
  });

  it('a range of one pressure and one speed is chosen from; the last speed of a range is looked at', () => {
    expect(choice({ 'least-psi': 60, 'least-mph': 5 }).ok).toBe(true);
    const speeds = (values: Entries['values']) => {
      const found = choice(values);
      return found.ok ? [...new Set(found.value.map(({ mph }) => mph))].toSorted((left, right) => left - right) : [];
    };
    expect(speeds({ 'step-mph': 1 })).toEqual([3, 4, 5]);
    expect(speeds({ 'step-mph': 1.5 })).toEqual([3, 4.5, 5]);
    expect(speeds({ 'step-mph': 0.002 })).toHaveLength(1001);
  });

  const WISH: TipWish = {
    ...{ wantedGalPer1000SqFt: 1, spacingIn: 20, leastPsi: 20, mostPsi: 60, leastMph: 3, mostMph: 5, stepMph: 1 },
    tips: TIP_SIZES,
  };
  it.each<readonly [Partial<TipWish>, string]>([
    [{ wantedGalPer1000SqFt: 0 }, 'wanted rate, gal per 1,000 ft²'],
    [{ spacingIn: 0 }, 'spacing, in'],
    [{ leastPsi: 0 }, 'least pressure, psi'],
    [{ mostPsi: -1 }, 'most pressure, psi'],
    [{ leastMph: 0 }, 'least speed, mph'],
    [{ mostMph: Number.NaN }, 'most speed, mph'],
    [{ stepMph: 0 }, 'step of speed, mph'],
    [{ tips: [] }, 'number of tips'],
  ])('%j is refused by name', (change, name) => {
    const words = refusalOf(tipCombinations({ ...WISH, ...change }), 'quantity-out-of-range');
    expect(words).toContain('choice of tips');
    expect(words).toContain(name);
  });
});

describe('what cannot be read', () => {
  const read = (kind: string, name: string, text: string) => readBlank(blankOf(kind, name), text, 'fl-oz');

  it.each<readonly [string, string, string, string]>([
    ['boom', 'psi', 'forty', 'psi: "forty" cannot be read as a number. Write it like this: 40 psi.'],
    ['boom', 'psi', '4-0', 'psi: "4-0" cannot be read as a number. Write it like this: 40 psi.'],
    ['boom', 'tips', 'many', 'tips: "many" cannot be read as a number. Write it like this: 40 tips.'],
    ['spreader', 'pans', 'many', 'pans: "many" cannot be read as a number. Write it like this: 40.'],
    [
      'boom',
      'tips',
      'x'.repeat(80),
      `tips: "${'x'.repeat(60)}" cannot be read as a number. Write it like this: 40 tips.`,
    ],
  ])('%s, %s: %j', (kind, name, text, words) => {
    expect(refusalOf(read(kind, name, text), 'quantity-unreadable')).toBe(words);
  });

  it('a stopwatch has minutes and seconds and nothing beside them', () => {
    expect(read('speed', 'seconds', '12:18')).toMatchObject({ ok: true, value: 738 });
    expect(read('speed', 'seconds', '1:18.45')).toMatchObject({ ok: true, value: 78.45 });
    for (const odd of ['a1:18', '1:18x', '1:60', ':18']) expect(read('speed', 'seconds', odd).ok).toBe(false);
  });

  it('a list of nothing but commas has no figure; blanks between them are passed over', () => {
    const list = (text: string) => readList(blankOf('catch', 'oz'), text, 'fl-oz');
    expect(refusalOf(list(' , ;'), 'quantity-unreadable')).toBe(
      'oz: There is no figure here. Write several with commas between: 77, 79, 78.',
    );
    expect(list('77 , 79;; 78 ')).toEqual({ ok: true, value: [77, 79, 78] });
    expect(list('77 fl oz,, 79 fl oz; ')).toEqual({ ok: true, value: [77, 79] });
  });
});
