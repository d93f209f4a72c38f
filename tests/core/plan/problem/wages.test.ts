import { expect, test } from 'vitest';
import { problemOf, sampleBook } from '../../../support/samples.ts';

const book = sampleBook('residential-day');

test('a rig has the wage of the book, or its own, for each of its crew', () => {
  const withRig = (more: object) =>
    problemOf({ ...book, rigs: book.rigs.map((rig) => ({ ...rig, crew: 1, ...more })) }).rigs[0]?.costPerMs ?? 0;
  const usual = withRig({});
  expect(usual).toBeGreaterThan(0);
  expect(withRig({ wagePerHour: book.prices.wagePerHour })).toBe(usual);
  // Twice the pay of one person, however it comes about; whole nano-dollars per millisecond leave one of rounding.
  expect(Math.abs(withRig({ wagePerHour: 2 * book.prices.wagePerHour }) - 2 * usual)).toBeLessThanOrEqual(1);
  expect(Math.abs(withRig({ crew: 2 }) - 2 * usual)).toBeLessThanOrEqual(1);
});
