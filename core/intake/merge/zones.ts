import type { Zone } from '../../book/index.ts';
import { freeId } from '../drafts.ts';
import { groundOf, likeness } from '../likeness.ts';
import type { LawnRecord } from '../record.ts';
import { type Merged, mergeShape, sameFigure, shapeOf } from './shape.ts';

export type MergedZones = Merged<readonly Zone[]> & {
  /** Ids of the zones by the ids that the file gives them. */
  readonly idOf: ReadonlyMap<string, string>;
};

/** The zones of a property with those of the file: a zone that the file does not speak of stays. */
export function mergeZones(before: readonly Zone[], lawns: readonly LawnRecord[], fileName: string): MergedZones {
  const zones = [...before];
  const free = new Set(before.keys());
  const words: string[] = [];
  const idOf = new Map<string, string>();
  for (const lawn of lawns) {
    const place = findZone(zones, free, lawn, lawns.length === 1);
    const zone = place === null ? undefined : zones[place];
    if (place === null || zone === undefined) {
      const added = newZone(zones, lawn, fileName);
      if (added === null) continue;
      zones.push(added);
      words.push(`zone ${added.name} added`);
      if (lawn.id !== null) idOf.set(lawn.id, added.id);
      continue;
    }
    free.delete(place);
    const merged = mergeZone(zone, lawn, fileName);
    zones[place] = merged.value;
    words.push(...merged.words);
    if (lawn.id !== null) idOf.set(lawn.id, zone.id);
  }
  return { value: zones, words, idOf };
}

/** The zone that a record is: by its id, by its place, by what it states, or because there is only one on both sides. */
function findZone(zones: readonly Zone[], free: ReadonlySet<number>, lawn: LawnRecord, isOnly: boolean): number | null {
  const left = [...free];
  const named = left.find((place) => lawn.id !== null && zones[place]?.id === lawn.id);
  if (named !== undefined) return named;
  const alike = closest(zones, left, lawn);
  if (alike !== null) return alike;
  const stated = left.find((place) => isStatedAs(zones[place], lawn));
  if (stated !== undefined) return stated;
  const [only] = left;
  return isOnly && free.size === 1 && zones.length === 1 && only !== undefined ? only : null;
}

/** Whether a zone without outline is the one that a record without outline names, or, without a name, gives the area of. */
function isStatedAs(zone: Zone | undefined, { ground, joins, name, areaSqFt }: LawnRecord): boolean {
  if (zone?.shape.kind !== 'stated' || ground !== null || joins === null) return false;
  return name === null ? areaSqFt !== null && sameFigure(areaSqFt, zone.shape.areaSqFt) : zone.name === name;
}

function closest(zones: readonly Zone[], places: readonly number[], { ground }: LawnRecord): number | null {
  if (ground === null) return null;
  let best: number | null = null;
  let most = 0;
  for (const place of places) {
    const shape = zones[place]?.shape;
    const own = shape?.kind === 'drawn' ? groundOf(shape.geometry) : null;
    const alike = own === null ? null : likeness(ground, own);
    if (alike === null || alike <= most) continue;
    best = place;
    most = alike;
  }
  return best;
}

function mergeZone(zone: Zone, lawn: LawnRecord, fileName: string): Merged<Zone> {
  const { value, words } = mergeShape(zone, lawn, fileName);
  const name = lawn.joins !== null || lawn.isZone ? lawn.name : null;
  const changed = [...words];
  let after = value;
  if (name !== null && name !== zone.name) {
    after = { ...after, name };
    changed.push(`zone ${zone.name} is now called ${name}`);
  }
  if (lawn.slopeDeg !== null && !sameFigure(lawn.slopeDeg, zone.slopeDeg)) {
    const { slopeWorking: _, ...rest } = after;
    after = { ...rest, slopeDeg: lawn.slopeDeg };
    changed.push(`slope of ${zone.name} ${degrees(zone.slopeDeg)}° → ${degrees(lawn.slopeDeg)}°`);
  }
  return { value: after, words: changed };
}

/** Null where the record has neither outline nor area, or states one area for several zones. */
function newZone(zones: readonly Zone[], lawn: LawnRecord, fileName: string): Zone | null {
  const shape = shapeOf(lawn, fileName);
  if (shape === null || (shape.kind === 'stated' && zones.length > 0 && lawn.joins === null)) return null;
  const stem = lawn.id !== null && lawn.ground !== null ? lawn.id : 'lawn';
  const id = freeId(stem, (each) => zones.some((zone) => zone.id === each));
  const name = lawn.ground === null && lawn.joins === null ? id : (lawn.name ?? id);
  const stated = lawn.ground === null || lawn.areaSqFt === null ? {} : { statedAreaSqFt: lawn.areaSqFt };
  return { id, name, shape, slopeDeg: lawn.slopeDeg ?? 0, ...stated, gateIds: [] };
}

function degrees(value: number): string {
  return String(Math.round(value * 10) / 10);
}
