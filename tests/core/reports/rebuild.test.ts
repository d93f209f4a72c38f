import { describe, expect, test } from 'vitest';
import { SHEETS, type Sheet, sheetText } from '../../../core/reports/index.ts';
import { SAMPLE_NAMES, type SampleName, sampleBook } from '../../support/samples.ts';
import { storedPlan } from '../../support/stored-plans.ts';
import { readDay } from './printed-sheets.ts';
import { expectDay } from './rebuilt.ts';

/** The three sheets of a day as text: run sheet, load tickets, truck list. */
function textsOf(name: SampleName, rig: number): readonly string[] {
  const [book, plan] = [sampleBook(name), storedPlan(name)];
  const day = plan.days[rig];
  if (day === undefined) throw new Error(`${name} has no such day`);
  return ['run-sheet', 'load-tickets', 'truck-list'].map((id) => {
    const kind = SHEETS.find((each) => each.id === id);
    if (kind?.scope !== 'day') throw new Error(`${id} is of a day`);
    const sheet: Sheet = kind.make({ scope: 'day', book, plan, day });
    return sheetText(sheet);
  });
}

describe('a stranger who has the sheets alone', () => {
  test.each(SAMPLE_NAMES.flatMap((name) => storedPlan(name).days.map((day, rig) => [name, day.rigName, rig] as const)))(
    'finds the totals of %s, %s',
    (name, _, rig) => {
      const [run = '', tickets = '', truck = ''] = textsOf(name, rig);
      const plan = storedPlan(name);
      const day = plan.days[rig];
      if (day === undefined) throw new Error('no such day');
      const read = readDay(run, tickets, truck);
      expectDay(name, day, read);
      if (plan.totals.days > 1) return;
      // A plan of one day: the same against the plan's own totals.
      expect(read.stops).toBe(plan.totals.stops);
      expect(read.refills).toBe(plan.totals.refills);
      expect(read.loads).toBe(plan.totals.loads);
      expect(Math.abs(read.dayMin - plan.totals.paidSec / 60)).toBeLessThanOrEqual(0.5);
    },
  );

  test('would notice a load, a stop, a refill or ground that is left out', () => {
    const [run = '', tickets = '', truck = ''] = textsOf('residential-day', 0);
    const day = storedPlan('residential-day').days[0];
    if (day === undefined) throw new Error('no such day');
    const wrong = (changed: readonly [string, string, string]): (() => void) => {
      return () => expectDay('residential-day', day, readDay(...changed));
    };
    expect(wrong([run, tickets, truck])).not.toThrow();
    expect(wrong([run.replace(/^.*Refill .*$/m, ''), tickets, truck])).toThrow();
    expect(wrong([run.replace(/^ *9 .*until.*$/m, ''), tickets, truck])).toThrow();
    expect(wrong([run.replace(/([\d,]+) ft² {2}1$/m, '9,999 ft²  1'), tickets, truck])).toThrow();
    expect(wrong([run, tickets.replace(/^Load 3 of 10: /m, 'Nothing: '), truck])).toThrow();
    expect(wrong([run, tickets.replace(/^(Water +)[\d.]+/m, '$116.0'), truck])).toThrow();
  });
});
