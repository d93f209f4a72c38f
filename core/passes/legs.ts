import type { PlanePoint } from '../geometry/index.ts';
import type { CornerRun } from './corners.ts';
import { lengthM } from './transit.ts';
import type { Gauge, Leg } from './types.ts';
import { distanceM } from './visits.ts';

/**
 * A closed trim pass as legs: at each corner that is driven out it is broken off for the run into it, and goes on from there.
 * The edge is on its right, or on its left where that side is shielded.
 * @param runs those of all trim passes; a run belongs to the loop that has its beginning as a corner
 */
export function trimLegs(loop: readonly PlanePoint[], runs: readonly CornerRun[], gauge: Gauge): readonly Leg[] {
  const points = gauge.shieldedSide === 'left' ? loop.toReversed() : loop;
  if (runs.length === 0) return [trimLeg(points, false, gauge)];
  const left = new Set(runs);
  const legs: Leg[] = [];
  let piece: PlanePoint[] = [];
  let goesOn = false;
  const close = (): void => {
    if (lengthM(piece) > 0) {
      legs.push(trimLeg(piece, goesOn, gauge));
      goesOn = true;
    }
  };
  for (const point of points) {
    piece.push(point);
    const here = [...left].filter(({ from }) => from.x === point.x && from.y === point.y);
    if (here.length === 0) continue;
    close();
    piece = [point];
    for (const run of here) {
      legs.push(cornerLeg(run, gauge));
      left.delete(run);
    }
  }
  close();
  return legs;
}

function trimLeg(points: readonly PlanePoint[], goesOn: boolean, { trimSwathM }: Gauge): Leg {
  const leg = { kind: 'trim', points, widthM: trimSwathM, appliedSqM: trimSwathM * lengthM(points) } as const;
  return goesOn ? { ...leg, goesOn } : leg;
}

function cornerLeg({ from, to }: CornerRun, { trimSwathM }: Gauge): Leg {
  return { kind: 'corner', points: [from, to], widthM: trimSwathM, appliedSqM: trimSwathM * distanceM(from, to) };
}

/** The legs that treat ground, the pieces of each trim pass put together again. */
export function wholePasses(legs: readonly Leg[]): readonly Leg[] {
  const whole: Leg[] = [];
  let trimAt = -1;
  for (const leg of legs) {
    const before = whole[trimAt];
    if (leg.kind === 'transit') continue;
    if (leg.goesOn === true && before !== undefined) {
      whole[trimAt] = {
        ...before,
        points: [...before.points, ...leg.points.slice(1)],
        appliedSqM: before.appliedSqM + leg.appliedSqM,
      };
      continue;
    }
    if (leg.kind === 'trim') trimAt = whole.length;
    whole.push(leg);
  }
  return whole;
}
