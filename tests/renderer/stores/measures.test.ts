import { beforeEach, expect, test, vi } from 'vitest';
import { knownMeasure, measureInBackground, measureOf, useMeasures } from '../../../renderer/stores/index.ts';
import { smallBook } from '../fake-host.ts';

beforeEach(() => {
  measureInBackground(null);
});

test('a lawn is measured once for as long as it stays the same', () => {
  const [property] = smallBook().properties;
  expect(knownMeasure(property!)).toBeNull();
  const measure = measureOf(property!);
  expect(measure.treatableSqFt).toBe(8000);
  expect(measureOf(property!)).toBe(measure);
  expect(measureOf({ ...property! })).not.toBe(measure);
});

test('a book is measured to its end, and the sum is that of its lawns', async () => {
  const [property] = smallBook().properties;
  const properties = Array.from({ length: 500 }, (_, index) => ({ ...property!, id: `p${index}` }));
  measureInBackground({ ...smallBook(), properties });
  await vi.waitFor(() => expect(useMeasures.getState().done).toBe(500));
  expect(useMeasures.getState()).toMatchObject({ total: 500, treatableSqFt: 500 * 8000, attention: 0 });
});

test('a newer book ends the measuring of the older one', async () => {
  const [property] = smallBook().properties;
  const many = Array.from({ length: 3000 }, (_, index) => ({ ...property!, id: `p${index}` }));
  measureInBackground({ ...smallBook(), properties: many });
  measureInBackground({ ...smallBook(), properties: many.slice(0, 2) });
  await vi.waitFor(() => expect(useMeasures.getState()).toMatchObject({ done: 2, total: 2 }));
  await new Promise((later) => setTimeout(later, 50));
  expect(useMeasures.getState().total).toBe(2);
});
