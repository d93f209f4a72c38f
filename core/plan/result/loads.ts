import type { ProblemRig } from '../problem/index.ts';
import { fromParts } from './amounts.ts';
import type { PlanActivity, PlanFill, PlanLoad } from './types.ts';

type Draft = { -readonly [Key in keyof PlanLoad]: PlanLoad[Key] };
export type Treat = Extract<PlanActivity, { readonly kind: 'treat' }>;

/**
 * The loads of a day: every fill of a compartment that work draws on, numbered in order of time, with the ground that is treated out of that
 * compartment until its next fill.
 *
 * @param leftShareOf what of the ground of a piece of work the machine does not reach, as a share
 */
export function loadsOf(
  rig: ProblemRig,
  activities: readonly PlanActivity[],
  leftShareOf: (treat: Treat) => number,
): readonly PlanLoad[] {
  const loads: Draft[] = [];
  const current = new Map<string, Draft>();
  const levels = new Map<string, number>();
  /** Material in each sump. */
  const sumps = new Map<string, string>();
  for (const activity of activities) {
    if (activity.kind === 'morning') {
      for (const fill of activity.fills) open(fill, activity.startSec, '', '', false);
    } else if (activity.kind === 'refill') {
      for (const id of activity.rinsedCompartmentIds) empty(id);
      for (const fill of activity.fills)
        open(fill, activity.startSec, activity.fillPointId, activity.propertyId, false);
    } else if (activity.kind === 'pour') {
      for (const fill of activity.fills) {
        pourOut(activity.fromCompartmentId, fill.weightLb);
        open(fill, activity.startSec, '', activity.propertyId, true);
      }
    } else if (activity.kind === 'treat') cover(activity);
  }
  for (const load of current.values()) close(load, levels.get(load.compartmentId) ?? 0);
  return loads;

  function pourOut(compartmentId: string, weightLb: number): void {
    levels.set(compartmentId, (levels.get(compartmentId) ?? 0) - weightLb);
  }

  function open(fill: PlanFill, startSec: number, fillPointId: string, atPropertyId: string, fromBags: boolean): void {
    const vessel = rig.compartments.find((each) => each.id === fill.compartmentId);
    const before = clean(levels.get(fill.compartmentId) ?? 0);
    levels.set(fill.compartmentId, before + fill.volumeGal + fill.weightLb);
    if (vessel?.pours !== undefined) return;
    const previous = current.get(fill.compartmentId);
    if (previous !== undefined) close(previous, before);
    const kind = vessel?.kind ?? 'tank';
    const sumpGal = sumps.get(fill.compartmentId) === fill.materialId ? 0 : fromParts(vessel?.sumpParts ?? 0);
    sumps.set(fill.compartmentId, fill.materialId);
    const load: Draft = {
      ...fill,
      sumpGal,
      number: loads.length + 1,
      kind,
      fillPointId,
      fromBags,
      atPropertyId,
      startSec,
      beforeGal: kind === 'tank' ? before : 0,
      beforeLb: kind === 'tank' ? 0 : before,
      covers: [],
      coversSqFt: 0,
      leftGal: 0,
      leftLb: 0,
      why: '',
    };
    current.set(fill.compartmentId, load);
    loads.push(load);
  }

  function empty(compartmentId: string): void {
    const previous = current.get(compartmentId);
    if (previous !== undefined) close(previous, levels.get(compartmentId) ?? 0);
    current.delete(compartmentId);
    sumps.delete(compartmentId);
    levels.set(compartmentId, 0);
  }

  function close(load: Draft, left: number): void {
    const level = clean(left);
    load.leftGal = load.kind === 'tank' ? level : 0;
    load.leftLb = load.kind === 'tank' ? 0 : level;
  }

  function cover(treat: Treat): void {
    for (const draw of treat.draws) {
      const load = current.get(draw.compartmentId);
      levels.set(draw.compartmentId, (levels.get(draw.compartmentId) ?? 0) - draw.volumeGal - draw.weightLb);
      if (load === undefined || treat.areaSqFt === 0) continue;
      const { propertyId, zoneId, treatmentId } = treat;
      const areaSqFt = treat.areaSqFt - treat.areaSqFt * leftShareOf(treat);
      load.covers = [...load.covers, { propertyId, zoneId, treatmentId, fromSqFt: treat.doneSqFt, areaSqFt }];
      load.coversSqFt += areaSqFt;
    }
  }
}

/** Takes the floating-point dust off a level of whole hundredths. */
export function clean(level: number): number {
  return Math.round(level * 100) / 100;
}
