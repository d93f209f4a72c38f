import { expect, test, vi } from 'vitest';

// Leaflet needs a window; the figures of the grid do not need Leaflet.
vi.mock('lucide-react', () => ({}));
vi.mock('leaflet', () => ({}));
const { metresPerPixel, roundStep } = await import('../../../renderer/map/grid.ts');

test('one pixel of the whole-world tile is the equator over 256', () => {
  // EPSG:3857 uses a sphere of 6,378,137 m.
  expect(metresPerPixel(0, 0)).toBeCloseTo((2 * Math.PI * 6_378_137) / 256, 6);
});

test('a pixel is half as long one zoom closer, and shrinks with the cosine of the latitude', () => {
  expect(metresPerPixel(0, 1)).toBeCloseTo(metresPerPixel(0, 0) / 2, 9);
  expect(metresPerPixel(60, 10)).toBeCloseTo(metresPerPixel(0, 10) / 2, 6);
});

test('the scale bar shows a usual distance, at least as long as asked', () => {
  // 1 px = 1 m: 64 px are 210 ft, so the next usual distance is 500 ft = 152.4 px.
  expect(roundStep(1, 64, 'us')).toEqual({ words: '500 ft', px: expect.closeTo(152.4, 6) });
  expect(roundStep(1, 64, 'metric')).toEqual({ words: '100 m', px: 100 });
  expect(roundStep(10, 100, 'us').words).toBe('1 mi');
  expect(roundStep(10, 60, 'us').words).toBe('1/2 mi');
  expect(roundStep(10, 60, 'metric').words).toBe('1 km');
});

test('far out the longest distance is taken', () => {
  expect(roundStep(150_000, 64, 'us').words).toBe('100 mi');
});
