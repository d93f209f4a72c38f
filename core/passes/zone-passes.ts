import { ok, type Result } from '../base/index.ts';
import type { Head, Property, Zone } from '../book/index.ts';
import type { ZoneMeasure } from '../measure/index.ts';
import { quantity, squareMetresToSquareFeet } from '../units/index.ts';
import { passHeadOf } from './book-head.ts';
import { directionOptions } from './direction.ts';
import { type KeptFigure, type KeptFigures, knownFigures, type PassFigures, passFigures } from './kept.ts';
import type { PassGround } from './on-outline.ts';

/** What passes with a head over the whole of a zone come to, on the ground that is treated. */
export type ZonePasses = {
  /** Once over, on ground as steep as the zone's. */
  readonly minutes: number;
  /** Ground that the material goes over, overlap included, as a multiple of the zone's ground. */
  readonly coveredShare: number;
  /** Ground that the machine does not reach, as a share of the zone's. */
  readonly leftShare: number;
  /** Most passes over any one place. */
  readonly worstPasses: number;
  readonly swathCount: number;
  readonly trimCount: number;
};

/**
 * Passes over a whole zone, in the direction that the zone and the head ask for. They are laid on the map: on a slope the way is
 * taken to be longer by as much as there is more ground.
 *
 * @param ground what is treated of the zone
 * @param groundSqFt how much that is, slope counted
 * @returns null where there is no outline, or the book does not say how the head is driven. Errors: those of `planPasses`.
 */
export function zonePasses(
  zone: Zone,
  ground: PassGround,
  groundSqFt: number,
  head: Head,
  where: string,
): Result<ZonePasses | null> {
  const passHead = passHeadOf(head);
  if (passHead === null || !(groundSqFt > 0)) return ok(null);
  const found = passFigures(ground, passHead, directionOptions(zone, head.passes ?? null), where);
  if (!found.ok) return found;
  if (found.value === null) return ok(null);
  return ok(onGround(found.value, groundSqFt));
}

/** Figures of the map on ground that may be steep; null where there is none on the map. */
function onGround(figures: PassFigures, groundSqFt: number): ZonePasses | null {
  const { areaSqM, appliedSqM, handTrimSqM, minutes, worstPasses, swathCount, trimCount } = figures;
  if (!(areaSqM > 0)) return null;
  const steeper = groundSqFt / squareMetresToSquareFeet(quantity<'m2'>(areaSqM));
  return {
    minutes: minutes * Math.max(1, steeper),
    coveredShare: appliedSqM / areaSqM,
    leftShare: Math.min(1, handTrimSqM / areaSqM),
    worstPasses,
    swathCount,
    trimCount,
  };
}

/** Passes with a head over the whole of a zone; null where they are not known. */
export type PassesOf = (property: Property, zone: Zone, measure: ZoneMeasure, head: Head) => ZonePasses | null;
type GroundOf = (property: Property, zoneId: string) => PassGround;

/**
 * Passes over the zones of a property, for tables of who can go where.
 * @param groundOf what is treated of a zone
 */
export function zonePassesWith(groundOf: GroundOf): PassesOf {
  return (property, zone, { areaSqFt }, head) => {
    if (head.passes === undefined) return null;
    const found = zonePasses(zone, groundOf(property, zone.id), areaSqFt ?? 0, head, zone.name);
    return found.ok ? found.value : null;
  };
}

/** Passes that are known without reckoning, what of them was asked for, and whether that was all that was asked for. */
export type KnownPasses = {
  readonly passes: PassesOf;
  readonly asked: () => KeptFigures;
  readonly isComplete: () => boolean;
};

/** Like `zonePassesWith` for where nothing may take long: what is not known counts as if the book did not say it, and is remembered. */
export function knownPassesWith(groundOf: GroundOf): KnownPasses {
  const asked: KeptFigure[] = [];
  let isComplete = true;
  const passes: PassesOf = (property, zone, { areaSqFt }, head) => {
    const passHead = passHeadOf(head);
    const ground = passHead === null || !((areaSqFt ?? 0) > 0) ? null : groundOf(property, zone.id);
    if (passHead === null || ground === null || ground.outline.length === 0) return null;
    const known = knownFigures(ground, passHead, directionOptions(zone, head.passes ?? null));
    if (known === null) isComplete = false;
    else asked.push(known);
    return known === null || known[1] === null ? null : onGround(known[1], areaSqFt ?? 0);
  };
  return { passes, asked: () => asked, isComplete: () => isComplete };
}
