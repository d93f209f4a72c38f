import type { Book, Head, Property, Rig, Treatment, Zone } from '../book/index.ts';
import type { PropertyMeasure, Stand, ZoneMeasure } from '../measure/index.ts';
import { type Minutes, quantity } from '../units/index.ts';
import { methodName } from './facts.ts';
import { methodsFor } from './methods.ts';
import { treatingMinutes } from './minutes.ts';
import { reach } from './reach.ts';
import type { Method, ReachAnswer } from './types.ts';

/** What the table has to be told of the ground. */
export type Site = {
  /** From the stand to the farthest corner, ft; null where not known. */
  readonly farthestFt: (property: Property, zone: Zone) => number | null;
  /** Where the machine that a hose draws from could stand; absent: at the stand alone. */
  readonly stands?: (property: Property, zone: Zone) => readonly Stand[];
  /** Ground really treated, ft2; absent: the whole zone, or its share for spots. Bands need it. */
  readonly treatedSqFt?: (property: Property, zone: Zone, measure: ZoneMeasure) => number;
  /** Minutes of the passes of a machine over the whole of a zone, once; null where they are not known. Absent: of none. */
  readonly passMinutes?: (property: Property, zone: Zone, measure: ZoneMeasure, head: Head) => number | null;
  readonly wetGround?: boolean;
};

export type FitColumn = { readonly method: Method; readonly name: string };
export type FitCell = {
  readonly answer: ReachAnswer;
  /** Minutes of treating where it fits, else null. */
  readonly minutes: Minutes | null;
};
export type FitRow = {
  readonly propertyId: string;
  readonly zoneId: string;
  /** "Name of the property, name of the zone". */
  readonly name: string;
  readonly treatedSqFt: number;
  /** One cell for each column. */
  readonly cells: readonly FitCell[];
};
export type FitTable = {
  readonly treatmentId: string;
  readonly rigId: string | null;
  readonly columns: readonly FitColumn[];
  readonly rows: readonly FitRow[];
};

/**
 * Zones by methods: minutes where a method fits, the reason where it does not. Zones without a measure in `measures` have no row.
 *
 * @param rig the rig that would go, or null for "anybody's"
 */
export function fitTable(
  book: Book,
  measures: readonly PropertyMeasure[],
  treatment: Treatment,
  rig: Rig | null,
  site: Site,
): FitTable {
  const columns = methodsFor(book, treatment).map((method) => ({ method, name: methodName(book, method) }));
  const measureOf = new Map(measures.map((each) => [each.propertyId, each]));
  const rows = book.properties.flatMap((property) =>
    property.zones.flatMap((zone) => {
      const zoneMeasure = measureOf.get(property.id)?.zones.find((each) => each.zoneId === zone.id);
      return zoneMeasure ? [rowOf({ book, property, zone, zoneMeasure, treatment, rig }, columns, site)] : [];
    }),
  );
  return { treatmentId: treatment.id, rigId: rig?.id ?? null, columns, rows };
}

type RowFacts = {
  readonly book: Book;
  readonly property: Property;
  readonly zone: Zone;
  readonly zoneMeasure: ZoneMeasure;
  readonly treatment: Treatment;
  readonly rig: Rig | null;
};

function rowOf(facts: RowFacts, columns: readonly FitColumn[], site: Site): FitRow {
  const { property, zone, zoneMeasure, treatment } = facts;
  const treatedSqFt = site.treatedSqFt?.(property, zone, zoneMeasure) ?? shareOf(treatment, zoneMeasure);
  const passes = treatment.kind === 'aerate' || treatment.kind === 'seed' ? treatment.passes : 1;
  const farthestFt = site.farthestFt(property, zone);
  const stands = () => site.stands?.(property, zone) ?? [];
  const cells = columns.map(({ method }): FitCell => {
    const answer = reach({ ...facts, farthestFt, stands, method, wetGround: site.wetGround ?? false });
    const driven = answer.can ? drivenMinutes(facts, method, site) : null;
    const minutes = answer.can ? treatingMinutes(facts.book, method, treatedSqFt, passes, farthestFt ?? 0) : null;
    return { answer, minutes: driven === null ? minutes : quantity<'min'>(driven * passes) };
  });
  return { propertyId: property.id, zoneId: zone.id, name: `${property.name}, ${zone.name}`, treatedSqFt, cells };
}

/** Passes go over the whole of a zone; spots and bands have none. */
function drivenMinutes({ book, property, zone, zoneMeasure, treatment }: RowFacts, method: Method, site: Site) {
  if (method.kind === 'hand' || treatment.coverage.kind !== 'whole') return null;
  const machine = book.machines.find((each) => each.id === method.machineId);
  const head = machine?.heads.find((each) => each.id === method.headId);
  return head === undefined ? null : (site.passMinutes?.(property, zone, zoneMeasure, head) ?? null);
}

function shareOf(treatment: Treatment, measure: ZoneMeasure): number {
  const area = measure.areaSqFt ?? 0;
  return treatment.coverage.kind === 'spot' ? area * treatment.coverage.share : area;
}
