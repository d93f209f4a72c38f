import { describe, expect, test, vi } from 'vitest';
import { readingOf } from '../../../core/book/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import { formatterFor } from '../../../renderer/format/index.ts';
import { measureOf, midLawnRefill } from '../../../renderer/stores/index.ts';
import { sampleBook } from '../../support/samples.ts';
import { storedPlan } from '../../support/stored-plans.ts';

vi.mock('lucide-react', () => ({}));
const { placePanel, tourSteps } = await import('../../../renderer/tour/index.ts');

const book = sampleBook('mixed-day');
const plan = storedPlan('mixed-day');
const stepsOf = (of: Plan) =>
  tourSteps({ book, round: book.rounds[0]!, plan: of, measureOf, words: formatterFor(readingOf({ units: 'us' })) });

describe('the refill in the middle of a lawn', () => {
  test('is one that the plan has, with its zone begun and not done', () => {
    const found = midLawnRefill(plan)!;
    expect(found.isInZone).toBe(true);
    expect(found.day.activities).toContain(found.refill);
    const treated = found.day.activities.flatMap((each) =>
      each.kind === 'treat' && each.propertyId === found.refill.propertyId && each.zoneId === found.refill.zoneId
        ? [each]
        : [],
    );
    expect(treated.some((each) => each.endSec <= found.refill.startSec)).toBe(true);
    expect(treated.some((each) => each.startSec >= found.refill.endSec)).toBe(true);
  });

  test('is one between two zones where no zone is broken, and none where every lawn is done in one go', () => {
    const house = storedPlan('residential-day');
    const between = midLawnRefill(house)!;
    expect(between.stop.tasks.some((task) => task.endSec <= between.refill.startSec)).toBe(true);
    const days = house.days.map((day) => ({
      ...day,
      activities: day.activities.filter(({ kind }) => kind !== 'refill'),
    }));
    expect(midLawnRefill({ ...house, days })).toBeNull();
  });
});

describe('the tour', () => {
  test('has a step for every room and says what the plan says', () => {
    const steps = stepsOf(plan);
    expect(steps.map((each) => each.room)).toEqual(['ground', 'shed', 'round', 'day', 'day', 'paper']);
    const found = midLawnRefill(plan)!;
    const refill = steps.find((each) => each.id === 'refill')!;
    expect(refill.target).toMatchObject({ sec: found.refill.startSec, stop: { name: found.stop.name } });
    expect(refill.says).toContain(found.stop.name);
    expect(refill.says).toContain(formatterFor(readingOf({ units: 'us' })).clock(found.refill.startSec));
  });

  test('names a gate that is too narrow for the machine beside it', () => {
    const { target, says } = stepsOf(plan).find((each) => each.id === 'fit')!;
    const gates = book.properties.find((each) => each.id === target.stop?.propertyId)!.gates;
    const pair = gates.flatMap((gate) =>
      book.machines.filter(
        (machine) =>
          machine.transitWidthIn > gate.clearWidthIn &&
          says.includes(`${gate.clearWidthIn} in`) &&
          says.includes(`${machine.name} is ${machine.transitWidthIn} in`),
      ),
    );
    expect(pair.length).toBeGreaterThan(0);
  });

  test('goes on with a plan that has no day', () => {
    const steps = stepsOf({ ...plan, days: [] });
    expect(steps.map((each) => each.says === '')).toEqual(steps.map(() => false));
    expect(steps.find((each) => each.id === 'refill')?.target.sec).toBeUndefined();
  });
});

describe('the panel', () => {
  const screen = { width: 1440, height: 900 };
  const size = { width: 340, height: 220 };

  test('covers nothing of what it points at where a side has room, and is always in the window', () => {
    for (let left = 0; left <= 1300; left += 130) {
      for (let top = 0; top <= 800; top += 100) {
        const box = { left, top, width: 140, height: 60 };
        const at = placePanel(box, size, screen);
        const apart =
          at.left >= left + 140 || at.left + size.width <= left || at.top >= top + 60 || at.top + size.height <= top;
        expect(apart, JSON.stringify({ box, at })).toBe(true);
        expect(at.left >= 0 && at.left + size.width <= screen.width).toBe(true);
        expect(at.top >= 0 && at.top + size.height <= screen.height).toBe(true);
      }
    }
  });

  test('stands below rather than above, where the heading of a room is', () => {
    const row = { left: 320, top: 260, width: 780, height: 36 };
    expect(placePanel(row, size, { ...screen, width: 1120 }).top).toBe(260 + 36 + 14);
    expect(placePanel({ ...row, top: 700 }, size, { ...screen, width: 1120 }).top).toBe(700 - 220 - 14);
  });

  test('stands in the corner where there is nothing to point at, or no room beside it', () => {
    const corner = { left: 1440 - 340 - 14, top: 900 - 220 - 14 };
    expect(placePanel(null, size, screen)).toEqual(corner);
    expect(placePanel({ left: 0, top: 0, width: 1440, height: 900 }, size, screen)).toEqual(corner);
  });
});
