import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import type { Book } from '../../../core/book/index.ts';
import { treatableGround } from '../../../core/measure/index.ts';
import { directionOptions, passHeadOf, passPicture } from '../../../core/passes/index.ts';
import type { Block, MapPicture } from '../../../core/reports/blocks.ts';
import {
  type DayInput,
  type DayPasses,
  passesWanted,
  SHEETS,
  sheetsHtml,
  sheetText,
} from '../../../core/reports/index.ts';
import { mapPages } from '../../../core/reports/map-pages/index.ts';
import { mapSvg } from '../../../core/reports/map-svg.ts';
import { smallPlan } from '../plan/judge/small-plan.ts';
import { dayInput, fixtureBook, fixturePlan } from './fixture.ts';

type MapBlock = Extract<Block, { readonly kind: 'map' }>;

function flat(blocks: readonly Block[]): readonly Block[] {
  return blocks.flatMap((block) => (block.kind === 'group' || block.kind === 'page' ? flat(block.blocks) : [block]));
}

const mapsOf = (input: DayInput): readonly MapBlock[] =>
  flat(mapPages(input).blocks).filter((block) => block.kind === 'map');

/** The fixture's book, with a boom of which it is known how it is driven. */
function drivenBook(): Book {
  const book = fixtureBook();
  const passes = { overlapFt: 0.5, trimPasses: 1, turnSec: 4 };
  const machines = book.machines.map((machine) => ({
    ...machine,
    heads: machine.heads.map((head) => (head.id === 'boom' ? { ...head, passes } : head)),
  }));
  return { ...book, machines };
}

/** Passes of the boom over the front of the first lawn and over the second one. */
function laidFor(book: Book): readonly DayPasses[] {
  const head = book.machines[0]?.heads.find((each) => each.id === 'boom');
  const passHead = head === undefined ? null : passHeadOf(head);
  if (head === undefined || passHead === null) throw new Error('no head');
  return [
    ['acre', 'front'],
    ['birch', 'lawn'],
  ].flatMap(([propertyId = '', zoneId = '']) => {
    const property = book.properties.find((each) => each.id === propertyId);
    const zone = property?.zones.find((each) => each.id === zoneId);
    if (property === undefined || zone === undefined) throw new Error('no zone');
    const options = directionOptions(zone, head.passes ?? null);
    const laid = passPicture(treatableGround(property, zoneId), passHead, options, 0, 'here');
    if (!laid.ok || laid.value === null) throw new Error('nothing laid');
    return [{ propertyId, zoneId, machineId: 'rider', headId: 'boom', picture: laid.value }];
  });
}

/** The day of the judge's plan: at the first lawn one head seeds the front and another sprays it. */
function input(passes?: readonly DayPasses[]): DayInput {
  const book = drivenBook();
  const plan = smallPlan();
  return { ...dayInput(book, plan), ...(passes === undefined ? {} : { passes: laidFor(book) }) };
}

describe('map pages of a day', () => {
  it('begin with the whole way: every place in the order in which the rig comes by', () => {
    const [way, stops] = mapsOf(input());
    expect(way?.route).toHaveLength(7);
    expect(way?.points.map(({ look, label }) => [look, label])).toEqual([
      ['fill-point', 'F'],
      ['stop', '1'],
      ['stop', '2'],
      ['fill-point', 'F'],
      ['stop', '3'],
    ]);
    // Back to the second lawn after water: the way between stops goes there twice.
    expect(stops?.route.map(([west]) => west)).toEqual([-89.41, -89.42, -89.42, -89.43]);
    const text = sheetText(mapPages(input()));
    const order = ['Shop', 'acre house', 'birch house', 'Mill hydrant', 'birch house', 'cedar house', 'Shop'];
    expect(text).toMatch(new RegExp(order.join('[\\s\\S]*')));
    expect(text).toContain('they are no directions');
  });

  it('go on with a map for each head that is driven at a stop, with its passes and figures', () => {
    const laid = laidFor(drivenBook());
    const sheet = mapPages(input(laid));
    const headings = flat(sheet.blocks).flatMap((block) => (block.kind === 'heading' ? [block.text] : []));
    expect(headings.slice(3)).toEqual([
      '1. acre · Rider, seeder · 7:20 am to 8:20 am',
      '1. acre · Rider, boom · 7:20 am to 8:20 am',
      '2. birch · Rider, boom · 8:30 am to 10:17 am',
      '3. cedar · Rider, boom · 10:27 am to 10:51 am',
    ]);
    const maps = mapsOf(input(laid)).slice(2);
    expect(maps.map((map) => map.passes?.length)).toEqual([0, 1, 1, 0]);
    const svg = mapSvg(maps[1]!);
    const [front] = laid;
    const swaths = front?.picture.legs.filter((each) => each.kind === 'swath').length ?? 0;
    expect(swaths).toBeGreaterThan(5);
    // One more of each is the sample in the legend.
    expect(svg.match(/class="pass-swath"/g)).toHaveLength(swaths + 1);
    const text = sheetText(sheet);
    expect(text).toMatch(new RegExp(`front +Spray one +${front?.picture.trimCount} +${front?.picture.swathCount} `));
    // Of the seeder the book does not say how it is driven; of the third lawn nothing was laid.
    expect(text).toContain('The book does not say how Rider, seeder is driven, so no passes are drawn.');
    expect(text).toContain('No passes could be laid here.');
  });

  it('hatch what is treated without lines, and leave other zones empty', () => {
    const maps = mapsOf(input(laidFor(drivenBook()))).slice(2);
    expect(maps.map((map) => map.areas.map((each) => each.look))).toEqual([
      ['edge', 'turf', 'water'],
      ['edge', 'edge', 'water'],
      ['edge'],
      ['turf'],
    ]);
    expect(maps.map((map) => map.legend?.includes('turf'))).toEqual([true, false, false, true]);
  });

  it('ask for each zone and head once, in the order of the day', () => {
    const [day] = smallPlan().days;
    const twice = { ...day!, stops: [...day!.stops, ...day!.stops] };
    expect(passesWanted(twice).map((each) => [each.propertyId, each.zoneId, each.headId])).toEqual([
      ['acre', 'front', 'seeder'],
      ['acre', 'front', 'boom'],
      ['birch', 'lawn', 'boom'],
      ['cedar', 'lawn', 'boom'],
    ]);
  });

  it('say where a zone has no outline, what is done by hand, and why there is nothing to draw', () => {
    const { book, plan, day } = input();
    const [, , last] = day.stops;
    const hand = { kind: 'hand', handMethodId: 'hose' } as const;
    const tasks = last!.tasks.map((each) => ({ ...each, zoneId: 'bank', method: hand }));
    const byHand = { ...day, stops: [{ ...last!, tasks }] };
    const text = sheetText(mapPages({ scope: 'day', book, plan, day: byHand, passes: [] }));
    expect(text).toContain('Without an outline on the map: bank.');
    expect(text).toContain('By hand, hose: bank (Spray two) 2,000 ft².');
    const noStops = { ...day, stops: [], activities: [] };
    expect(sheetText(mapPages({ scope: 'day', book, plan, day: noStops }))).toContain('no way and no lawn to draw');
    const bare = { ...book, properties: [] };
    expect(sheetText(mapPages({ scope: 'day', book: bare, plan, day }))).toContain('no longer has a place');
  });

  it('are among the sheets of a day and hold names as text', () => {
    expect(SHEETS.find((each) => each.id === 'map-pages')).toMatchObject({ scope: 'day', drawsPasses: true });
    const odd = '<script>alert(1)</script>';
    const html = sheetsHtml([
      mapPages(
        dayInput(
          fixtureBook(() => odd),
          fixturePlan(),
        ),
      ),
    ]);
    expect(html).not.toContain('<script');
    expect(html).toContain('&lt;script&gt;');
  });
});

describe('a map', () => {
  const square = (west: number, south: number, east: number, north: number) => ({
    type: 'Polygon' as const,
    coordinates: [
      [
        [west, south],
        [east, south],
        [east, north],
        [west, north],
        [west, south],
      ] as const,
    ],
  });

  /** Corners of the first drawn area, and the length of the bar with its words. */
  function read(svg: string) {
    const drawn = /<path class="edge" d="M([^"]+)Z"/.exec(svg)?.[1]?.split('L') ?? [];
    const corners = drawn.map((each) => each.split(' ').map(Number) as [number, number]);
    const [, length, words] = /v5h([\d.]+)v-5"\/><text[^>]*>([^<]+)</.exec(svg) ?? [];
    return { corners, barPixels: Number(length), bar: words ?? '' };
  }

  it.each([
    ['us', 0.3048],
    ['metric', 1],
  ] as const)(
    'has a %s scale bar that is true to the ellipsoid within 0.5 %%, and north up',
    (units, metresPerUnit) => {
      for (const [latitude, size] of [
        [0.5, 0.001],
        [40, 0.002],
        [60, 0.01],
      ] as const) {
        const area = { look: 'edge' as const, geometry: square(-89, latitude, -89 + size, latitude + size / 3) };
        const svg = mapSvg({ kind: 'map', areas: [area], points: [], route: [], units });
        const { corners, barPixels, bar } = read(svg);
        const [southWest, southEast, northEast] = corners as [[number, number], [number, number], [number, number]];
        // GeographicLib's geodesic along the southern edge: what the picture shows of it against what the bar says.
        const { s12 = 0 } = geodesic.Geodesic.WGS84.Inverse(latitude, -89, latitude, -89 + size);
        const unitsPerPixel = Number(bar.replace(/[^\d]/g, '')) / barPixels;
        const shown = (southEast[0] - southWest[0]) * unitsPerPixel * metresPerUnit;
        expect(Math.abs(shown / s12 - 1)).toBeLessThan(0.005);
        expect(northEast[1]).toBeLessThan(southEast[1]);
        expect(bar).toMatch(units === 'us' ? / ft$/ : / m$/);
      }
    },
  );
});

describe('texts on maps', () => {
  it.each([
    ['letter', 'normal', 215.9, 12],
    ['a4', 'normal', 210, 12],
    ['letter', 'large', 215.9, 16],
    ['a4', 'large', 210, 16],
  ] as const)('are large enough to read on %s in %s print', (paper, print, paperMm, leastPt) => {
    const html = sheetsHtml([mapPages(input())], { paper, print });
    // A map is 700 units wide and as wide as the paper less margins of 13 mm.
    expect(html).toContain('viewBox="0 0 700 ');
    expect(html).toMatch(/@page\{[^}]*margin:\d+mm 13mm/);
    const points = (px: string | undefined): number => (Number(px) * (paperMm - 26)) / 700 / (25.4 / 72);
    const names = /\.map text\.name,\.map text\.small\{font-size:([\d.]+)px\}/.exec(html)?.[1];
    const numbers = /\.map text\{font-size:([\d.]+)px\}/.exec(html)?.[1];
    expect(points(names)).toBeGreaterThanOrEqual(leastPt);
    expect(points(numbers)).toBeGreaterThanOrEqual(12);
  });

  it('are cut where a zone has a long name, and stand whole in the table', () => {
    const long = 'the strip of turf behind the second garage 🌱';
    const book = fixtureBook((text) => (text === 'back' ? long : text));
    const maps = mapsOf({ ...dayInput(book, smallPlan()), passes: [] });
    const labels = maps.flatMap((map) => map.points.filter((each) => each.look === 'name').map((each) => each.label));
    expect(labels).toContain('the strip of tu…');
  });
});

describe('a picture below the maps', () => {
  const EARTH_DEGREE = 0.001;
  /** A picture twice as wide as it is high, turned a little, over the first lawn. */
  const picture: MapPicture = {
    id: 'plan "1"',
    address: 'data:image/png;base64,AAAA',
    widthPx: 400,
    heightPx: 200,
    corners: [
      [-89.4101, 40.0005],
      [-89.4101 + 2 * EARTH_DEGREE, 40.0007],
      [-89.41 + 2 * EARTH_DEGREE, 40.0002],
      [-89.41, 40],
    ],
    opacity: 0.5,
    name: 'Plan <of> 1998',
  };
  const withPicture: DayInput = { ...input(), pictures: [picture] };

  it('lies with each corner where the ground of that corner is drawn', () => {
    const ring = [...picture.corners, picture.corners[0]];
    const area = { look: 'edge' as const, geometry: { type: 'Polygon' as const, coordinates: [ring] } };
    const svg = mapSvg({ kind: 'map', pictures: [picture], areas: [area], points: [], route: [], units: 'us' });
    const [, id, matrix = ''] = /<use href="#([^"]+)" opacity="0.5" transform="matrix\(([^)]+)\)"/.exec(svg) ?? [];
    expect(id).toBe('picture-plan1');
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = matrix.split(' ').map(Number);
    const drawn = /<path class="edge" d="M([^"]+)Z"/
      .exec(svg)?.[1]
      ?.split('L')
      .map((each) => each.split(' ').map(Number));
    const pixels = [
      [0, 0],
      [400, 0],
      [400, 200],
      [0, 200],
    ] as const;
    for (const [index, [x, y]] of pixels.entries()) {
      const [u = 0, v = 0] = drawn?.[index] ?? [];
      // Corners of areas are written with one decimal of a pixel.
      expect(Math.hypot(a * x + c * y + e - u, b * x + d * y + f - v)).toBeLessThan(0.1);
    }
  });

  it('is not drawn where it would have to be bent', () => {
    const [one, two, three, [west, south]] = picture.corners;
    const bent: MapPicture = { ...picture, corners: [one, two, three, [west, south - 0.0003]] };
    const area = {
      look: 'edge' as const,
      geometry: { type: 'Polygon' as const, coordinates: [[one, two, three, one]] },
    };
    const svg = mapSvg({ kind: 'map', pictures: [bent], areas: [area], points: [], route: [], units: 'us' });
    expect(svg).not.toContain('<use');
  });

  it('is on the maps of the lawns above it, with its name, and its bytes are in the page once', () => {
    const sheet = mapPages(withPicture);
    expect(mapsOf(withPicture).map((map) => map.pictures?.length ?? 0)).toEqual([0, 0, 1, 1, 0, 0]);
    const html = sheetsHtml([sheet]);
    expect(html.match(/data:image/g)).toHaveLength(1);
    expect(html.match(/<use /g)).toHaveLength(2);
    expect(html.match(/Background: Plan &lt;of&gt; 1998 \(the book/g)).toHaveLength(2);
    expect(sheetsHtml([mapPages(input())])).not.toContain('Background');
  });
});

describe('the legend of a map', () => {
  /** A lawn of this width and height in degrees, as a map alone and with a legend. */
  function mapOf(wide: number, high: number, legend?: MapBlock['legend']): string {
    const [west, south] = [-89.4, 40];
    const ring: [number, number][] = [
      [west, south],
      [west + wide, south],
      [west + wide, south + high],
      [west, south + high],
      [west, south],
    ];
    return mapSvg({
      kind: 'map',
      size: 'large',
      ...(legend === undefined ? {} : { legend }),
      areas: [{ look: 'turf', geometry: { type: 'Polygon', coordinates: [ring] } }],
      points: [],
      route: [],
      units: 'us',
    });
  }
  const LEGEND = ['trim', 'swath', 'transit', 'twice', 'missed', 'parking'] as const;
  const edgesOf = (svg: string): { readonly xs: readonly number[]; readonly ys: readonly number[] } => {
    const spots = [...(/class="turf" d="([^"]+)"/.exec(svg)?.[1] ?? '').matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)];
    return { xs: spots.map((each) => Number(each[1])), ys: spots.map((each) => Number(each[2])) };
  };
  const across = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

  it('stands below a wide lawn, which keeps its width', () => {
    const [alone, shown] = [edgesOf(mapOf(0.004, 0.0015)), edgesOf(mapOf(0.004, 0.0015, LEGEND))];
    expect(across(shown.xs)).toBeCloseTo(across(alone.xs), 0);
    const top = Number(/<rect class="ground" x="0" y="(\d+)" width="700"/.exec(mapOf(0.004, 0.0015, LEGEND))?.[1]);
    expect(Math.max(...shown.ys)).toBeLessThan(top);
  });

  it('stands beside a high lawn, which keeps its height', () => {
    const [alone, shown] = [edgesOf(mapOf(0.001, 0.002)), edgesOf(mapOf(0.001, 0.002, LEGEND))];
    expect(across(shown.ys)).toBeCloseTo(across(alone.ys), 0);
    const left = Number(/<rect class="ground" x="(\d+)" y="0"/.exec(mapOf(0.001, 0.002, LEGEND))?.[1]);
    expect(Math.max(...shown.xs)).toBeLessThan(left);
  });
});
