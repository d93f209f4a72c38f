import { describe, expect, test } from 'vitest';
import { PLAIN_ROADS } from '../../../core/book/index.ts';
import type { RoadsStatus } from '../../../core/contract/index.ts';
import { ROAD_CLASSES } from '../../../core/roads/index.ts';
import type { RouteLeg } from '../../../renderer/map/index.ts';
import { readAreas, readCorners } from '../../../renderer/rooms/shed/roads/avoid-corners.ts';
import { arrivalColumns, truckColumns } from '../../../renderer/rooms/shed/roads/driving.tsx';
import { CLASS_WORDS, classWords, factorWords, pairsWords } from '../../../renderer/rooms/shed/roads/words.ts';
import { routeCaption } from '../../../renderer/scene/use-ways.ts';

describe('corners of an area to drive round', () => {
  test('are latitude and longitude, line by line or with semicolons, and the ring is closed', () => {
    const ring = [
      [-89.413, 40.0381],
      [-89.411, 40.0381],
      [-89.412, 40.037],
      [-89.413, 40.0381],
    ];
    const lines = '40.0381, -89.4130\n 40.0381,-89.4110 \n\n40.0370 -89.4120';
    expect(readCorners(lines)).toEqual({ ok: true, value: { type: 'Polygon', coordinates: [ring] } });
    expect(readCorners(lines.replaceAll('\n', ';'))).toEqual(readCorners(lines));
  });

  test.each([
    ['', 'geometry-invalid'],
    ['40, -89; 41, -89', 'geometry-invalid'],
    ['40, -89; 41, -89; here', 'quantity-unreadable'],
    ['95, -89; 41, -89; 42, -88', 'quantity-unreadable'],
    ['40, -190; 41, -89; 42, -88', 'quantity-unreadable'],
    ['1e9, 2; 41, -89; 42, -88', 'quantity-unreadable'],
    ['<b>; 1,1; 2,2', 'quantity-unreadable'],
  ])('%j is refused', (text, code) => {
    const read = readCorners(text);
    expect(!read.ok && read.error.code).toBe(code);
  });
});

describe('areas of a GeoJSON file', () => {
  const ring = [
    [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 0],
    ],
  ];
  const polygon = { type: 'Polygon', coordinates: ring };

  test('are its polygons, with their names or that of the file; points and lines are passed over', () => {
    const features = [
      { type: 'Feature', properties: { name: 'School' }, geometry: polygon },
      { type: 'Feature', properties: null, geometry: { type: 'Point', coordinates: [0, 0] } },
      { type: 'Feature', properties: {}, geometry: { type: 'MultiPolygon', coordinates: [ring] } },
    ];
    const read = readAreas(JSON.stringify({ type: 'FeatureCollection', features }), 'town.geojson');
    expect(read.ok && read.value.map(({ name, area }) => [name, area.type])).toEqual([
      ['School', 'Polygon'],
      ['town.geojson', 'MultiPolygon'],
    ]);
    expect(readAreas(JSON.stringify(features[0]), 'one.geojson').ok).toBe(true);
  });

  test.each([
    ['no text of that kind', 'hello', 'not-json'],
    ['nothing in it', '{"type":"FeatureCollection","features":[]}', 'format-invalid'],
    ['a list of numbers', '[1,2]', 'format-invalid'],
    [
      'a polygon off the earth',
      JSON.stringify({
        geometry: {
          type: 'Polygon',
          coordinates: [
            [
              [500, 0],
              [1, 0],
              [1, 1],
              [500, 0],
            ],
          ],
        },
      }),
      'format-invalid',
    ],
  ])('%s is refused', (_, text, code) => {
    const read = readAreas(text, 'town.geojson');
    expect(!read.ok && read.error.code).toBe(code);
  });
});

describe('words about roads', () => {
  test('every class of road has a name of its own', () => {
    const names = ROAD_CLASSES.map((each) => CLASS_WORDS[each]);
    expect(new Set(names).size).toBe(ROAD_CLASSES.length);
    expect(classWords('hoverway')).toBe('hoverway');
  });

  test('tell how many ways are by road, and how many are not', () => {
    const status = { places: 4, pairs: 12 } as RoadsStatus;
    expect(pairsWords({ ...status, byRoad: 12 })).toBe('All 12 ways between 4 places are by road.');
    expect(pairsWords({ ...status, byRoad: 0 })).toContain('are an estimate');
    expect(pairsWords({ ...status, byRoad: 5 })).toContain(
      '5 of 12 ways between places are by road; 7 are an estimate',
    );
    expect(pairsWords({ ...status, places: 1, pairs: 0, byRoad: 0 })).toContain('no two places');
    expect([factorWords(1.25), factorWords(0.8), factorWords(1.001)]).toEqual([
      'takes 25 % longer',
      'takes 20 % less',
      'as reckoned',
    ]);
  });

  test('the map says whether its lines follow roads, and whose', () => {
    const straight: RouteLeg = { kind: 'between', from: [0, 0], to: [1, 1] };
    const along: RouteLeg = {
      ...straight,
      along: [
        [0, 0],
        [0, 1],
        [1, 1],
      ],
    };
    expect(routeCaption([straight, straight], '')).toBe('straight lines, not roads');
    expect(routeCaption([along], 'whose')).toBe('along roads · whose');
    expect(routeCaption([along, straight], 'whose')).toBe('along roads; dotted: straight lines · whose');
  });
});

test('limits of the truck and of arriving are set one by one, and taken away again', () => {
  for (const column of [...truckColumns, ...arrivalColumns]) {
    if (column.kind === 'figure') {
      const set = column.set(PLAIN_ROADS, 12);
      expect(column.get(set), column.label).toBe(12);
      if (column.unset !== undefined) expect(column.get(column.unset(set)), column.label).toBeNull();
    } else if (column.kind === 'flag') {
      expect(column.get(column.set(PLAIN_ROADS, true)), column.label).toBe(true);
      expect(column.get(column.set(PLAIN_ROADS, false)), column.label).toBe(false);
    }
  }
});
