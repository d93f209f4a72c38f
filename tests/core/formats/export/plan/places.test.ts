import { getIssues } from '@placemarkio/check-geojson';
import { kml } from '@tmcw/togeojson';
import type { Feature, FeatureCollection } from 'geojson';
import { describe, expect, it } from 'vitest';
import type { PlanSource } from '../../../../../core/formats/index.ts';
import { named, ODD_NAMES, smallSource, written } from './sources.ts';
import { type Orders, orderFaults, xmlOf } from './xml-order.ts';

/** The sequences of KML 2.2 (OGC 07-147r2, annex with the schema, from memory), as far as these files go. */
const FEATURE = ['name', 'visibility', 'open', 'address', 'description', 'TimeSpan', 'styleUrl', 'ExtendedData'];
const KML: Orders = {
  kml: ['Document'],
  Document: [...FEATURE, 'Folder'],
  Folder: [...FEATURE, 'Placemark'],
  Placemark: [...FEATURE, 'Point', 'LineString', 'Polygon', 'MultiGeometry'],
  ExtendedData: ['Data'],
  Data: ['displayName', 'value'],
  Point: ['coordinates'],
  LineString: ['coordinates'],
  LinearRing: ['coordinates'],
  Polygon: ['outerBoundaryIs', 'innerBoundaryIs'],
  outerBoundaryIs: ['LinearRing'],
  innerBoundaryIs: ['LinearRing'],
  MultiGeometry: ['Polygon'],
};

/** Features of a file, by a reader that is not the program's own; in both formats they must be the same ones. */
const READERS: Readonly<Record<string, (source: PlanSource, title?: string) => readonly Feature[]>> = {
  geojson: (source, title) => {
    const text = written('geojson', source, title);
    expect(getIssues(text)).toEqual([]);
    return (JSON.parse(text) as FeatureCollection).features;
  },
  kml: (source, title) => {
    const document = xmlOf(written('kml', source, title));
    const root = document.documentElement;
    if (root === null) throw new Error('no root');
    expect(root.namespaceURI).toBe('http://www.opengis.net/kml/2.2');
    expect(orderFaults(root, KML)).toEqual([]);
    return kml(document as unknown as Document, { skipNullGeometry: false }).features as readonly Feature[];
  },
};

const CASES = Object.entries(READERS);
const ofRole = (features: readonly Feature[], role: string) =>
  features.filter((each) => each.properties?.role === role);
const sum = (features: readonly Feature[], member: string): number =>
  features.reduce((all, each) => all + Number(each.properties?.[member]), 0);

describe.each(CASES)('days as %s', (_, read) => {
  it('hold route, stops, work, refills and fill points of the hand-made day', () => {
    const features = read(smallSource());
    expect(features.map((each) => each.properties?.role)).toEqual([
      ...['route', 'stop', 'work', 'work', 'stop', 'work', 'stop', 'work'],
      ...['refill', 'refill', 'refill', 'fill-point', 'fill-point'],
    ]);
    const stops = ofRole(features, 'stop');
    expect(stops.map(({ properties: p }) => [p?.name, p?.start, p?.end, Number(p?.treatedSqFt)])).toEqual([
      ['acre', '2031-04-01T07:20:00', '2031-04-01T08:20:00', 10_000],
      // 9,000 ft2 of which 90 are not reached.
      ['birch', '2031-04-01T08:30:00', '2031-04-01T10:16:40', 8910],
      ['cedar', '2031-04-01T10:26:40', '2031-04-01T10:50:58', 2000],
    ]);
    expect(stops.map((each) => each.geometry)).toEqual(
      [-89.41, -89.42, -89.43].map((west) => ({ type: 'Point', coordinates: [west, 40] })),
    );
    const [route] = ofRole(features, 'route');
    expect(route?.geometry.type === 'LineString' && route.geometry.coordinates).toHaveLength(7);
    expect(ofRole(features, 'refill')[1]?.geometry).toEqual({ type: 'Point', coordinates: [-89.41, 40.01] });
  });

  it('have the areas, times and outlines of the plan', () => {
    const source = smallSource();
    const features = read(source);
    const work = ofRole(features, 'work');
    const treated = source.days.reduce((all, day) => all + day.treatedSqFt, 0);
    expect(sum(work, 'treatedSqFt')).toBeCloseTo(treated, 3);
    expect(sum(ofRole(features, 'stop'), 'treatedSqFt')).toBeCloseTo(treated, 3);
    const plannedSec = source.days.flatMap((day) => day.stops.map((stop) => stop.leaveSec - stop.arriveSec));
    const toldSec = ofRole(features, 'stop').map(
      ({ properties }) => (Date.parse(`${properties?.end}Z`) - Date.parse(`${properties?.start}Z`)) / 1000,
    );
    // Both ends are rounded to whole seconds.
    for (const [index, sec] of plannedSec.entries())
      expect(Math.abs((toldSec[index] ?? 0) - sec)).toBeLessThanOrEqual(1);
    expect(new Set(work.map((each) => each.geometry?.type))).toEqual(new Set(['Polygon']));
    expect(ofRole(features, 'route').map((each) => each.properties?.invented)).toHaveLength(source.days.length);
  });

  it.each(ODD_NAMES)('hold %j as text', (name) => {
    const features = read(smallSource(named(name)), name);
    expect(features).toHaveLength(13);
  });

  it('of a rig that goes nowhere are a route without a line', () => {
    const { book, plan, days } = smallSource();
    const features = read({ book, plan, days: days.map((day) => ({ ...day, stops: [], loads: [], activities: [] })) });
    expect(features.map((each) => [each.properties?.role, each.geometry])).toEqual([['route', null]]);
  });
});

describe('names in KML', () => {
  it('never stand in a description, which viewers show as HTML', () => {
    const name = '<script>alert(1)</script>';
    const text = written(
      'kml',
      smallSource(() => name),
      name,
    );
    expect(text).not.toMatch(/<(description|script|Snippet)/);
    expect(READERS.kml?.(smallSource(() => name))[1]?.properties?.name).toBe(name);
  });
});
