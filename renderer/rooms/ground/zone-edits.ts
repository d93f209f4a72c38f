import {
  type AreaWorking,
  type Property,
  type SlopeWorking,
  WEEKDAYS,
  type Zone,
  type ZoneShape,
} from '../../../core/book/index.ts';
import { workedArea, workedSlope, workingWords } from '../../../core/field-work/index.ts';
import { changeProperty } from '../../stores/index.ts';

/** Puts another zone in place of the one with its id. */
export function putZone(property: Property, zone: Zone, label: string): ReturnType<typeof changeProperty> {
  const zones = property.zones.map((each) => (each.id === zone.id ? zone : each));
  return changeProperty(property, { zones }, label);
}

/** A slope that somebody typed: whatever it was worked out from no longer holds. */
export function withSlope(zone: Zone, slopeDeg: number): Zone {
  const { slopeWorking: _, ...rest } = zone;
  return { ...rest, slopeDeg };
}

/** A slope from its field work; null where the field work is out of range. */
export function withSlopeWorking(zone: Zone, slopeWorking: SlopeWorking): Zone | null {
  const worked = workedSlope(slopeWorking, 'us');
  if (worked === null) return { ...zone, slopeWorking };
  return worked.ok ? { ...zone, slopeWorking, slopeDeg: worked.value.slopeDeg } : null;
}

/** An area from field work; null where it is out of range. */
export function withWorking(zone: Zone, working: AreaWorking): Zone | null {
  const worked = workedArea(working, 'us');
  if (!worked.ok) return null;
  const { areaSqFt } = worked.value;
  return { ...zone, shape: { kind: 'stated', areaSqFt, method: workingWords(working), working } };
}

/** An area as somebody wrote it down. Field work behind an earlier figure no longer holds. */
export function withStatedArea(zone: Zone, areaSqFt: number, method: string): Zone {
  return { ...zone, shape: { kind: 'stated', areaSqFt, method } };
}

/** Sets a member that a record can be without, or takes it away. */
export function withOptional<RecordKind extends object, Key extends keyof RecordKind & string>(
  record: RecordKind,
  key: Key,
  value: RecordKind[Key] | null,
): RecordKind {
  if (value !== null) return { ...record, [key]: value };
  const { [key]: _, ...rest } = record;
  return rest as RecordKind;
}

export type DrawnShape = Extract<ZoneShape, { readonly kind: 'drawn' }>;

/** How far the outline may be off, and what it was drawn over. */
export function withOutlineError(zone: Zone, outlineErrorFt: number | null): Zone {
  if (zone.shape.kind !== 'drawn') return zone;
  return { ...zone, shape: withOptional<DrawnShape, 'outlineErrorFt'>(zone.shape, 'outlineErrorFt', outlineErrorFt) };
}

export function withDrawnOver(zone: Zone, drawnOver: string): Zone {
  if (zone.shape.kind !== 'drawn') return zone;
  const value = drawnOver === '' ? null : drawnOver;
  return { ...zone, shape: withOptional<DrawnShape, 'drawnOver'>(zone.shape, 'drawnOver', value) };
}

export const END_OF_DAY_MIN = 24 * 60;

/** When work may start, minutes of the day; the whole day is not kept. Null where the end does not come after the start. */
export function withHours(property: Property, openMin: number, closeMin: number): Property | null {
  if (closeMin <= openMin) return null;
  const always = openMin === 0 && closeMin === END_OF_DAY_MIN;
  return withOptional<Property, 'hours'>(property, 'hours', always ? null : { openMin, closeMin });
}

/** One day of the week more or less on which work may be done; all seven are not kept. Null where none would be left. */
export function withWeekday(property: Property, day: (typeof WEEKDAYS)[number], on: boolean): Property | null {
  const before = property.weekdays ?? WEEKDAYS;
  const days = WEEKDAYS.filter((each) => (each === day ? on : before.includes(each)));
  if (days.length === 0) return null;
  return withOptional<Property, 'weekdays'>(property, 'weekdays', days.length === WEEKDAYS.length ? null : days);
}
