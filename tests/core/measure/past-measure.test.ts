import { describe, expect, it } from 'vitest';
import type { Property } from '../../../core/book/index.ts';
import { lastChange, measureProperty, withPastMeasure } from '../../../core/measure/index.ts';
import { property, stated } from './lawns.ts';

const lawn = (areaSqFt: number, more: Partial<Property> = {}): Property =>
  property([stated('lawn', areaSqFt)], [], more);

describe('withPastMeasure', () => {
  it('keeps the earlier total with its date where another day finds another one', () => {
    const before = lawn(12_400, { measuredOn: '2025-03-02' });
    const after = withPastMeasure(before, { ...before, zones: lawn(12_950).zones }, '2027-05-04');
    expect(after.measuredOn).toBe('2027-05-04');
    expect(after.pastMeasures).toEqual([{ on: '2025-03-02', treatableSqFt: 12_400, how: 'stated: old card' }]);
  });

  it('keeps nothing for corrections of the same day', () => {
    const before = lawn(12_400, { measuredOn: '2027-05-04' });
    const after = withPastMeasure(before, { ...before, zones: lawn(12_950).zones }, '2027-05-04');
    expect(after.pastMeasures).toBeUndefined();
  });

  it('keeps an earlier total without a date where none was written down, and only once', () => {
    const first = withPastMeasure(lawn(12_400), lawn(12_950), '2027-05-04');
    expect(first.pastMeasures).toEqual([{ treatableSqFt: 12_400, how: 'stated: old card' }]);
    const second = withPastMeasure(first, { ...first, zones: lawn(13_000).zones }, '2027-05-04');
    expect(second.pastMeasures).toHaveLength(1);
  });

  it('gives back what it was handed where the total is the same', () => {
    const before = lawn(12_400, { measuredOn: '2025-03-02' });
    const after = { ...before, name: 'New name' };
    expect(withPastMeasure(before, after, '2027-05-04')).toBe(after);
  });

  it('dates a property that was never measured, and keeps no total of nothing', () => {
    expect(withPastMeasure(null, lawn(500), '2027-05-04')).toMatchObject({ measuredOn: '2027-05-04' });
    const filled = withPastMeasure(lawn(0), lawn(500), '2027-05-04');
    expect([filled.measuredOn, filled.pastMeasures]).toEqual(['2027-05-04', undefined]);
    const empty = lawn(0);
    expect(withPastMeasure(null, empty, '2027-05-04')).toBe(empty);
  });

  it('lets a date that the change brings stand', () => {
    const before = lawn(12_400, { measuredOn: '2025-03-02' });
    const after = withPastMeasure(before, lawn(12_950, { measuredOn: '2026-09-01' }), '2027-05-04');
    expect([after.measuredOn, after.pastMeasures?.[0]?.on]).toEqual(['2026-09-01', '2025-03-02']);
  });
});

describe('lastChange', () => {
  const changed = (errorSqFt?: number): Property =>
    lawn(12_950, {
      pastMeasures: [
        { on: '2025-03-02', treatableSqFt: 12_400, how: '', ...(errorSqFt === undefined ? {} : { errorSqFt }) },
      ],
    });

  it('says by how much the total changed', () => {
    const found = changed();
    // 550 of 12,400 ft2 are 4.4 %
    expect(lastChange(found, measureProperty(found))?.changeShare).toBeCloseTo(0.0444, 4);
  });

  it.each([
    [300, 400, true],
    [500, 400, false],
    [549, undefined, true],
    [551, undefined, false],
  ])('joins errors of %d and %s ft2 by the root of their squares', (now, past, more) => {
    const found = changed(past);
    const measure = { ...measureProperty(found), errorSqFt: now as never };
    expect(lastChange(found, measure)?.moreThanError).toBe(more);
  });

  it('says how far the error is known', () => {
    const verdict = (now: number | null, past?: number): string | undefined => {
      const found = changed(past);
      return lastChange(found, { ...measureProperty(found), errorSqFt: now as never })?.verdict;
    };
    expect(verdict(300, 400)).toBe('more than the likely error');
    expect(verdict(null, 400)).toBe('more than the likely error as far as it is known');
    expect(verdict(null, 600)).toBe('within the likely error');
    expect(verdict(null)).toBe('the likely error is not known');
  });

  it('does not judge where no error is known, and says nothing where there is no earlier total', () => {
    const found = changed();
    expect(lastChange(found, measureProperty(found))?.moreThanError).toBeNull();
    expect(lastChange(lawn(500), measureProperty(lawn(500)))).toBeNull();
  });
});
