import type { Book } from '../../../book/index.ts';
import type { ExportRecord, Members } from '../members.ts';
import { type DayView, dayView, type RefillView, type StopView, type WorkView } from './day-view.ts';
import { localTime } from './local-time.ts';
import { compartmentName, materialName } from './names.ts';
import type { PlanSource } from './source.ts';
import { dayName } from './words.ts';

/** A day with the records of a file that tell of it. */
export type DayRecords = { readonly name: string; readonly records: readonly ExportRecord[] };

/**
 * What formats with places and fields hold of days: the route as a line, stops, refills and fill points as points, and each piece of
 * work with the outline of its zone. Times are local, without a zone; areas in ft2, distances in metres, as the names of fields say.
 */
export function dayRecords({ book, plan, days }: PlanSource): readonly DayRecords[] {
  return days.map((day) => {
    const view = dayView(book, day);
    const invented: Members = plan.invented || book.invented ? { invented: true } : {};
    const records = [
      routeRecord(view, { round: plan.roundName, ...invented }),
      ...view.stops.flatMap((stop) => [
        stopRecord(view, stop),
        ...stop.works.map((work) => workRecord(view, stop, work)),
      ]),
      ...view.refills.map((refill, index) => refillRecord(book, view, refill, index + 1)),
      ...view.fillPoints.map((each) => ({
        id: idOf(view, 'fill-point', each.id),
        geometry: { type: 'Point' as const, at: each.at },
        members: { role: 'fill-point', name: each.name, ...dayMembers(view), fillPoint: each.id, what: each.what },
      })),
    ];
    return { name: dayName(day), records };
  });
}

function idOf({ day }: DayView, ...parts: readonly (string | number)[]): string {
  return [day.date, day.rigId, ...parts].join('/');
}

function dayMembers({ day }: DayView): Members {
  return { date: day.date, rig: day.rigId, rigName: day.rigName };
}

const spanOf = ({ day }: DayView, startSec: number, endSec: number): Members => ({
  start: localTime(day.date, startSec),
  end: localTime(day.date, endSec),
});

function routeRecord(view: DayView, more: Members): ExportRecord {
  const { day, route } = view;
  const positions = route.map((each) => each.at);
  return {
    id: idOf(view, 'route'),
    // Straight from place to place: a plan holds no way along roads.
    geometry: positions.length < 2 ? null : { type: 'LineString', positions },
    members: {
      role: 'route',
      name: dayName(day),
      ...dayMembers(view),
      ...spanOf(view, day.startSec, day.endSec),
      stops: day.stops.length,
      treatedSqFt: day.treatedSqFt,
      driveSec: day.driveSec,
      distanceM: day.distanceM,
      ...more,
    },
  };
}

function stopRecord(view: DayView, stop: StopView): ExportRecord {
  return {
    id: idOf(view, 'stop', stop.number),
    geometry: stop.at === null ? null : { type: 'Point', at: stop.at },
    members: {
      role: 'stop',
      name: stop.name,
      ...(stop.address === '' ? {} : { address: stop.address }),
      ...dayMembers(view),
      number: stop.number,
      property: stop.propertyId,
      ...spanOf(view, stop.arriveSec, stop.leaveSec),
      driveSec: stop.driveSec,
      distanceM: stop.distanceM,
      treatedSqFt: stop.treatedSqFt,
    },
  };
}

function workRecord(view: DayView, stop: StopView, work: WorkView): ExportRecord {
  const hand = work.handTrim === true ? ['hand-trim'] : [];
  return {
    id: idOf(view, 'work', stop.number, work.zoneId, work.treatmentId, work.step, ...hand),
    geometry: work.geometry,
    members: {
      role: 'work',
      name: `${stop.name}, ${work.zone}`,
      ...dayMembers(view),
      stop: stop.number,
      property: stop.propertyId,
      zone: work.zoneId,
      treatment: work.treatment,
      method: work.methodName,
      handTrim: work.handTrim === true,
      ...spanOf(view, work.startSec, work.endSec),
      treatedSqFt: work.treatedSqFt,
      volumeGal: work.volumeGal,
      weightLb: work.weightLb,
      loads: work.loadNumbers.map(String),
    },
  };
}

function refillRecord(book: Book, view: DayView, refill: RefillView, number: number): ExportRecord {
  const fills = refill.fills.map(
    ({ compartmentId, materialId, volumeGal, weightLb }) =>
      `${compartmentName(book, compartmentId)}: ${volumeGal > 0 ? `${volumeGal} gal` : `${weightLb} lb`} ${materialName(book, materialId)}`,
  );
  return {
    id: idOf(view, 'refill', number),
    geometry: refill.at === null ? null : { type: 'Point', at: refill.at },
    members: {
      role: 'refill',
      name: `Refill: ${refill.name}`,
      ...dayMembers(view),
      ...(refill.fillPointId === '' ? { property: refill.propertyId } : { fillPoint: refill.fillPointId }),
      ...spanOf(view, refill.startSec, refill.endSec),
      fills,
    },
  };
}
