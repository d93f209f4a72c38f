import { describe, expect, it } from 'vitest';
import type { Book, Visit } from '../../../core/book/index.ts';
import { drivenLegs, wentStraight } from '../../../core/travel/index.ts';
import { sampleBook } from '../reach/sample.ts';

const base = sampleBook();
const [property] = base.properties;
if (property === undefined) throw new Error('the sample has no property');
const [first, second] = [
  { ...property, id: 'first', parking: [-83.1, 40.1] as const },
  { ...property, id: 'second', parking: [-83.2, 40.2] as const },
];
const [rig] = base.rigs;
const home = base.fillPoints.find((each) => each.id === rig?.homeId);

function visit(propertyId: string, arriveMin: number | undefined, drivenMin: number | undefined, more = {}): Visit {
  return {
    id: `${propertyId} ${arriveMin}`,
    on: '2027-04-01',
    roundId: 'round',
    rigId: rig?.id ?? '',
    propertyId,
    outcome: { kind: 'done', tasks: [] },
    ...(arriveMin === undefined ? {} : { arriveMin }),
    ...(drivenMin === undefined ? {} : { drivenMin }),
    note: '',
    ...more,
  };
}

function legsOf(visits: readonly Visit[]) {
  const book: Book = { ...base, properties: [first, second], visits };
  return drivenLegs(book).map(({ from, to, drivenSec, plannedSec }) => ({ from, to, drivenSec, plannedSec }));
}

describe('drives that were written down', () => {
  it('go from the home of the rig to the first lawn, then from lawn to lawn in the order of arrival', () => {
    expect(legsOf([visit('second', 600, 7, { plannedDriveMin: 5 }), visit('first', 480, 12)])).toEqual([
      { from: home?.at, to: first.parking, drivenSec: 720, plannedSec: null },
      { from: first.parking, to: second.parking, drivenSec: 420, plannedSec: 300 },
    ]);
  });

  it('a visit left out is no place to drive from, and one without a drive tells nothing', () => {
    const skipped = visit('first', 480, 12, { outcome: { kind: 'skipped', reason: 'locked' } });
    expect(legsOf([skipped, visit('second', 600, 7)])).toEqual([
      { from: home?.at, to: second.parking, drivenSec: 420, plannedSec: null },
    ]);
    expect(legsOf([visit('first', 480, undefined), visit('second', 600, 0)])).toEqual([]);
  });

  it('a day of which the order is not known tells nothing', () => {
    expect(legsOf([visit('first', undefined, 12), visit('second', 600, 7)])).toEqual([]);
    expect(legsOf([visit('first', 480, 12), visit('second', 600, 7, { on: '2027-04-02' })])).toHaveLength(2);
    expect(legsOf([visit('gone', 480, 12)])).toEqual([]);
  });

  it('a drive for which the plan had far more than the way takes went by a fill point', () => {
    const leg = { on: '', rigId: '', from: first.parking, to: second.parking, drivenSec: 900, plannedSec: 900 };
    expect(wentStraight(leg, 300)).toBe(false);
    expect(wentStraight(leg, 600)).toBe(true);
    expect(wentStraight({ ...leg, plannedSec: null }, 300)).toBe(true);
  });
});
