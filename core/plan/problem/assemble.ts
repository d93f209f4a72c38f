import type { Book, Round } from '../../book/index.ts';
import { calendarOf } from '../../round/calendar/index.ts';
import { buildTravelTable, type DriveTable, type Place, travelKindOf, travelNotes } from '../../travel/index.ts';
import { clockNotes } from './calendar.ts';
import { placeOfStation, withDepots } from './depots.ts';
import type { Gathered } from './gather.ts';
import { type Grouping, rankOfFacts } from './group.ts';
import { jobMaker } from './jobs.ts';
import { type Supplies, stationsOf } from './materials.ts';
import { type OpenDays, reserveNote } from './open-days.ts';
import type { TaskFacts } from './options.ts';
import { type EquippedRig, problemRig } from './rigs.ts';
import { roundWhere } from './round-faults.ts';
import { areaUnits } from './scale.ts';
import { timingNotes } from './timing-notes.ts';
import type { Problem, RouteSlot, Task } from './types.ts';
import { placesUnderWay, rigUnderWay, stationHere, type UnderWay } from './under-way.ts';

/** Everything that was found out, as one problem without its fingerprint. */
export function assemble(
  book: Book,
  round: Round,
  dates: readonly string[],
  rigs: readonly EquippedRig[],
  supplies: Supplies,
  gathered: Gathered,
  jobsOf: Grouping,
  days: OpenDays,
  underWay: readonly UnderWay[],
  roads: DriveTable | undefined,
): Omit<Problem, 'hash'> {
  const { serviceMin } = calendarOf(book);
  const properties = [...new Map(gathered.facts.map((each) => [each.property.id, each.property])).values()];
  const known: readonly Place[] = [
    ...book.fillPoints.map((each) => ({ id: each.id, at: each.at })),
    ...properties.map((each) => ({ id: each.id, at: each.parking })),
  ];
  const places = [...known, ...placesUnderWay(known, underWay)];
  const placeOfProperty = new Map(properties.map((each, index) => [each.id, book.fillPoints.length + index]));
  const jobs = jobsOf.groups.map(jobMaker(book, round, dates, placeOfProperty, days));
  const table = buildTravelTable(places, book.travel, book.matrix, roads);
  const stationOf = (id: string): number => book.fillPoints.findIndex((each) => each.id === id);
  const placeOf = (id: string): number => places.findIndex((each) => each.id === id);
  const stations = [
    ...stationsOf(book, supplies.stocks, stationOf),
    ...underWay.map(({ rigId, at }) => stationHere(placeOf(at.id), rigId, supplies.stocks.length)),
  ];
  const ends = rigs.map(({ rig }) => {
    const here = underWay.findIndex((each) => each.rigId === rig.id);
    return {
      home: here < 0 ? stationOf(rig.homeId) : book.fillPoints.length + here,
      end: stationOf(rig.endId ?? rig.homeId),
    };
  });
  const { depots, ...travel } = withDepots(
    {
      placeIds: places.map((each) => each.id),
      travelMs: inMilliseconds(table.durationSec),
      travelM: table.distanceM,
    },
    rigs.map(({ rig }, index) => ({
      rigId: rig.id,
      from: placeOfStation(stations, ends[index]?.home ?? 0),
      to: placeOfStation(stations, ends[index]?.end ?? 0),
    })),
  );
  return {
    bookId: book.id,
    roundId: round.id,
    dates,
    ...travel,
    travelKind: travelKindOf(table),
    ...(roads === undefined || table.roadPairs === 0 || roads.credit === '' ? {} : { travelCredit: roads.credit }),
    ...supplies,
    stations,
    rigs: rigs.map((each, index) => {
      const where = { home: 0, end: 0, ...ends[index], depot: depots[index] ?? 0 };
      const whole = problemRig(each, book.prices, where, serviceMin);
      const now = underWay.find(({ rigId }) => rigId === each.rig.id);
      return now === undefined ? whole : rigUnderWay(whole, supplies, now);
    }),
    slots: dates
      .flatMap((_, day) => rigs.map((__, rig): RouteSlot => ({ rig, day })))
      .filter(({ rig, day }) => days.works(rig, day)),
    tasks: gathered.facts.map((each) => taskOf(round, each)),
    jobs,
    unplaceable: jobsOf.unplaceable,
    issues: [
      ...gathered.issues,
      ...jobsOf.issues,
      ...days.issues(),
      ...timingNotes(book, round, dates, jobs),
      ...reserveNote(serviceMin, roundWhere(round)),
      ...clockNotes(book, dates, rigs),
      ...travelNotes(table, book.travel, book.matrix, roads, (id) => placeName(book, id)),
    ],
  };
}

function placeName(book: Book, id: string): string {
  const point = book.fillPoints.find((each) => each.id === id);
  if (point !== undefined) return `fill point ${point.name}`;
  return `property ${book.properties.find((each) => each.id === id)?.name ?? id}`;
}

/** In place: with ten thousand places the table is 400 MB, and it was made for this problem. */
function inMilliseconds(seconds: Int32Array): Int32Array {
  for (let index = 0; index < seconds.length; index += 1) seconds[index] = (seconds[index] as number) * 1000;
  return seconds;
}

function taskOf(round: Round, facts: TaskFacts): Task {
  return {
    propertyId: facts.property.id,
    zoneId: facts.zone.id,
    treatmentId: facts.treatment.id,
    step: facts.demand.step,
    areaUnits: areaUnits(facts.demand.treatedSqFt),
    rank: rankOfFacts(round, facts),
  };
}
