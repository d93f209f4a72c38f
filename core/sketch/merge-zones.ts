import { ok, type Result } from '../base/index.ts';
import type { Property, Zone } from '../book/index.ts';
import { merge } from './area-edits.ts';
import { needless, refuse } from './refuse.ts';

type DrawnShape = Extract<Zone['shape'], { readonly kind: 'drawn' }>;
type DrawnZone = Zone & { readonly shape: DrawnShape };

/**
 * The property with several of its drawn zones made one. It keeps id, name, place and hose stand of the first named; the gates of
 * all are on the way to it; the weakest ground and the least certain outline count for all of it; areas from cards are added
 * up where each zone has one, and left out otherwise, as is the paced hose length.
 *
 * Errors: `nothing-to-do` for fewer than two drawn zones; `geometry-invalid` where slopes differ, since one figure would then
 * stand for ground that does not have it, or where an outline cannot be used
 */
export function mergeZones(property: Property, zoneIds: readonly string[]): Result<Property> {
  const zones = [...new Set(zoneIds)].flatMap((id) => drawnZones(property).find((zone) => zone.id === id) ?? []);
  const [first] = zones;
  if (first === undefined || zones.length < 2) {
    return needless('There are fewer than two zones with outlines.', 'Choose two or more.');
  }
  const steeper = zones.find((zone) => zone.slopeDeg !== first.slopeDeg);
  if (steeper !== undefined) {
    return refuse(
      `Zone ${first.name} slopes by ${first.slopeDeg} degrees, zone ${steeper.name} by ${steeper.slopeDeg}.`,
      'Give them the same slope first, or keep them apart.',
    );
  }
  const geometry = merge(zones.map((zone) => zone.shape.geometry));
  if (!geometry.ok) return geometry;
  const merged = mergedZone(first, zones, { ...mergedShape(first.shape, zones), geometry: geometry.value });
  return ok({ ...property, zones: property.zones.flatMap((each) => kept(each, first, merged, zones)) });
}

function drawnZones(property: Property): readonly DrawnZone[] {
  return property.zones.filter((zone): zone is DrawnZone => zone.shape.kind === 'drawn');
}

function kept(zone: Zone, first: Zone, merged: Zone, zones: readonly Zone[]): readonly Zone[] {
  if (zone === first) return [merged];
  return zones.includes(zone) ? [] : [zone];
}

function mergedZone(first: Zone, zones: readonly Zone[], shape: DrawnShape): Zone {
  const { statedAreaSqFt: _card, hosePathFt: _hose, wetLimitLb: _limit, ...rest } = first;
  const cards = zones.flatMap((zone) => zone.statedAreaSqFt ?? []);
  const limits = zones.flatMap((zone) => zone.wetLimitLb ?? []);
  return {
    ...rest,
    shape,
    gateIds: [...new Set(zones.flatMap((zone) => zone.gateIds))],
    ...(cards.length === zones.length ? { statedAreaSqFt: cards.reduce((sum, each) => sum + each, 0) } : {}),
    ...(limits.length > 0 ? { wetLimitLb: Math.min(...limits) } : {}),
  };
}

function mergedShape(first: DrawnShape, zones: readonly DrawnZone[]): DrawnShape {
  const { outlineErrorFt: _error, ...rest } = first;
  const errors = zones.flatMap((zone) => zone.shape.outlineErrorFt ?? []);
  return errors.length === zones.length ? { ...rest, outlineErrorFt: Math.max(...errors) } : rest;
}
