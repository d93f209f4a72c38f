import { describe, expect, it } from 'vitest';
import type { AreaWorking } from '../../../core/book/index.ts';
import {
  blankDraft,
  blankShape,
  draftOf,
  missingWords,
  readLengths,
  workingOf,
} from '../../../renderer/rooms/ground/field-work-draft.ts';

const WHOLE: readonly AreaWorking[] = [
  {
    kind: 'shapes',
    shapes: [
      { kind: 'rectangle', lengthFt: 50, widthFt: 30, take: 'add', note: 'back' },
      { kind: 'circle', diameterFt: 12, take: 'subtract', note: '' },
      { kind: 'trapezoid', sideFt: 1, otherSideFt: 2, apartFt: 3, take: 'add', note: '' },
      { kind: 'triangle', baseFt: 4, heightFt: 5, take: 'add', note: '' },
      { kind: 'ellipse', lengthFt: 6, widthFt: 7, take: 'add', note: '' },
    ],
  },
  { kind: 'offsets', rule: 'trapezoid', intervalFt: 10, offsetsFt: [0, 12, 5] },
  { kind: 'mean-radius', radiiFt: [5, 6, 7] },
];

describe('drafts of field work', () => {
  it.each(WHOLE.map((each) => [each.kind, each] as const))('of %s come back as they were', (_, working) => {
    expect(workingOf(draftOf(working))).toEqual(working);
    expect(missingWords(draftOf(working))).toBeNull();
  });

  it.each(['shapes', 'offsets', 'mean-radius'] as const)(
    'of %s begin without a figure and say what is missing',
    (kind) => {
      expect(workingOf(blankDraft(kind))).toBeNull();
      expect(missingWords(blankDraft(kind))).toMatch(/^(Enter|Add)/);
    },
  );

  it('are not whole before the last figure of the last shape', () => {
    const trapezoid = { ...blankShape('trapezoid'), figuresFt: [10, 12, null] };
    expect(workingOf({ kind: 'shapes', shapes: [trapezoid] })).toBeNull();
    expect(workingOf({ kind: 'shapes', shapes: [{ ...trapezoid, figuresFt: [10, 12, 8] }] })).not.toBeNull();
    expect(workingOf({ kind: 'shapes', shapes: [] })).toBeNull();
  });
});

describe('readLengths', () => {
  it.each([
    ['0, 12.5, 19', [0, 12.5, 19]],
    ['0 12.5  19 ft', [0, 12.5, 19]],
    ['0;12 ft;3', [0, 12, 3]],
    ['', []],
  ])('reads "%s"', (text, figures) => {
    expect(readLengths(text, 'offsets', 'us', 0)).toEqual({ ok: true, value: figures });
  });

  it('takes bare figures for metres where these are shown', () => {
    const read = readLengths('3, 6', 'offsets', 'metric', 0);
    expect(read.ok && read.value.map((each) => each * 0.3048)).toEqual([expect.closeTo(3, 9), expect.closeTo(6, 9)]);
  });

  it('names the figure that it cannot take', () => {
    expect(readLengths('3, x, 6', 'offsets', 'us', 0)).toMatchObject({
      ok: false,
      error: { where: 'offsets, figure 2' },
    });
    expect(readLengths('3, 0, 6', 'radii', 'us', 0.01)).toMatchObject({
      ok: false,
      error: { where: 'radii, figure 2' },
    });
    expect(readLengths('3, -1', 'offsets', 'us', 0).ok).toBe(false);
  });
});
