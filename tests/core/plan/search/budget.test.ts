import { expect, test } from 'vitest';
import { Budget } from '../../../../core/plan/search/budget.ts';

function budgetAt(seconds: number | undefined) {
  const time = { ms: 1000, stopped: false };
  const run = { clock: { nowMs: () => time.ms }, signal: { stopped: () => time.stopped } };
  return { time, budget: new Budget(seconds === undefined ? { iterations: 5 } : { seconds }, run, 100) };
}

test.each([
  [5, 6000, 7000],
  [100, 101_000, 106_000],
])('of %i s polishing ends with the time, and jobs left out are placed a moment longer', (seconds, end, last) => {
  const { time, budget } = budgetAt(seconds);
  const [polish, placing] = [budget.polishSignal(), budget.lastSignal()];
  const at = (ms: number) => {
    time.ms = ms;
    return [polish.stopped(), placing.stopped()];
  };
  expect(at(end - 1)).toEqual([false, false]);
  expect(at(end)).toEqual([true, false]);
  expect(at(last - 1)).toEqual([true, false]);
  expect(at(last)).toEqual([true, true]);
  // What comes late has its moment all the same.
  time.ms = last + 5000;
  const late = budget.lastSignal();
  expect(late.stopped()).toBe(false);
  time.ms += last - end;
  expect(late.stopped()).toBe(true);
});

test('without a time nothing but the word of the user ends them, and that at once', () => {
  const { time, budget } = budgetAt(undefined);
  const signals = [budget.polishSignal(), budget.lastSignal()];
  time.ms = 1e12;
  expect(signals.map((each) => each.stopped())).toEqual([false, false]);
  time.stopped = true;
  expect(signals.map((each) => each.stopped())).toEqual([true, true]);
});
