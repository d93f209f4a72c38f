import { describe, expect, it } from 'vitest';
import {
  withDrawnOver,
  withOutlineError,
  withSlope,
  withSlopeWorking,
  withStatedArea,
  withWorking,
} from '../../../renderer/rooms/ground/zone-edits.ts';
import { polygonFt, stated, zone } from '../../core/measure/lawns.ts';

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
