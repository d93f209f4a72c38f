import type { Book, Position } from '../../book/index.ts';
import type { PlanDay } from '../../plan/result/index.ts';
import { formatDistance, formatDuration } from '../../units/index.ts';
import { type Block, left, type MapPoint, right } from '../blocks.ts';
import type { DayInput } from '../input.ts';
import { areasOf } from '../run-sheet/index.ts';
import { MAP_PAGES } from '../texts/index.ts';
import { wayThrough } from '../ways.ts';
import { clockWord } from '../words.ts';

/** A place that the day comes by. `number` is that of its stop, null for a fill point or the end of the day. */
type Place = {
  readonly id: string;
  readonly name: string;
  readonly address: string;
  readonly at: Position;
  readonly sec: number;
  readonly number: number | null;
};

/** The whole way with the fill points, the stops closer by, and the places in order. */
export function wayBlocks({ book, day, ways }: DayInput): readonly Block[] {
  const places = placesOf(book, day);
  const stops = places.filter((each) => each.number !== null);
  if (stops.length === 0) return [{ kind: 'note', text: MAP_PAGES.noPlace }];
  const way = wayThrough(positionsOf(places), ways);
  return [
    facts(book, day, places),
    { kind: 'heading', text: MAP_PAGES.wholeWay },
    wayMap(book, places, way.route),
    { kind: 'note', text: way.note },
    { kind: 'heading', text: MAP_PAGES.order },
    placesTable(book, places),
    {
      kind: 'page',
      blocks: [
        { kind: 'heading', text: MAP_PAGES.stops },
        stopsMap(book, day, stops, wayThrough(positionsOf(stops), ways).route),
      ],
    },
  ];
}

function facts(book: Book, day: PlanDay, places: readonly Place[]): Block {
  const words = MAP_PAGES.facts;
  const [start, end] = [places[0], places.at(-1)];
  const at = (place: Place | undefined): string =>
    place === undefined ? '' : `${clockWord(book, place.sec)}, ${place.name}`;
  return {
    kind: 'facts',
    facts: [
      { label: words.stops, value: String(day.stops.length) },
      {
        label: words.driving,
        value: `${formatDistance(day.distanceM, book.units)}, ${formatDuration(day.driveSec)}`,
      },
      { label: words.leave, value: at(start) },
      { label: words.back, value: at(end) },
    ],
  };
}

/** Where the day starts, and the end of every drive. */
function placesOf(book: Book, day: PlanDay): readonly Place[] {
  const drives = day.activities.filter((each) => each.kind === 'drive');
  const numbers = new Map(day.stops.map((stop) => [stop.propertyId, stop.number]));
  const place = (id: string, sec: number): readonly Place[] => {
    const property = book.properties.find((each) => each.id === id);
    const number = numbers.get(id) ?? null;
    if (property !== undefined) {
      return [{ id, name: property.name, address: property.address, at: property.parking, sec, number }];
    }
    const point = book.fillPoints.find((each) => each.id === id);
    return point === undefined ? [] : [{ id, name: point.name, address: '', at: point.at, sec, number: null }];
  };
  const [first] = drives;
  return [
    ...(first === undefined ? [] : place(first.fromPlaceId, first.startSec)),
    ...drives.flatMap((each) => place(each.toPlaceId, each.endSec)),
  ];
}

/** Each place once, however often the day comes by. */
function pointsOf(places: readonly Place[]): readonly MapPoint[] {
  const once = new Map(places.map((each) => [each.id, each]));
  return [...once.values()].map(({ at, number }) =>
    number === null
      ? { look: 'fill-point', at, label: MAP_PAGES.fillPoint }
      : { look: 'stop', at, label: String(number) },
  );
}

function positionsOf(places: readonly Place[]): readonly Position[] {
  return places.map((each) => each.at);
}

function wayMap(book: Book, places: readonly Place[], route: readonly Position[]): Block {
  return {
    kind: 'map',
    areas: [],
    points: pointsOf(places),
    route,
    units: book.units,
  };
}

function stopsMap(book: Book, day: PlanDay, stops: readonly Place[], route: readonly Position[]): Block {
  const ids = new Set(day.stops.map((stop) => stop.propertyId));
  return {
    kind: 'map',
    size: 'large',
    areas: book.properties.filter((each) => ids.has(each.id)).flatMap(areasOf),
    points: pointsOf(stops),
    route,
    units: book.units,
  };
}

function placesTable(book: Book, places: readonly Place[]): Block {
  const { columns, fillPoint } = MAP_PAGES;
  return {
    kind: 'table',
    columns: [right(columns.number, 6), right(columns.time, 15), left(columns.place, 34), left(columns.address, 45)],
    rows: places.map(({ number, sec, name, address }) => [
      number === null ? fillPoint : String(number),
      clockWord(book, sec),
      name,
      address,
    ]),
  };
}
