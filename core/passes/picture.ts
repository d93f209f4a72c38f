import { ok, type Result } from '../base/index.ts';
import {
  coveredTwice,
  difference,
  grow,
  isEmpty,
  type PlanePoint,
  type Region,
  regionOf,
  STEPS_PER_METRE,
  shrink,
  toGeometry,
} from '../geometry/index.ts';
import { feetToMetres, metresToFeet, quantity, squareMetresToSquareFeet } from '../units/index.ts';
import { angleOfBearing } from './direction.ts';
import { gaugeOf } from './gauge.ts';
import { wholePasses } from './legs.ts';
import { localRates } from './local-rates.ts';
import { type PassGround, type PlacedPasses, passesOnOutline } from './on-outline.ts';
import type { PassPicture, PictureLeg } from './picture-types.ts';
import { lengthM } from './transit.ts';
import type { Gauge, Leg, PassHead, PassOptions } from './types.ts';

/**
 * Passes over a zone to be drawn and read. Lines and outlines are on the map; lengths of the way too, while areas and minutes are of
 * the ground, which is larger where it is steep.
 * @param slopeDeg of the ground, from level
 * @returns null where the outline has no ground. Errors: those of `planPasses`.
 */
export function passPicture(
  ground: PassGround,
  head: PassHead,
  options: Omit<PassOptions, 'obstacles'>,
  slopeDeg: number,
  where: string,
): Result<PassPicture | null> {
  const gauge = gaugeOf(head, where);
  if (!gauge.ok) return gauge;
  const found = passesOnOutline(ground, head, options, where);
  if (!found.ok) return found;
  if (found.value === null) return ok(null);
  return ok(draw(found.value, head, gauge.value, 1 / Math.cos((slopeDeg * Math.PI) / 180)));
}

const feet = (metres: number): number => metresToFeet(quantity<'m'>(metres));

function draw(
  { ground, plane, plan, path, handTrim }: PlacedPasses,
  head: PassHead,
  gauge: Gauge,
  steeper: number,
): PassPicture {
  const squareFeet = (squareMetres: number): number => steeper * squareMetresToSquareFeet(quantity<'m2'>(squareMetres));
  const rates = localRates(ground, plan, head.sectionsFt?.map((each) => feetToMetres(quantity<'ft'>(each))) ?? null);
  const times = timesOf(plan.path, gauge);
  const legs = plan.path.map((leg, index): PictureLeg => {
    const time = times[index] ?? { fromSec: 0, sec: 0 };
    return {
      kind: leg.kind,
      widthM: leg.widthM,
      positions: path[index]?.positions ?? [],
      ...(leg.goesOn === undefined ? {} : { goesOn: leg.goesOn }),
      ...(leg.open === undefined ? {} : { open: leg.open }),
      lengthFt: feet(lengthM(leg.points)),
      coveredSqFt: squareFeet(leg.appliedSqM),
      fromMinutes: (steeper * time.fromSec) / 60,
      minutes: (steeper * time.sec) / 60,
    };
  });
  return {
    legs,
    overlap: toGeometry(overlapOf(plan.path), plane),
    handTrim,
    areaSqFt: squareFeet(plan.areaSqM),
    coveredSqFt: squareFeet(plan.appliedSqM),
    handTrimSqFt: squareFeet(plan.handTrimSqM),
    minutes: steeper * plan.minutes,
    swathCount: plan.swathCount,
    trimCount: plan.trimCount,
    cornerCount: plan.cornerCount,
    sprayedFt: feet(plan.sprayedM),
    unsprayedFt: feet(plan.unsprayedM),
    overlapShare: plan.overlapShare,
    missedShare: plan.missedShare,
    averagePasses: rates.average,
    worstPasses: rates.worst,
    bearingDeg: plan.angleDeg === null ? null : angleOfBearing(plan.angleDeg),
    mark: plan.mark,
    notes: plan.notes,
  };
}

type LegTime = { readonly fromSec: number; readonly sec: number };

/**
 * When each leg begins and how long it takes. A turn is counted before every leg with something coming out but the first, and but
 * trim passes that go on: turning out of a corner and back onto the pass is one turn.
 */
function timesOf(legs: readonly Leg[], { metresPerSec, transitMetresPerSec, turnSec }: Gauge): readonly LegTime[] {
  let nowSec = 0;
  let hasBegun = false;
  return legs.map((leg) => {
    const isWork = leg.kind !== 'transit';
    if (isWork && hasBegun && leg.goesOn !== true) nowSec += turnSec;
    hasBegun ||= isWork;
    const sec = lengthM(leg.points) / (isWork ? metresPerSec : transitMetresPerSec);
    const fromSec = nowSec;
    nowSec += sec;
    return { fromSec, sec };
  });
}

/** Ground that two legs or more treat, whole swaths taken: with sections shut, less of it is treated twice. */
export function overlapOf(legs: readonly Leg[]): Region {
  return coveredTwice(wholePasses(legs).map(bandOf));
}

/** What a leg treats: the rectangle of a swath or of a run into a corner, or the ground within half the width of the closed line of a trim pass. */
function bandOf({ kind, points, widthM }: Leg): Region {
  if (kind === 'trim') {
    const inside = filled(points.slice(0, -1));
    const outer = grow(inside, widthM / 2);
    const inner = shrink(inside, widthM / 2);
    return isEmpty(inner) ? outer : difference(outer, [inner]);
  }
  const [from, to] = points;
  if (from === undefined || to === undefined) return regionOf([]);
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const x = ((to.x - from.x) / length) * (widthM / 2);
  const y = ((to.y - from.y) / length) * (widthM / 2);
  return filled([
    { x: from.x + y, y: from.y - x },
    { x: to.x + y, y: to.y - x },
    { x: to.x - y, y: to.y + x },
    { x: from.x - y, y: from.y + x },
  ]);
}

/** The inside of a plain closed line, anticlockwise whichever way it was driven. */
function filled(points: readonly PlanePoint[]): Region {
  const path = points.map(({ x, y }) => ({ x: Math.round(x * STEPS_PER_METRE), y: Math.round(y * STEPS_PER_METRE) }));
  let twice = 0;
  let before = path[path.length - 1];
  for (const point of path) {
    if (before !== undefined) twice += before.x * point.y - point.x * before.y;
    before = point;
  }
  return regionOf([twice < 0 ? path.toReversed() : path]);
}
