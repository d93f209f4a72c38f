import { expect, test, vi } from 'vitest';
import type { FillPoint } from '../../../core/book/index.ts';
import { smallBook } from '../fake-host.ts';
import { SMALL_DAY } from '../small-day.ts';

vi.mock('lucide-react', () => ({}));
vi.mock('../../../renderer/map/index.ts', () => ({}));
const { routeOf } = await import('../../../renderer/scene/index.ts');

const shop: FillPoint = {
  id: 'shop',
  name: 'Shop',
  what: 'shop',
  at: [-89.5, 40],
  waterGpm: 20,
  visitMin: 5,
  minutesPerBag: 0.5,
  products: 'all',
};
const [first] = smallBook().properties;
const second = { ...first!, id: 'p2', parking: [-89.3, 40.1] as const };
const book = { ...smallBook(), fillPoints: [shop], properties: [first!, second] };

test('the way of a day goes out, between the stops, and home', () => {
  expect(routeOf(book, SMALL_DAY)).toEqual([
    { kind: 'out', from: shop.at, to: first!.parking },
    { kind: 'between', from: first!.parking, to: second.parking },
    { kind: 'home', from: second.parking, to: shop.at },
  ]);
});

test('a visit to a fill point in between is marked', () => {
  const activities = SMALL_DAY.activities.flatMap((each) =>
    each.kind === 'drive' && each.toPlaceId === 'p2'
      ? [
          { ...each, toPlaceId: 'shop' },
          { ...each, fromPlaceId: 'shop' },
        ]
      : [each],
  );
  expect(routeOf(book, { ...SMALL_DAY, activities }).map((leg) => leg.kind)).toEqual(['out', 'fill', 'fill', 'home']);
});

test('drives to places that the book no longer has are left out', () => {
  expect(routeOf({ ...book, properties: [first!] }, SMALL_DAY)).toHaveLength(1);
});
