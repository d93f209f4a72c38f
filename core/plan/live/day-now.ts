import type { Book, Gauge, Visit } from '../../book/index.ts';
import type { UnderWay } from '../problem/index.ts';
import type { PlanActivity, PlanDay } from '../result/index.ts';

/** What a rig has aboard, by the names of the plan. */
export type Content = {
  readonly compartmentId: string;
  readonly materialId: string;
  readonly volumeGal: number;
  readonly weightLb: number;
};

/** What a rig carries now: mixes and dry product in compartments, water in gallons, bags in pounds. */
export type Aboard = {
  readonly compartments: readonly Content[];
  readonly waterGal: number;
  readonly bags: readonly { readonly productId: string; readonly weightLb: number }[];
  /** When it was last read from the gauges, minutes after midnight; absent: reckoned from the plan and from what was written down. */
  readonly readAtMin?: number;
};

/** A rig's day as it stands. */
export type DayNow = {
  readonly done: readonly string[];
  readonly skipped: readonly { readonly propertyId: string; readonly reason: string }[];
  /** Stops of the plan that are neither done nor left out, in the plan's order. */
  readonly left: readonly string[];
  /** Where the rig stands: the property that was left last, or the fill point that it starts from. */
  readonly atId: string;
  /** Minutes after midnight: the last time that was written down, else the plan's. */
  readonly sinceMin: number;
  readonly hadBreak: boolean;
  readonly aboard: Aboard;
};

/**
 * How a day stands, from its plan and what was written down of it. Contents are reckoned: the plan's fills at the stops that are done, less what
 * work there took, as it was written down or else as planned; a reading of the gauges that is later than the last stop takes the place of that for
 * whatever it names.
 *
 * @param visits of any day and rig; those of this one are picked out
 */
export function dayNow(book: Book, day: PlanDay, visits: readonly Visit[], gauges: readonly Gauge[]): DayNow {
  const own = visits
    .filter((each) => each.on === day.date && each.rigId === day.rigId)
    .filter((each) => day.stops.some((stop) => stop.propertyId === each.propertyId));
  const outcomes = new Map(own.map((each) => [each.propertyId, each]));
  const done = day.stops.filter((stop) => outcomes.get(stop.propertyId)?.outcome.kind === 'done');
  const skipped = own.flatMap(({ propertyId, outcome }) =>
    outcome.kind === 'skipped' ? [{ propertyId, reason: outcome.reason }] : [],
  );
  const leaves = done.map((stop) => outcomes.get(stop.propertyId)?.leaveMin ?? stop.leaveSec / SECONDS);
  const sinceMin = Math.max(day.startSec / SECONDS, ...leaves);
  const last = done[leaves.indexOf(sinceMin)];
  const pause = day.activities.find((each) => each.kind === 'break');
  const rig = book.rigs.find((each) => each.id === day.rigId);
  const doneIds = done.map((stop) => stop.propertyId);
  const reckoned = reckon(day.activities, new Set(doneIds), shareUsed(own));
  const gauge = gauges
    .filter((each) => each.on === day.date && each.rigId === day.rigId && each.atMin >= sinceMin)
    .toSorted((one, other) => one.atMin - other.atMin)
    .at(-1);
  return {
    done: doneIds,
    skipped,
    left: day.stops.map((stop) => stop.propertyId).filter((id) => !outcomes.has(id)),
    atId: last?.propertyId ?? rig?.homeId ?? '',
    sinceMin,
    hadBreak: pause !== undefined && pause.endSec / SECONDS <= sinceMin,
    aboard: gauge === undefined ? reckoned : withGauge(reckoned, gauge),
  };
}

/** The name by which the plan of the rest of a day is kept beside that of its round. */
export function restName(roundId: string, date: string): string {
  return `${roundId} from here on ${date}`;
}

const SECONDS = 60;

/** The rest of the day, for `buildProblem`. Null where the place of the rig is none that the book knows. */
export function underWayOf(book: Book, rigId: string, now: DayNow, nowMin: number): UnderWay | null {
  const place =
    book.properties.find((each) => each.id === now.atId)?.parking ??
    book.fillPoints.find((each) => each.id === now.atId)?.at;
  if (place === undefined) return null;
  return {
    rigId,
    nowMin,
    at: { id: now.atId, at: place },
    hadBreak: now.hadBreak,
    compartments: now.aboard.compartments,
    waterGal: now.aboard.waterGal,
    bags: now.aboard.bags,
  };
}

/** What was used as a share of what was planned, by property, zone, treatment and step. */
function shareUsed(visits: readonly Visit[]): ReadonlyMap<string, number> {
  const shares = new Map<string, number>();
  for (const { propertyId, outcome } of visits) {
    if (outcome.kind !== 'done') continue;
    for (const { zoneId, treatmentId, step = 0, expectedGal, usedGal, expectedLb, usedLb } of outcome.tasks) {
      const planned = (expectedGal ?? 0) + (expectedLb ?? 0);
      const used = usedGal ?? usedLb;
      if (used !== undefined && planned > 0) shares.set(workKey(propertyId, zoneId, treatmentId, step), used / planned);
    }
  }
  return shares;
}

function workKey(propertyId: string, zoneId: string, treatmentId: string, step: number): string {
  return JSON.stringify([propertyId, zoneId, treatmentId, step]);
}

/** Plays fills and draws of the stops that are done, and of the morning. */
function reckon(
  activities: readonly PlanActivity[],
  done: ReadonlySet<string>,
  shares: ReadonlyMap<string, number>,
): Aboard {
  const contents = new Map<string, Content>();
  const bags = new Map<string, number>();
  let waterGal = 0;
  const add = (compartmentId: string, materialId: string, volumeGal: number, weightLb: number): void => {
    const old = contents.get(compartmentId);
    contents.set(compartmentId, {
      compartmentId,
      materialId,
      volumeGal: Math.max(0, (old?.volumeGal ?? 0) + volumeGal),
      weightLb: Math.max(0, (old?.weightLb ?? 0) + weightLb),
    });
  };
  for (const each of activities) {
    if ('propertyId' in each && !done.has(each.propertyId)) continue;
    if (each.kind === 'refill') {
      for (const id of each.rinsedCompartmentIds) contents.delete(id);
      if (each.fillPointId === '') waterGal -= each.rinseGal;
    }
    if (each.kind === 'morning' || each.kind === 'refill') {
      for (const { stock, productId, volumeGal, weightLb } of each.stock) {
        if (stock === 'water') waterGal += volumeGal;
        else bags.set(productId, (bags.get(productId) ?? 0) + weightLb);
      }
    }
    if (each.kind === 'morning' || each.kind === 'refill' || each.kind === 'pour') {
      const fromRig = each.kind === 'refill' && each.fillPointId === '';
      for (const { compartmentId, materialId, volumeGal, weightLb } of each.fills) {
        add(compartmentId, materialId, volumeGal, weightLb);
        if (fromRig) waterGal -= volumeGal;
        if (fromRig && weightLb > 0) bags.set(materialId, Math.max(0, (bags.get(materialId) ?? 0) - weightLb));
        if (each.kind === 'pour') add(each.fromCompartmentId, materialId, -volumeGal, -weightLb);
      }
    }
    if (each.kind === 'treat') {
      const share = shares.get(workKey(each.propertyId, each.zoneId, each.treatmentId, each.step)) ?? 1;
      for (const { compartmentId, materialId, volumeGal, weightLb } of each.draws) {
        add(compartmentId, materialId, -volumeGal * share, -weightLb * share);
      }
    }
  }
  return {
    compartments: [...contents.values()],
    waterGal: Math.max(0, waterGal),
    bags: [...bags].map(([productId, weightLb]) => ({ productId, weightLb })),
  };
}

function withGauge(reckoned: Aboard, gauge: Gauge): Aboard {
  const read = gauge.compartments.map(({ compartmentId, materialId, gal, lb }) => ({
    compartmentId,
    materialId,
    volumeGal: gal ?? 0,
    weightLb: lb ?? 0,
  }));
  const named = new Set(read.map((each) => each.compartmentId));
  return {
    compartments: [...reckoned.compartments.filter((each) => !named.has(each.compartmentId)), ...read].filter(
      (each) => each.materialId !== '',
    ),
    waterGal: gauge.nurseGal ?? reckoned.waterGal,
    bags: gauge.bags.length > 0 ? gauge.bags.map(({ productId, lb }) => ({ productId, weightLb: lb })) : reckoned.bags,
    readAtMin: gauge.atMin,
  };
}
