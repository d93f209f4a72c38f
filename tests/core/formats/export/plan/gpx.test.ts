import { gpx } from '@tmcw/togeojson';
import { describe, expect, it } from 'vitest';
import type { PlanSource } from '../../../../../core/formats/index.ts';
import { named, ODD_NAMES, smallSource, written } from './sources.ts';
import { type Orders, orderFaults, xmlOf } from './xml-order.ts';

/** The sequences of the GPX 1.1 schema (topografix.com/GPX/1/1/gpx.xsd, from memory), as far as points and routes go. */
const POINT = ['ele', 'time', 'magvar', 'geoidheight', 'name', 'cmt', 'desc', 'src', 'link', 'sym', 'type'];
const GPX: Orders = {
  gpx: ['metadata', 'wpt', 'rte', 'trk', 'extensions'],
  metadata: ['name', 'desc', 'author', 'copyright', 'link', 'time', 'keywords', 'bounds', 'extensions'],
  wpt: POINT,
  rtept: POINT,
  rte: ['name', 'cmt', 'desc', 'src', 'link', 'number', 'type', 'extensions', 'rtept'],
};

/** A file as togeojson reads it. */
function readBack(source: PlanSource, title?: string) {
  const document = xmlOf(written('gpx', source, title));
  const root = document.documentElement;
  if (root === null) throw new Error('no root');
  expect([root.namespaceURI, root.getAttribute('version')]).toEqual(['http://www.topografix.com/GPX/1/1', '1.1']);
  expect(orderFaults(root, GPX)).toEqual([]);
  const { features } = gpx(document as unknown as Document);
  return {
    points: features.filter((each) => each.geometry?.type === 'Point'),
    routes: features.filter((each) => each.geometry?.type === 'LineString'),
    routePoints: Array.from(root.getElementsByTagName('rtept')),
  };
}

describe('days as GPX', () => {
  it('are routes through every place in the order of the day', () => {
    const { routes, routePoints } = readBack(smallSource());
    // Shop, acre, birch, hydrant for water, back to birch, cedar, shop: the drives of the hand-made day.
    const [shop, acre, birch, hydrant, cedar] = [
      [-89.4, 40],
      [-89.41, 40],
      [-89.42, 40],
      [-89.41, 40.01],
      [-89.43, 40],
    ];
    expect(routes.map((each) => each.geometry)).toEqual([
      { type: 'LineString', coordinates: [shop, acre, birch, hydrant, birch, cedar, shop] },
    ]);
    expect(routes[0]?.properties).toMatchObject({ name: '2031-04-01 Rig North', type: 'day' });
    expect(routePoints.map((each) => each.getElementsByTagName('type')[0]?.textContent)).toEqual([
      ...['start', 'stop', 'stop', 'fill point', 'stop', 'stop', 'end'],
    ]);
  });

  it('have waypoints for stops, refills and fill points', () => {
    const { points } = readBack(smallSource());
    expect(points.map(({ properties }) => [properties?.type, properties?.name, properties?.cmt])).toEqual([
      ['stop', '1 acre', 'acre'],
      ['stop', '2 birch', 'birch'],
      ['stop', '3 cedar', 'cedar'],
      ['refill', 'Refill: birch house', 'birch'],
      ['refill', 'Refill: Mill hydrant', 'hydrant'],
      ['refill', 'Refill: cedar house', 'cedar'],
      ['fill point', 'Shop', 'shop'],
      ['fill point', 'Mill hydrant', 'hydrant'],
    ]);
    const [acre] = points;
    expect(acre?.properties?.desc.split('\n')).toEqual([
      '1 acre Lane',
      '7:20 am to 8:20 am',
      'front: Overseed with Rider, seeder, 4,000 ft²',
      'front: Spray one with Rider, boom, 6,000 ft²',
      'Gate side gate: 36 in, locked',
      'Watch for: pets',
      'Note: Bell is broken',
    ]);
  });

  it.each(ODD_NAMES)('hold %j as text', (name) => {
    const { points } = readBack(smallSource(named(name)), name);
    const kept = xmlKept(name);
    for (const { properties } of points.slice(0, 3)) expect(properties?.name).toContain(kept);
  });

  it('of a rig that goes nowhere are a route without points', () => {
    const { book, plan, days } = smallSource();
    const empty = days.map((day) => ({ ...day, stops: [], loads: [], activities: [] }));
    const { points, routePoints } = readBack({ book, plan, days: empty });
    expect([points, routePoints]).toEqual([[], []]);
  });
});

/** What XML can hold of a text; ends of lines as a parser gives them. */
function xmlKept(text: string): string {
  return Array.from(text, (each) =>
    /(?![\t\n\r\u0080-\u009f\u007f])\p{Cc}|\p{Cs}/u.test(each) ? '\ufffd' : each,
  ).join('');
}
