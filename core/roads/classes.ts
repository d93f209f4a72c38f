/**
 * What a road is to a driver, from its tag `highway` (and `service`). The place in this list is the number of the class in a
 * road map, so that new classes go to the end.
 */
export const ROAD_CLASSES = [
  'motorway',
  'motorway_link',
  'trunk',
  'trunk_link',
  'primary',
  'primary_link',
  'secondary',
  'secondary_link',
  'tertiary',
  'tertiary_link',
  'unclassified',
  'residential',
  'living_street',
  'road',
  'service',
  'driveway',
  'parking_aisle',
  'track',
] as const;

/** One of `ROAD_CLASSES`. */
export type RoadClass = (typeof ROAD_CLASSES)[number];

/** The number of a class in a road map. */
export function classNumber(name: RoadClass): number {
  return ROAD_CLASSES.indexOf(name);
}

/** A figure for every class, made from what each is given; classes without one have `otherwise`. */
export function byClass(figures: Partial<Readonly<Record<RoadClass, number>>>, otherwise: number): Float64Array {
  return Float64Array.from(ROAD_CLASSES, (name) => figures[name] ?? otherwise);
}
