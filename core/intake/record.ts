import { type Issue, issue } from '../base/index.ts';
import type { AreaGeometry, Exclusion, Position } from '../book/index.ts';
import type { DegreesBox } from '../geometry/index.ts';

/** An outline that has ground. */
export type Ground = { readonly geometry: AreaGeometry; readonly box: DegreesBox; readonly areaSqM: number };

export type RecordBase = {
  /** Place among all records of the file, from 0. */
  readonly index: number;
  readonly where: string;
  /** The id that the file gives, or null. */
  readonly id: string | null;
  readonly name: string | null;
  /** The property that it says it belongs to. */
  readonly joins: string | null;
  readonly issues: readonly Issue[];
};
/** A property, or an area of turf of one. */
export type LawnRecord = RecordBase & {
  readonly kind: 'lawn';
  /** True where it is turf of another record's property, or of the book's. */
  readonly isZone: boolean;
  readonly ground: Ground | null;
  readonly at: Position | null;
  readonly areaSqFt: number | null;
  readonly slopeDeg: number | null;
  readonly gateIn: number | null;
  readonly address: string | null;
  readonly parking: Position | null;
  /** Name of the property that it joins. */
  readonly propertyName: string | null;
};
export type ExclusionRecord = RecordBase & {
  readonly kind: 'exclusion';
  readonly ground: Ground;
  readonly what: Exclusion['what'] | null;
  readonly keepAwayFt: number | null;
};
export type GateRecord = RecordBase & {
  readonly kind: 'gate';
  readonly clearWidthIn: number;
  readonly at: Position | null;
  readonly locked: boolean | null;
  readonly zoneIds: readonly string[] | null;
};
export type ParcelRecord = RecordBase & {
  readonly kind: 'parcel';
  readonly ground: Ground;
  readonly address: string | null;
};
/** A record of which nothing can be used, or is wanted. One of its issues is the reason. */
export type RefusedRecord = RecordBase & { readonly kind: 'refused' };
export type IntakeRecord = LawnRecord | ExclusionRecord | GateRecord | ParcelRecord | RefusedRecord;

export function refuse(base: RecordBase, code: string, message: string): RefusedRecord {
  const { index, where, id, name, joins, issues } = base;
  const all = [...issues, issue('error', code, where, message)];
  return { kind: 'refused', index, where, id, name, joins, issues: all };
}
