import { describe, expect, it } from 'vitest';
import {
  END_OF_DAY_MIN,
  withDrawnOver,
  withHours,
  withOutlineError,
  withSlope,
  withSlopeWorking,
  withStatedArea,
  withWeekday,
  withWorking,
} from '../../../renderer/rooms/ground/zone-edits.ts';
import { polygonFt, property, stated, zone } from '../../core/measure/lawns.ts';

const drawn = zone(
  'lawn',
  polygonFt([
    [0, 0],
    [100, 0],
    [100, 50],
  ]),
);

describe('edits of a zone', () => {
  it('work the area out anew from its field work, and keep both', () => {
    const shapes = [{ kind: 'rectangle', lengthFt: 50, widthFt: 30, take: 'add', note: '' }] as const;
    const after = withWorking(stated('lawn', 10), { kind: 'shapes', shapes });
    expect(after?.shape).toEqual({
      kind: 'stated',
      areaSqFt: 1500,
      method: 'plain shapes (1)',
      working: { kind: 'shapes', shapes },
    });
    const longer = withWorking(after ?? drawn, { kind: 'shapes', shapes: [{ ...shapes[0], lengthFt: 60 }] });
    expect(longer?.shape).toMatchObject({ areaSqFt: 1800 });
    expect(withWorking(drawn, { kind: 'shapes', shapes: [{ ...shapes[0], take: 'subtract' }] })).toBeNull();
  });

  it('forget the field work where a figure is typed over it', () => {
    const worked = withWorking(stated('lawn', 10), { kind: 'mean-radius', radiiFt: [5, 5, 5] });
    expect(withStatedArea(worked ?? drawn, 900, 'old card').shape).toEqual({
      kind: 'stated',
      areaSqFt: 900,
      method: 'old card',
    });
    const sloped = withSlopeWorking(drawn, { kind: 'rise-run', riseFt: 1, runFt: 1 });
    expect(sloped?.slopeDeg).toBeCloseTo(45, 9);
    expect(withSlope(sloped ?? drawn, 10)).toEqual({ ...drawn, slopeDeg: 10 });
    expect(withSlopeWorking(drawn, { kind: 'level', degrees: 80 })).toBeNull();
  });

  it('set and take away what an outline says of itself', () => {
    const told = withDrawnOver(withOutlineError(drawn, 2), 'aerial picture');
    expect(told.shape).toMatchObject({ outlineErrorFt: 2, drawnOver: 'aerial picture' });
    expect(withDrawnOver(withOutlineError(told, null), '')).toEqual(drawn);
    expect(withOutlineError(stated('card', 5), 2)).toEqual(stated('card', 5));
  });
});

describe('when work may be done', () => {
  const any = property([drawn]);

  it('keeps hours, and none where they are the whole day', () => {
    const morning = withHours(any, 480, 720);
    expect(morning?.hours).toEqual({ openMin: 480, closeMin: 720 });
    expect(withHours(morning ?? any, 0, END_OF_DAY_MIN)).toEqual(any);
    expect(withHours(any, 720, 720)).toBeNull();
  });

  it('takes days of the week away and gives them back, but never all', () => {
    const noMonday = withWeekday(any, 'monday', false);
    expect(noMonday?.weekdays).toEqual(['tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday']);
    expect(withWeekday(noMonday ?? any, 'monday', true)).toEqual(any);
    const sunday = { ...any, weekdays: ['sunday' as const] };
    expect(withWeekday(sunday, 'sunday', false)).toBeNull();
    expect(withWeekday(sunday, 'monday', true)?.weekdays).toEqual(['monday', 'sunday']);
  });
});
