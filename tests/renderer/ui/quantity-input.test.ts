import { describe, expect, test, vi } from 'vitest';

// Icons are many files; none is drawn here.
vi.mock('lucide-react', () => ({}));
const { readTyped, tidyFigure } = await import('../../../renderer/ui/index.ts');

const value = (kind: Parameters<typeof readTyped>[0], text: string, system: 'us' | 'metric' = 'us') => {
  const read = readTyped(kind, text, 'here', system);
  return read.ok ? read.value : read.error.code;
};

describe('what people type', () => {
  test('is read in the unit that is shown when none is typed', () => {
    expect(value('width', '36')).toBe(36);
    // 91.44 cm are 36 in (1 in = 2.54 cm exactly).
    expect(value('width', '91.44', 'metric')).toBeCloseTo(36, 9);
    // A gallon holds 3.785411784 L.
    expect(value('flow', '75.70823568', 'metric')).toBeCloseTo(20, 9);
    expect(value('flow', '20')).toBe(20);
    expect(value('minutes', '12')).toBe(12);
  });

  test('keeps its own unit whatever is shown', () => {
    expect(value('width', '3 ft', 'metric')).toBeCloseTo(36, 9);
    expect(value('area', '1/2 ac')).toBeCloseTo(21_780, 6);
    expect(value('minutes', '1 h 30 min')).toBe(90);
    expect(value('minutes', '1:30')).toBe(90);
    expect(value('clock', '7:20')).toBe(440);
  });

  test('that cannot be read says so', () => {
    expect(value('area', 'big')).toBe('quantity-unreadable');
    expect(value('number', '')).toBe('quantity-unreadable');
    expect(value('whole', '1.5')).toBe('quantity-out-of-range');
    expect(value('degrees', '200')).toBe('quantity-out-of-range');
    expect(value('degrees', '-89.44')).toBe(-89.44);
  });

  test.each(['0,25', '1,5', '0,250', ',5', '1,2345', '12,34,567', '1.250,5'])(
    'with a comma that may be a decimal sign, %s, is asked for again, never guessed',
    (text) => {
      for (const kind of ['number', 'fine-number', 'whole', 'degrees', 'area', 'money', 'temperature'] as const) {
        for (const system of ['us', 'metric'] as const) {
          expect([kind, value(kind, text, system)]).toEqual([kind, 'quantity-unreadable']);
        }
      }
    },
  );

  test('has commas between thousands', () => {
    expect([value('number', '1,250'), value('number', '-1,250.5'), value('whole', '12,500,000')]).toEqual([
      1250, -1250.5, 12_500_000,
    ]);
  });
});

test('figures are shown without zeros that say nothing', () => {
  expect(tidyFigure('690.0 lb')).toBe('690 lb');
  expect(tidyFigure('0.50 gal')).toBe('0.5 gal');
  expect(tidyFigure('0.0 ft')).toBe('0 ft');
  expect(tidyFigure('1,200 ft²')).toBe('1,200 ft²');
  expect(tidyFigure('20.05 gal')).toBe('20.05 gal');
  expect(tidyFigure('7:20')).toBe('7:20');
  expect(tidyFigure('$31.50')).toBe('$31.50');
  expect(tidyFigure('$30.00')).toBe('$30');
  expect(tidyFigure('-89.440030')).toBe('-89.44003');
});
