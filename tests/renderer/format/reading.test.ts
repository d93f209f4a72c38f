import { describe, expect, test } from 'vitest';
import { DEFAULT_SETTINGS } from '../../../core/contract/index.ts';
import { readingBy, weekBeginBy } from '../../../renderer/format/index.ts';

/** Clock, order of dates and first day of the week by region: Unicode CLDR, supplemental data (timeData, weekData), as Node's own ICU has them. */
describe('what the settings leave to the system goes by its locale', () => {
  test.each([
    ['en-US', '12-hour', 'month-first', 'sunday'],
    ['en-GB', '24-hour', 'day-first', 'monday'],
    ['en-AU', '12-hour', 'day-first', 'monday'],
    ['de-DE', '24-hour', 'day-first', 'monday'],
    ['ja-JP', '24-hour', 'month-first', 'sunday'],
  ])('%s', (locale, clock, dates, begin) => {
    expect(readingBy(DEFAULT_SETTINGS, locale)).toEqual({ units: 'us', clock, dates });
    expect(weekBeginBy('system', locale)).toBe(begin);
  });

  test('what is chosen goes before it', () => {
    const chosen = { units: 'metric', clock: '12-hour', dates: 'month-first' } as const;
    expect(readingBy(chosen, 'de-DE')).toEqual(chosen);
    expect(weekBeginBy('sunday', 'de-DE')).toBe('sunday');
  });
});
