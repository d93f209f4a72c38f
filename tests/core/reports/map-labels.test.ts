import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sheetsHtml } from '../../../core/reports/index.ts';
import { type Spot, spreadLabels } from '../../../core/reports/map-labels.ts';

const FRAME = { width: 700, height: 380 };
const RADIUS = 10;

function nearest(spots: readonly Spot[]): number {
  const gaps = spots.flatMap(([x, y], index) =>
    spots.slice(index + 1).map((each) => Math.hypot(each[0] - x, each[1] - y)),
  );
  return Math.min(...gaps);
}

test('labels that do not touch stay where they are', () => {
  const spots: readonly Spot[] = [
    [100, 100],
    [122, 100],
    [300, 200],
  ];
  expect(spreadLabels(spots, RADIUS, FRAME)).toEqual(spots);
});

test('two labels part along the line between them, by the same way each', () => {
  const [left, right] = spreadLabels(
    [
      [100, 100],
      [110, 100],
    ],
    RADIUS,
    FRAME,
  );
  // 22 apart about the middle of 105, and 0.05 more on each side.
  expect(left?.[0]).toBeCloseTo(93.95, 9);
  expect(right?.[0]).toBeCloseTo(116.05, 9);
  expect([left?.[1], right?.[1]]).toEqual([100, 100]);
});

test('thirty labels on one street, on one spot or in a corner can all be read', () => {
  const street = Array.from({ length: 30 }, (_, index): Spot => [200 + index * 5, 190 + (index % 2) * 3]);
  const heap = street.map((): Spot => [350, 190]);
  const corner = street.map((): Spot => [690, 370]);
  for (const spots of [street, heap, corner]) {
    const spread = spreadLabels(spots, RADIUS, FRAME);
    expect(nearest(spots)).toBeLessThan(2 * RADIUS);
    expect(nearest(spread)).toBeGreaterThanOrEqual(2 * RADIUS);
    expect(spreadLabels(spots, RADIUS, FRAME)).toEqual(spread);
  }
});

test('any forty places give labels apart from each other and inside the frame', () => {
  const spot = fc.tuple(fc.double({ min: 0, max: 700, noNaN: true }), fc.double({ min: 0, max: 380, noNaN: true }));
  fc.assert(
    fc.property(fc.array(spot, { minLength: 2, maxLength: 40 }), (spots) => {
      const spread = spreadLabels(spots, RADIUS, FRAME);
      expect(nearest(spread)).toBeGreaterThanOrEqual(2 * RADIUS);
      for (const [x, y] of spread) {
        expect(x).toBeGreaterThanOrEqual(RADIUS);
        expect(x).toBeLessThanOrEqual(FRAME.width - RADIUS);
        expect(y).toBeGreaterThanOrEqual(RADIUS);
        expect(y).toBeLessThanOrEqual(FRAME.height - RADIUS);
      }
    }),
    { seed: 7, numRuns: 60 },
  );
});

function mapOf(count: number, stepDeg: number): string {
  const points = Array.from({ length: count }, (_, index) => ({
    look: 'stop' as const,
    at: [-89.4 + index * stepDeg, 40] as const,
    label: String(index + 1),
  }));
  const blocks = [{ kind: 'map' as const, areas: [], points, route: [], units: 'us' as const }];
  return sheetsHtml([{ id: 'a', title: 'A', subtitle: '', invented: true, blocks }]);
}

test('a map draws a line from a moved number to its place, and none where nothing moved', () => {
  expect(mapOf(3, 0.001)).not.toContain('class="leader"');
  // 27 stops in a row of 648 px are 24.9 px apart: enough. 40 are 16.6 px apart.
  expect(mapOf(27, 0.001)).not.toContain('class="leader"');
  expect(mapOf(40, 0.001)).toContain('class="leader"');
});

test('rings are smaller from sixteen stops on', () => {
  expect(mapOf(15, 0.001)).toContain('r="12"');
  expect(mapOf(16, 0.001)).toContain('<circle class="stop" r="11"/><text');
  expect(mapOf(16, 0.001)).not.toContain('r="12"');
});
