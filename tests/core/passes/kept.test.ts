import { describe, expect, test } from 'vitest';
import { keepFigures, keptFigures, passFigures } from '../../../core/passes/index.ts';
import { ringAt } from '../geometry/shapes.ts';
import { headOf } from './grounds.ts';

const lawn = (wide: number) => [
  [
    ringAt(
      [-83, 40],
      [
        [0, 0],
        [wide, 0],
        [wide, 20],
        [0, 20],
      ],
    ),
  ],
];

function figures(wide: number, swathM: number, angleDeg?: number) {
  const found = passFigures(
    { outline: lawn(wide), obstacles: [] },
    headOf(swathM),
    angleDeg === undefined ? {} : { angleDeg },
    'lawn',
  );
  if (!found.ok || found.value === null) throw new Error('no passes');
  return found.value;
}

describe('figures of passes', () => {
  test('are reckoned once for the same shape, head and direction', () => {
    const first = figures(31, 1.2);
    expect(figures(31, 1.2)).toBe(first);
    const before = keptFigures().length;
    for (const other of [figures(32, 1.2), figures(31, 1.3), figures(31, 1.2, 10)]) expect(other).not.toEqual(first);
    expect(keptFigures()).toHaveLength(before + 3);
  });

  test('that another thread knows are taken over, and not reckoned again', () => {
    const first = figures(33, 1.2);
    const [key] = keptFigures().find(([, each]) => each === first) ?? [''];
    const planted = { ...first, minutes: 12_345 };
    keepFigures([[key, planted]]);
    expect(figures(33, 1.2)).toBe(planted);
    keepFigures([[key, first]]);
  });

  test('of ground without an outline are none; of a head that cannot be driven an error', () => {
    expect(passFigures({ outline: [], obstacles: [] }, headOf(1.2), {}, 'lawn')).toEqual({ ok: true, value: null });
    expect(
      passFigures({ outline: lawn(31), obstacles: [] }, { ...headOf(1.2), speedMph: 0 }, {}, 'lawn'),
    ).toMatchObject({
      ok: false,
      error: { code: 'quantity-out-of-range', where: 'lawn' },
    });
  });

  test('hold what is covered, what is left and the worst place', () => {
    const found = figures(31, 1.2);
    expect(found.areaSqM).toBeCloseTo(620, 0);
    expect(found.appliedSqM).toBeGreaterThan(found.areaSqM);
    // Four corners that a round turn leaves, 0.31 m2, and a little at the ends of swaths.
    expect(found.handTrimSqM).toBeGreaterThan(4 * (1 - Math.PI / 4) * 0.36 - 0.001);
    expect(found.handTrimSqM).toBeLessThan(0.4);
    expect(found.worstPasses).toBeGreaterThanOrEqual(2);
  });

  test('of fifty thousand shapes are kept, and those last asked for longest', () => {
    const first = figures(34, 1.2);
    const [key = ''] = keptFigures().find(([, each]) => each === first) ?? [];
    keepFigures(Array.from({ length: 49_999 }, (_, index) => [`invented ${index}`, first] as const));
    expect(figures(34, 1.2)).toBe(first);
    keepFigures(Array.from({ length: 10 }, (_, index) => [`more ${index}`, first] as const));
    const kept = new Map(keptFigures());
    expect(kept.size).toBe(50_000);
    expect(kept.has(key)).toBe(true);
    expect(kept.has('invented 0')).toBe(false);
  });
});
