import type { Book, BookRoads } from '../../book/index.ts';
import {
  type ClassFactors,
  factorsAt,
  joinFactors,
  ROAD_CLASSES,
  ROAD_SETTINGS,
  type RoadClass,
  type RoadSettings,
  type TruckLimits,
} from '../../roads/index.ts';
import { KILOGRAMS_PER_POUND, METRES_PER_FOOT, METRES_PER_MILE } from '../../units/index.ts';

const KMH_PER_MPH = METRES_PER_MILE / 1000;

/** How the roads of a book are driven: the program's own settings with what the book says instead. */
export function roadSettingsOf(roads: BookRoads | undefined): RoadSettings {
  if (roads === undefined) return ROAD_SETTINGS;
  const told = roads.speeds.flatMap(({ roadClass, mph }) =>
    isRoadClass(roadClass) ? [[roadClass, mph * KMH_PER_MPH] as const] : [],
  );
  const { truck, turns, shareOfLimit } = roads;
  return {
    ...ROAD_SETTINGS,
    speedsKmh: { ...ROAD_SETTINGS.speedsKmh, ...Object.fromEntries(told) },
    ...(shareOfLimit === undefined ? {} : { shareOfLimit }),
    turns: { ...ROAD_SETTINGS.turns, ...turns },
    truck: truck === undefined ? ROAD_SETTINGS.truck : truckLimits(truck),
    drivesOn: roads.drivesOn,
    privateRoads: roads.privateRoads ? 'ends' : 'no',
    avoid: roads.avoid.map((each) => each.area),
    times: roads.times.map(({ name, fromMin, toMin, factor, roadClasses }) => ({
      name,
      fromMin,
      toMin,
      factors: sameFactor(factor, roadClasses === undefined ? ROAD_CLASSES : roadClasses.filter(isRoadClass)),
    })),
  };
}

function truckLimits(truck: NonNullable<BookRoads['truck']>): TruckLimits {
  return {
    heightM: (truck.heightFt ?? 0) * METRES_PER_FOOT,
    widthM: (truck.widthFt ?? 0) * METRES_PER_FOOT,
    weightKg: (truck.weightLb ?? 0) * KILOGRAMS_PER_POUND,
    trailer: truck.trailer,
    heavy: truck.heavy,
  };
}

function isRoadClass(name: string): name is RoadClass {
  return ROAD_CLASSES.some((each) => each === name);
}

function sameFactor(factor: number, classes: readonly RoadClass[]): ClassFactors {
  return Object.fromEntries(classes.map((each) => [each, factor]));
}

/** How far from a road a place may lie, metres. */
export function mostMetres(roads: BookRoads | undefined): number {
  return (roads?.mostFt ?? 1000) * METRES_PER_FOOT;
}

/**
 * By what the seconds on each class are multiplied: what was learned, times the mean of the hours over the shifts of all rigs. A
 * plan has one time for each pair of places, whatever the hour, so a factor for some hours counts with the share of the shift that
 * they take.
 */
export function driveFactors(book: Book, withLearned = true): ClassFactors {
  const { roads } = book;
  if (roads === undefined) return {};
  const hours = meanOfHours(roadSettingsOf(roads), shiftMinutes(book));
  const { learned } = roads;
  if (!withLearned || learned?.use !== true) return hours;
  const factors = learned.factors.flatMap(({ roadClass, timeFactor }) =>
    isRoadClass(roadClass) ? [[roadClass, timeFactor] as const] : [],
  );
  return joinFactors(Object.fromEntries(factors), hours);
}

function shiftMinutes({ rigs }: Book): readonly number[] {
  return rigs.flatMap(({ shiftStartMin, shiftMin }) =>
    Array.from({ length: Math.ceil(shiftMin) }, (_, minute) => (shiftStartMin + minute) % 1440),
  );
}

function meanOfHours(settings: RoadSettings, minutes: readonly number[]): ClassFactors {
  if (settings.times.length === 0 || minutes.length === 0) return {};
  const sums = new Map<RoadClass, number>();
  for (const minute of minutes) {
    const factors = factorsAt(settings, minute);
    for (const name of ROAD_CLASSES) sums.set(name, (sums.get(name) ?? 0) + (factors[name] ?? 1));
  }
  return Object.fromEntries([...sums].map(([name, sum]) => [name, sum / minutes.length]));
}
