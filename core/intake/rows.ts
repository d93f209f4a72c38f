import type { Issue } from '../base/index.ts';
import { type Draft, recordsOf } from './drafts.ts';
import type { IntakeRecord } from './record.ts';
import { type IntakeCounts, type IntakeRow, type PropertyChange, ROW_KINDS } from './types.ts';

/** A draft with what came of it; null where it has no place. */
export type Settled = { readonly draft: Draft; readonly change: PropertyChange | null };

const NO_PLACE =
  'There is no place for it: the record has no outline and no position. Give latitude and longitude, or load a street file.';

/** One row for each record of the file, in its order. The first record of a property tells what becomes of it. */
export function rowsOf(
  records: readonly IntakeRecord[],
  settled: readonly Settled[],
  errors: ReadonlyMap<number, Issue>,
  remarks: ReadonlyMap<number, readonly Issue[]>,
): readonly IntakeRow[] {
  const owners = new Map<number, Settled[]>();
  for (const each of settled) {
    for (const { index } of recordsOf(each.draft)) {
      const known = owners.get(index);
      if (known === undefined) owners.set(index, [each]);
      else known.push(each);
    }
  }
  const told = new Set<Settled>();
  return records.map((record) => {
    const issues = [...record.issues, ...(remarks.get(record.index) ?? [])];
    const error = errors.get(record.index);
    const own = owners.get(record.index) ?? [];
    if (record.kind === 'refused' || error !== undefined || own.length === 0) {
      return rejected(record, error === undefined ? issues : [...issues, error]);
    }
    const placed = own.filter((each) => each.change !== null);
    if (placed.length === 0) return rejected(record, [...issues, noPlace(record)]);
    const first = placed.find((each) => !told.has(each));
    for (const each of placed) told.add(each);
    return first?.change == null ? part(record, placed, issues) : leading(record, placed, first.change, issues);
  });
}

export function countRows(rows: readonly IntakeRow[]): IntakeCounts {
  const counts = Object.fromEntries(ROW_KINDS.map((kind) => [kind, 0])) as Record<IntakeRow['kind'], number>;
  for (const { kind } of rows) counts[kind] += 1;
  return { ...counts, found: rows.length };
}

function nameOf(record: IntakeRecord): string {
  const address = record.kind === 'lawn' || record.kind === 'parcel' ? record.address : null;
  return record.name ?? address ?? record.id ?? '';
}

function leading(
  record: IntakeRecord,
  placed: readonly Settled[],
  change: PropertyChange,
  issues: readonly Issue[],
): IntakeRow {
  const { kind, after } = change;
  const rest = placed.length > 1 ? [`joined to ${placed.length} properties`] : [];
  const words = [...change.words, ...rest].join('; ');
  return {
    where: record.where,
    name: after.name,
    kind,
    words: words === '' && kind === 'same' ? 'as the book has it' : words,
    propertyIds: idsOf(placed),
    issues: kind === 'new' && after.zones.length === 0 ? [...issues, withoutTurf(record)] : issues,
  };
}

function withoutTurf({ where }: IntakeRecord): Issue {
  const message = 'The property has no zone yet. Draw its turf, or enter its area.';
  return { severity: 'warning', code: 'property-without-zones', where, message };
}

function part(record: IntakeRecord, placed: readonly Settled[], issues: readonly Issue[]): IntakeRow {
  const names = placed.flatMap((each) => each.change?.after.name ?? []);
  const what = record.kind === 'lawn' ? 'zone' : record.kind === 'parcel' ? 'lot' : record.kind;
  const words =
    names.length === 1
      ? `${what} of ${names[0]}`
      : `${what} that meets ${names.length} properties, joined to each: ${names.slice(0, 5).join(', ')}`;
  return { where: record.where, name: nameOf(record), kind: 'part', words, propertyIds: idsOf(placed), issues };
}

function idsOf(placed: readonly Settled[]): readonly string[] {
  return placed.flatMap((each) => each.change?.after.id ?? []);
}

function rejected(record: IntakeRecord, issues: readonly Issue[]): IntakeRow {
  const reason = issues.findLast((each) => each.severity === 'error') ?? issues.at(-1);
  return {
    where: record.where,
    name: nameOf(record),
    kind: 'rejected',
    words: reason?.message ?? '',
    propertyIds: [],
    issues,
  };
}

function noPlace(record: IntakeRecord): Issue {
  return { severity: 'error', code: 'no-place', where: record.where, message: NO_PLACE };
}
