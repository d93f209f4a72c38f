import type { Book, HandMethod, Head, Machine, Property, Rig, Treatment, Zone } from '../book/index.ts';
import type { PropertyMeasure, Stand, ZoneMeasure } from '../measure/index.ts';
import { type Minutes, quantity } from '../units/index.ts';
import { methodName } from './facts.ts';
import { methodsFor } from './methods.ts';
import { treatingMinutes } from './minutes.ts';
import { reach } from './reach.ts';
import { trimTool } from './trim-tool.ts';
import { type Method, NO_ROOM, NOWHERE, type ReachAnswer } from './types.ts';

/** What the table has to be told of the ground. */
export type Site = {
  /** From the stand to the farthest corner, ft; null where not known. */
  readonly farthestFt: (property: Property, zone: Zone) => number | null;
  /** Where the machine that a hose draws from could stand; absent: at the stand alone. */
  readonly stands?: (property: Property, zone: Zone) => readonly Stand[];
  /** Ground really treated, ft2; absent: the whole zone, or its share for spots. Bands need it. */
  readonly treatedSqFt?: (property: Property, zone: Zone, measure: ZoneMeasure) => number;
  /** Passes of a machine over the whole of a zone, once; null where they are not known. Absent: of none. */
  readonly passes?: (property: Property, zone: Zone, measure: ZoneMeasure, head: Head) => SitePasses | null;
  readonly wetGround?: boolean;
};

/** Minutes of the passes over a zone, and the share of its ground that the machine does not reach. */
export type SitePasses = { readonly minutes: number; readonly leftShare: number };

/** A machine with a head, or a hand method. */
export type FitColumn = { readonly method: Method; readonly name: string };
/** Whether and how one method does one zone. */
export type FitCell = {
  readonly answer: ReachAnswer;
  /** Minutes of treating where it fits, hand trim included, else null. */
  readonly minutes: Minutes | null;
  /** What a machine leaves and a hand tool treats, as a plan would have it; its minutes are in `minutes`. Null for none. */
  readonly trim: FitTrim | null;
  /** Ground that a machine leaves and nobody trims. ft2 */
  readonly notReachedSqFt: number;
};
/** Hand trim after a machine: how many minutes, on how many square feet. */
export type FitTrim = {
  readonly handMethodId: string;
  readonly name: string;
  readonly minutes: number;
  readonly areaSqFt: number;
};
/** One zone of the table, with the square feet that are treated. */
export type FitRow = {
  readonly propertyId: string;
  readonly zoneId: string;
  /** "Name of the property, name of the zone". */
  readonly name: string;
  readonly treatedSqFt: number;
  /** One cell for each column. */
  readonly cells: readonly FitCell[];
};
/** Zones by methods for one treatment; `rigId` is null where no rig was asked about. */
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
  const answers = columns.map(({ method }) =>
    reach({ ...facts, farthestFt, stands, method, wetGround: site.wetGround ?? false }),
  );
  const minutesOf = (method: Method, sqFt: number): Minutes | null =>
    treatingMinutes(facts.book, method, sqFt, passes, farthestFt ?? 0);
  const tools = answers.flatMap(({ can, method }): readonly Tool[] => {
    const hand =
      can && method.kind === 'hand' ? facts.book.handMethods.find(({ id }) => id === method.handMethodId) : null;
    return hand ? [{ hand, minutes: (sqFt) => minutesOf(method, sqFt) ?? 0 }] : [];
  });
  const cells = answers.map((answer): FitCell => {
    const { can, method } = answer;
    const driven = can ? drivenOver(facts, method, site) : null;
    if (driven !== null) return drivenCell(answer, driven, tools, { treatedSqFt, passes });
    return { answer, minutes: can ? minutesOf(method, treatedSqFt) : null, trim: null, notReachedSqFt: 0 };
  });
  return { propertyId: property.id, zoneId: zone.id, name: `${property.name}, ${zone.name}`, treatedSqFt, cells };
}

/** A hand method that may treat a zone, and its minutes there for so many ft2. */
type Tool = { readonly hand: HandMethod; readonly minutes: (sqFt: number) => number };
type Driven = { readonly machine: Machine; readonly head: Head; readonly found: SitePasses };

/** Passes go over the whole of a zone; spots and bands have none. */
function drivenOver(
  { book, property, zone, zoneMeasure, treatment }: RowFacts,
  method: Method,
  site: Site,
): Driven | null {
  if (method.kind === 'hand' || treatment.coverage.kind !== 'whole') return null;
  const machine = book.machines.find((each) => each.id === method.machineId);
  const head = machine?.heads.find((each) => each.id === method.headId);
  const found = head === undefined ? null : (site.passes?.(property, zone, zoneMeasure, head) ?? null);
  return machine === undefined || head === undefined || found === null ? null : { machine, head, found };
}

/** As a plan has it: the passes, and after them the hand trim where so much is left that it is planned, and a tool may do it. */
function drivenCell(
  answer: ReachAnswer,
  { machine, head, found }: Driven,
  tools: readonly Tool[],
  { treatedSqFt, passes }: { readonly treatedSqFt: number; readonly passes: number },
): FitCell {
  if (found.leftShare > NOWHERE) {
    const refused = { ...answer, can: false, reason: 'no-room-for-swath', words: NO_ROOM } as const;
    return { answer: refused, minutes: null, trim: null, notReachedSqFt: 0 };
  }
  const machineMin = found.minutes * passes;
  const leftSqFt = Math.round(treatedSqFt * found.leftShare);
  const isPlanned = leftSqFt > 0 && leftSqFt >= (head.passes?.handTrimFromSqFt ?? 0);
  const tool = isPlanned ? trimTool(machine, head, tools)?.tool : undefined;
  if (tool === undefined) {
    return { answer, minutes: quantity<'min'>(machineMin), trim: null, notReachedSqFt: leftSqFt };
  }
  const { hand } = tool;
  const trim = { handMethodId: hand.id, name: hand.name, minutes: tool.minutes(leftSqFt), areaSqFt: leftSqFt };
  return { answer, minutes: quantity<'min'>(machineMin + trim.minutes), trim, notReachedSqFt: 0 };
}

function shareOf(treatment: Treatment, measure: ZoneMeasure): number {
  const area = measure.areaSqFt ?? 0;
  return treatment.coverage.kind === 'spot' ? area * treatment.coverage.share : area;
}
