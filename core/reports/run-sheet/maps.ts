import type { Book, Position, Property } from '../../book/index.ts';
import type { PlanStop } from '../../plan/result/index.ts';
import { formatWidth } from '../../units/index.ts';
import type { Block, MapArea, MapPoint } from '../blocks.ts';
import type { DayInput } from '../input.ts';
import { wayThrough } from '../ways.ts';

/** All stops of a day with the way between them. */
export function dayMap({ book, day, ways }: DayInput): Block {
  const places: readonly Position[] = day.activities.flatMap((each) =>
    each.kind === 'drive' ? placeAt(book, each.toPlaceId) : [],
  );
  return {
    kind: 'map',
    areas: propertiesOf(book, day.stops).flatMap(areasOf),
    points: stopPoints(book, day.stops),
    // Only from stop to stop: the way from and to the shop would shrink the lawns to dots.
    route: wayThrough(places, ways).route,
    units: book.units,
  };
}

/** With more stops the lawns are too small for the widths of their gates, which stand beside every stop as well. */
const STOPS_WITH_GATES = 2;

/** A few stops closer by: lawns with their gates; the numbers stand where the rig parks. */
export function stopsMap({ book, ways }: DayInput, stops: readonly PlanStop[]): Block {
  const properties = propertiesOf(book, stops);
  const gates = (stops.length > STOPS_WITH_GATES ? [] : properties).flatMap((property) =>
    property.gates.flatMap((gate): readonly MapPoint[] =>
      gate.at === undefined ? [] : [{ look: 'gate', at: gate.at, label: formatWidth(gate.clearWidthIn, book.units) }],
    ),
  );
  const { route } = wayThrough(
    stops.flatMap((stop) => placeAt(book, stop.propertyId)),
    ways,
  );
  return {
    kind: 'map',
    size: 'small',
    areas: properties.flatMap(areasOf),
    points: [...gates, ...stopPoints(book, stops)],
    route,
    units: book.units,
  };
}

/** Turf and what is left out of it. */
export function areasOf(property: Property): readonly MapArea[] {
  return [
    ...property.zones.flatMap((zone) =>
      zone.shape.kind === 'drawn' ? [{ look: 'turf' as const, geometry: zone.shape.geometry }] : [],
    ),
    ...property.exclusions.map((each) => ({
      look: each.what === 'water' ? ('water' as const) : ('exclusion' as const),
      geometry: each.geometry,
    })),
  ];
}

function propertiesOf(book: Book, stops: readonly PlanStop[]): readonly Property[] {
  const ids = new Set(stops.map((stop) => stop.propertyId));
  return book.properties.filter((each) => ids.has(each.id));
}

function stopPoints(book: Book, stops: readonly PlanStop[]): readonly MapPoint[] {
  return stops.flatMap((stop) =>
    placeAt(book, stop.propertyId).map((at) => ({ look: 'stop' as const, at, label: String(stop.number) })),
  );
}

function placeAt(book: Book, id: string): readonly Position[] {
  const at = book.properties.find((each) => each.id === id)?.parking;
  return at === undefined ? [] : [at];
}
