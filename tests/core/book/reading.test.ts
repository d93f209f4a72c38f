import { describe, expect, test } from 'vitest';
import { namesWithFigures, readingOf } from '../../../core/book/index.ts';
import { asRead } from '../../../core/units/index.ts';
import { sampleBook } from './sample.ts';

describe('how a book is read', () => {
  test('by what it says, else by a clock that goes with its units, the month first', () => {
    expect(readingOf({ units: 'us' })).toEqual({ units: 'us', clock: '12-hour', dates: 'month-first' });
    expect(readingOf({ units: 'metric' })).toEqual({ units: 'metric', clock: '24-hour', dates: 'month-first' });
    const said = { units: 'metric', clock: '12-hour', dates: 'day-first' } as const;
    expect(readingOf(said)).toEqual(said);
  });

  test('names that hold a figure are known, so that sentences leave them as they are', () => {
    const sample = sampleBook();
    const [lawn] = sample.properties;
    if (lawn === undefined) throw new Error('the sample has no lawn');
    const book = { ...sample, properties: [{ ...lawn, name: 'Within 200 ft' }] };
    expect(namesWithFigures(book)).toEqual(['Within 200 ft']);
    const told = asRead('Within 200 ft: 200 ft short', readingOf({ units: 'metric' }), namesWithFigures(book));
    expect(told).toBe('Within 200 ft: 61.0 m short');
  });
});
