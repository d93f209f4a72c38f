import { expect, test } from 'vitest';
import type { Plan, PlanDay } from '../../core/plan/result/index.ts';
import { SHEETS, sheetsHtml } from '../../core/reports/index.ts';
import { printWithChromium } from '../../electron/services/printer/index.ts';
import { describeWithChromium, findChromium } from '../browser/chromium.ts';
import { sampleBook } from '../support/samples.ts';
import { storedPlan } from '../support/stored-plans.ts';
import { middle } from './spread.ts';

const STOPS = 60;
const ROUNDS = 5;
const GOAL_MS = 3000;
const DAY_SHEETS = ['run-sheet', 'load-tickets', 'truck-list'];

/** The first day of the sample round twice over: nothing is planned here. */
function longDay(): { readonly plan: Plan; readonly day: PlanDay } {
  const plan = storedPlan('four-day-round');
  const [once] = plan.days;
  if (once === undefined) throw new Error('no day');
  const again = once.stops.map((each) => ({ ...each, number: each.number + once.stops.length }));
  const loads = once.loads.map((each) => ({ ...each, number: each.number + once.loads.length }));
  const activities = once.activities.filter((each) => each.kind !== 'evening');
  const day: PlanDay = {
    ...once,
    stops: [...once.stops, ...again],
    loads: [...once.loads, ...loads],
    activities: [...activities, ...once.activities.filter((each) => each.kind !== 'morning')],
  };
  return { plan: { ...plan, days: [day] }, day };
}

describeWithChromium(`printing the sheets of a day of ${STOPS} stops`, () => {
  test(`takes less than ${GOAL_MS} ms from the plan to the PDF`, async () => {
    const book = sampleBook('four-day-round');
    const { plan, day } = longDay();
    const times: number[] = [];
    let bytes = 0;
    for (let round = 0; round < ROUNDS; round += 1) {
      const started = performance.now();
      const sheets = SHEETS.flatMap((kind) =>
        kind.scope === 'day' && DAY_SHEETS.includes(kind.id) ? [kind.make({ scope: 'day', book, plan, day })] : [],
      );
      const printed = await printWithChromium(findChromium(), sheetsHtml(sheets));
      times.push(performance.now() - started);
      if (!printed.ok) throw new Error(printed.error.detail);
      bytes = printed.value.byteLength;
    }
    console.log(
      `${day.stops.length} stops, ${day.loads.length} loads: median ${middle(times).toFixed(0)} ms, ` +
        `slowest ${Math.max(...times).toFixed(0)} ms (goal ${GOAL_MS} ms, ratio ${(middle(times) / GOAL_MS).toFixed(2)}), ` +
        `${(bytes / 1e6).toFixed(1)} MB`,
    );
    expect(day.stops.length).toBeGreaterThanOrEqual(STOPS);
    expect(middle(times)).toBeLessThan(GOAL_MS);
  }, 120_000);
});
