import { metresToMiles, quantity } from '../../../units/index.ts';
import { degreesText } from '../degrees.ts';
import { plainFigure, tableText } from '../table.ts';
import { dayView } from './day-view.ts';
import { localTime } from './local-time.ts';
import { compartmentName, materialName, nameOf } from './names.ts';
import type { PlanSource } from './source.ts';

/** Columns that every table begins with. Times are local, without a zone; US units, whatever the screen shows. */
const DAY_COLUMNS = ['data', 'round', 'date', 'rig', 'rig name'];

type Day = PlanSource['days'][number];
type Cells = readonly string[];

function daysTable(source: PlanSource, columns: Cells, rowsOf: (day: Day) => readonly Cells[]): string {
  const { book, plan, days } = source;
  const data = plan.invented || book.invented ? 'invented, not for use' : '';
  const rows = days.flatMap((day) =>
    rowsOf(day).map((cells) => [data, plan.roundName, day.date, day.rigId, day.rigName, ...cells]),
  );
  return tableText([[...DAY_COLUMNS, ...columns], ...rows]);
}

const minutes = (sec: number): string => plainFigure(sec / 60, 2);

/** The stops of days in order, a row each. */
export function writeStopsTable(source: PlanSource): string {
  const columns = ['stop', 'property', 'property name', 'address', 'lat', 'lon', 'arrive', 'leave', 'drive (min)'];
  const sums = ['distance (mi)', 'treated (sq ft)', 'zones', 'note'];
  return daysTable(source, [...columns, ...sums], (day) =>
    dayView(source.book, day).stops.map((stop) => [
      ...[String(stop.number), stop.propertyId, stop.name, stop.address],
      ...(stop.at === null ? ['', ''] : [...stop.at].reverse().map(degreesText)),
      ...[localTime(day.date, stop.arriveSec), localTime(day.date, stop.leaveSec), minutes(stop.driveSec)],
      ...[plainFigure(metresToMiles(quantity<'m'>(stop.distanceM))), plainFigure(stop.treatedSqFt)],
      ...[[...new Set(stop.works.map((each) => each.zone))].join('; '), stop.property?.note ?? ''],
    ]),
  );
}

/** What is done at the stops, a row for every zone and treatment. */
export function writeWorkTable(source: PlanSource): string {
  const columns = ['stop', 'property', 'property name', 'zone', 'zone name', 'treatment', 'treatment name', 'method'];
  const figures = ['hand trim', 'start', 'end', 'treated (sq ft)', 'volume (gal)', 'weight (lb)', 'loads'];
  return daysTable(source, [...columns, ...figures], (day) =>
    dayView(source.book, day).stops.flatMap((stop) =>
      stop.works.map((work) => [
        ...[String(stop.number), stop.propertyId, stop.name, work.zoneId, work.zone, work.treatmentId, work.treatment],
        ...[work.methodName, work.handTrim === true ? 'yes' : ''],
        ...[localTime(day.date, work.startSec), localTime(day.date, work.endSec)],
        ...[plainFigure(work.treatedSqFt), plainFigure(work.volumeGal), plainFigure(work.weightLb)],
        work.loadNumbers.join('; '),
      ]),
    ),
  );
}

/** The loads of days, a row for each fill of a compartment. */
export function writeLoadsTable(source: PlanSource): string {
  const { book } = source;
  const columns = ['load', 'compartment', 'compartment name', 'material', 'material name', 'filled at', 'start'];
  const figures = ['volume (gal)', 'weight (lb)', 'covers (sq ft)', 'left (gal)', 'left (lb)'];
  return daysTable(source, [...columns, ...figures], (day) =>
    day.loads.map((load) => [
      ...[String(load.number), load.compartmentId, compartmentName(book, load.compartmentId)],
      ...[load.materialId, materialName(book, load.materialId)],
      load.fillPointId === ''
        ? load.fromBags
          ? 'bags on the machine'
          : 'rig'
        : nameOf(book.fillPoints, load.fillPointId),
      localTime(day.date, load.startSec),
      ...[load.volumeGal, load.weightLb, load.coversSqFt, load.leftGal, load.leftLb].map((each) => plainFigure(each)),
    ]),
  );
}

/** The products in the loads, a row for each product of a load. */
export function writeProductsTable(source: PlanSource): string {
  const columns = ['load', 'product', 'product name', 'amount', 'unit'];
  return daysTable(source, columns, (day) =>
    day.loads.flatMap((load) =>
      load.products.map(({ productId, amount, unit }) => [
        ...[String(load.number), productId, nameOf(source.book.products, productId), plainFigure(amount, 6), unit],
      ]),
    ),
  );
}
