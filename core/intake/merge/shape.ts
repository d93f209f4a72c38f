import type { Zone, ZoneShape } from '../../book/index.ts';
import { formatNumber } from '../../units/index.ts';
import type { LawnRecord } from '../record.ts';
import { sameOutline } from '../same-outline.ts';

export type Merged<Value> = { readonly value: Value; readonly words: readonly string[] };

/** The shape of a new zone; null where the record has neither outline nor area. */
export function shapeOf(record: LawnRecord, fileName: string): ZoneShape | null {
  if (record.ground !== null) return { kind: 'drawn', geometry: record.ground.geometry, drawnOver: fileName };
  if (record.areaSqFt === null) return null;
  return { kind: 'stated', areaSqFt: record.areaSqFt, method: `from ${fileName}` };
}

/**
 * A zone with what the record says of its ground. An outline goes before a stated area, which is kept to hold the outline against;
 * a stated area never takes the place of an outline.
 */
export function mergeShape(zone: Zone, record: LawnRecord, fileName: string): Merged<Zone> {
  if (record.ground !== null) return mergeStated(drawn(zone, record, fileName), record.areaSqFt);
  if (record.areaSqFt === null) return { value: zone, words: [] };
  if (zone.shape.kind === 'drawn') return mergeStated({ value: zone, words: [] }, record.areaSqFt);
  if (sameFigure(zone.shape.areaSqFt, record.areaSqFt)) return { value: zone, words: [] };
  const shape: ZoneShape = { kind: 'stated', areaSqFt: record.areaSqFt, method: `from ${fileName}` };
  const words = [`area of ${zone.name} ${areaWords(zone.shape.areaSqFt)} → ${areaWords(record.areaSqFt)} ft²`];
  return { value: { ...zone, shape }, words };
}

function drawn(zone: Zone, record: LawnRecord, fileName: string): Merged<Zone> {
  const { shape } = zone;
  if (record.ground === null) return { value: zone, words: [] };
  const { geometry } = record.ground;
  if (shape.kind === 'drawn') {
    if (sameOutline(shape.geometry, geometry)) return { value: zone, words: [] };
    const after: ZoneShape = { kind: 'drawn', geometry, drawnOver: fileName };
    return { value: { ...zone, shape: after }, words: [`outline of ${zone.name}`] };
  }
  const stated = zone.statedAreaSqFt ?? (shape.areaSqFt > 0 ? shape.areaSqFt : null);
  const value: Zone = {
    ...zone,
    shape: { kind: 'drawn', geometry, drawnOver: fileName },
    ...(stated === null ? {} : { statedAreaSqFt: stated }),
  };
  return { value, words: [`${zone.name} has an outline now, its stated area is kept beside it`] };
}

function mergeStated({ value: zone, words }: Merged<Zone>, areaSqFt: number | null): Merged<Zone> {
  if (areaSqFt === null || sameFigure(zone.statedAreaSqFt ?? 0, areaSqFt)) return { value: zone, words };
  const text = `stated area of ${zone.name} ${areaWords(areaSqFt)} ft², beside its outline`;
  return { value: { ...zone, statedAreaSqFt: areaSqFt }, words: [...words, text] };
}

export function sameFigure(left: number, right: number): boolean {
  return Math.abs(left - right) <= 1e-9 * Math.max(Math.abs(left), Math.abs(right));
}

function areaWords(squareFeet: number): string {
  return formatNumber(squareFeet, 0);
}
