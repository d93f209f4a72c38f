import type { AreaGeometry, Book, FillPoint, Position, Property } from '../../../book/index.ts';
import type { PlanActivity, PlanDay, PlanStop, PlanTask } from '../../../plan/result/index.ts';
import { methodName, nameOf } from './names.ts';

/** Work on one zone at a stop. */
export type WorkView = PlanTask & {
  readonly zone: string;
  readonly treatment: string;
  readonly methodName: string;
  /** Ground that is really treated: without what a machine does not reach and nobody trims. ft2 */
  readonly treatedSqFt: number;
  /** The zone's outline; null where its area is only stated, or the book has it no longer. */
  readonly geometry: AreaGeometry | null;
};

export type StopView = PlanStop & {
  readonly property: Property | undefined;
  readonly address: string;
  /** Where to park; null where the book has the property no longer. */
  readonly at: Position | null;
  readonly works: readonly WorkView[];
  readonly treatedSqFt: number;
};

type RefillActivity = Extract<PlanActivity, { readonly kind: 'refill' }>;

/** A refill where it falls: at a fill point, or from the rig where that stands. */
export type RefillView = RefillActivity & { readonly name: string; readonly at: Position | null };

/** A place that the rig comes by, in order: where it starts, stops, fill points, where it ends. */
export type RoutePlace = {
  readonly what: 'start' | 'stop' | 'fill point' | 'end';
  readonly id: string;
  readonly name: string;
  readonly address: string;
  readonly at: Position;
  /** When the rig gets there; at the start, when it leaves. */
  readonly sec: number;
};

/** A day of one rig with everything that files for other programs tell of it. */
export type DayView = {
  readonly day: PlanDay;
  readonly stops: readonly StopView[];
  readonly refills: readonly RefillView[];
  readonly route: readonly RoutePlace[];
  /** Fill points that the day comes by, each once. */
  readonly fillPoints: readonly FillPoint[];
};

export function dayView(book: Book, day: PlanDay): DayView {
  const route = routeOf(book, day);
  const called = new Set(route.map((each) => each.id));
  return {
    day,
    stops: day.stops.map((stop) => stopView(book, stop)),
    refills: day.activities.flatMap((each) => (each.kind === 'refill' ? [refillView(book, each)] : [])),
    route,
    fillPoints: book.fillPoints.filter((each) => called.has(each.id)),
  };
}

function stopView(book: Book, stop: PlanStop): StopView {
  const property = book.properties.find((each) => each.id === stop.propertyId);
  const works = stop.tasks.map((task): WorkView => {
    const zone = property?.zones.find((each) => each.id === task.zoneId);
    const left = task.reckoned?.from === 'passes' ? task.reckoned.notReachedSqFt : 0;
    return {
      ...task,
      zone: zone?.name ?? task.zoneId,
      treatment: nameOf(book.treatments, task.treatmentId),
      methodName: methodName(book, task.method),
      treatedSqFt: task.areaSqFt - left,
      geometry: zone?.shape.kind === 'drawn' ? zone.shape.geometry : null,
    };
  });
  return {
    ...stop,
    property,
    address: property?.address ?? '',
    at: property?.parking ?? null,
    works,
    treatedSqFt: works.reduce((sum, each) => sum + each.treatedSqFt, 0),
  };
}

function refillView(book: Book, refill: RefillActivity): RefillView {
  const placeId = refill.fillPointId === '' ? refill.propertyId : refill.fillPointId;
  const place = placeOf(book, placeId);
  return { ...refill, name: place?.name ?? placeId, at: place?.at ?? null };
}

function routeOf(book: Book, { activities }: PlanDay): readonly RoutePlace[] {
  const drives = activities.filter((each) => each.kind === 'drive');
  return drives.flatMap((drive, index) => {
    const start = index === 0 ? placeOnRoute(book, drive.fromPlaceId, 'start', drive.startSec) : [];
    const isLast = index === drives.length - 1;
    const what = isLast ? 'end' : isFillPoint(book, drive.toPlaceId) ? 'fill point' : 'stop';
    return [...start, ...placeOnRoute(book, drive.toPlaceId, what, drive.endSec)];
  });
}

const isFillPoint = (book: Book, id: string): boolean => book.fillPoints.some((each) => each.id === id);

function placeOnRoute(book: Book, id: string, what: RoutePlace['what'], sec: number): readonly RoutePlace[] {
  const place = placeOf(book, id);
  return place === null ? [] : [{ what, id, sec, ...place }];
}

type Place = Pick<RoutePlace, 'name' | 'address' | 'at'>;

function placeOf(book: Book, id: string): Place | null {
  const point = book.fillPoints.find((each) => each.id === id);
  if (point !== undefined) return { name: point.name, address: '', at: point.at };
  const property = book.properties.find((each) => each.id === id);
  return property === undefined ? null : { name: property.name, address: property.address, at: property.parking };
}
