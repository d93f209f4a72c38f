import { type GpxPoint, gpxFile, gpxPoint } from '../gpx-parts.ts';
import { xmlField } from '../xml-text.ts';
import { type DayView, dayView, type RefillView, type RoutePlace, type StopView } from './day-view.ts';
import { INVENTED, type PlanSource, type PlanWriteOptions } from './source.ts';
import { clockWords, dayName, refillLines, spanWords, stopLines } from './words.ts';

type Book = PlanSource['book'];

/**
 * GPX 1.1: a route for every day of a rig with a point for each place that it comes by, in order, and waypoints for stops, refills and
 * fill points. The element `time` is left out: GPX has it in UTC, and books know no zones; times stand in the texts.
 */
export function writePlanGpx({ book, plan, days }: PlanSource, { title }: PlanWriteOptions): string {
  const views = days.map((day) => dayView(book, day));
  const points = views.flatMap((view) => [
    ...view.stops.flatMap((stop) => stopPoint(book, view, stop)),
    ...view.refills.flatMap((refill) => refillPoint(book, view, refill)),
  ]);
  const fillPoints = new Map(views.flatMap((view) => view.fillPoints.map((each) => [each.id, each] as const)));
  const stations = [...fillPoints.values()].map(({ id, name, at, what }) =>
    gpxPoint('wpt', { at, name, cmt: id, desc: what, type: 'fill point' }),
  );
  const routes = views.map((view, index) => routeElement(book, view, index + 1));
  return gpxFile(title, plan.invented || book.invented ? INVENTED : '', [...points, ...stations, ...routes]);
}

function stopPoint(book: Book, { day }: DayView, stop: StopView): readonly string[] {
  if (stop.at === null) return [];
  const desc = [...(stop.address === '' ? [] : [stop.address]), ...stopLines(book, stop)].join('\n');
  const name = `${stop.number} ${stop.name}`;
  return [gpxPoint('wpt', { at: stop.at, name, cmt: stop.propertyId, desc, src: dayName(day), type: 'stop' })];
}

function refillPoint(book: Book, { day }: DayView, refill: RefillView): readonly string[] {
  if (refill.at === null) return [];
  const point: GpxPoint = {
    at: refill.at,
    name: `Refill: ${refill.name}`,
    cmt: refill.fillPointId === '' ? refill.propertyId : refill.fillPointId,
    desc: refillLines(book, refill).join('\n'),
    src: dayName(day),
    type: 'refill',
  };
  return [gpxPoint('wpt', point)];
}

function routeElement(book: Book, { day, route }: DayView, number: number): string {
  const head = `${xmlField('name', dayName(day))}${xmlField('desc', spanWords(book, day.startSec, day.endSec))}`;
  const points = route.map((place) => gpxPoint('rtept', routePoint(book, place)));
  return `<rte>${head}<number>${number}</number><type>day</type>\n${points.join('\n')}\n</rte>`;
}

function routePoint(book: Book, { what, id, name, address, at, sec }: RoutePlace): GpxPoint {
  const time = clockWords(book, sec);
  return { at, name, cmt: id, desc: address === '' ? time : `${time}, ${address}`, type: what };
}
