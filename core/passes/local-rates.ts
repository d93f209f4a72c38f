import type { PlanePoint, Region } from '../geometry/index.ts';
import { wholePasses } from './legs.ts';
import { pivotOf, sidesOf, turnBack, turnSides } from './sides.ts';
import type { Leg, OpenSection, PassPlan } from './types.ts';

/** How unevenly passes treat the ground that they treat, as multiples of the rate of one pass. */
export type LocalRates = {
  /** What comes out over the ground treated at least once. */
  readonly average: number;
  /** Most passes over any one place of the raster. */
  readonly worst: number;
  /** Share of the treated ground that is gone over more than once. */
  readonly repeatedShare: number;
  /** Side of a field of the raster, metres. */
  readonly stepM: number;
};

/** Fields of the raster over the box of the ground, about, unless told. */
const USUAL_FIELDS = 60_000;
const FINEST_M = 0.02;

/**
 * Passes over each place, by a raster that lies with the swaths. `average` is exact, from the areas; the other figures are of the
 * places in the middle of the fields.
 * @param sectionsM widths of the sections from left to right, metres, where the plan has any
 * @param fields of the raster over the box of the ground, about
 */
export function localRates(
  ground: Region,
  plan: PassPlan,
  sectionsM: readonly number[] | null = null,
  fields = USUAL_FIELDS,
): LocalRates {
  const treatedSqM = plan.areaSqM - plan.handTrimSqM;
  if (!(treatedSqM > 0)) return { average: 0, worst: 0, repeatedShare: 0, stepM: 0 };
  const pivot = pivotOf(ground);
  const angle = ((plan.angleDeg ?? 0) * Math.PI) / 180;
  const raster = new Raster(ground, pivot, angle, fields);
  for (const leg of wholePasses(plan.path)) raster.add(leg, sectionsM);
  return { average: plan.appliedSqM / treatedSqM, ...raster.counts(), stepM: raster.stepM };
}

class Raster {
  readonly stepM: number;
  private readonly columns: number;
  private readonly rows: number;
  private readonly west: number;
  private readonly south: number;
  private readonly passes: Uint16Array;
  private readonly stamps: Int32Array;
  private readonly isGround: Uint8Array;
  private readonly pivot: PlanePoint;
  private readonly angle: number;
  private leg = 0;

  constructor(ground: Region, pivot: PlanePoint, angle: number, fields: number) {
    const sides = turnSides(sidesOf(ground), angle, pivot);
    const [xs, ys] = [sides.filter((_, at) => at % 2 === 0), sides.filter((_, at) => at % 2 === 1)];
    this.pivot = pivot;
    this.angle = angle;
    this.west = least(xs);
    this.south = least(ys);
    const wide = -least(xs.map((x) => -x)) - this.west;
    const high = -least(ys.map((y) => -y)) - this.south;
    this.stepM = Math.max(FINEST_M, Math.sqrt((wide * high) / fields));
    this.columns = Math.max(1, Math.ceil(wide / this.stepM));
    this.rows = Math.max(1, Math.ceil(high / this.stepM));
    this.passes = new Uint16Array(this.columns * this.rows);
    this.stamps = new Int32Array(this.columns * this.rows);
    this.isGround = new Uint8Array(this.columns * this.rows);
    this.markGround(sides);
  }

  /** Counts a leg once for every place that it treats. */
  add(leg: Leg, sectionsM: readonly number[] | null): void {
    this.leg += 1;
    for (let at = 1; at < leg.points.length; at += 1) {
      const from = this.turn(leg.points[at - 1] as PlanePoint);
      const to = this.turn(leg.points[at] as PlanePoint);
      if (leg.kind === 'trim') this.addBand(from, to, leg.widthM / 2);
      else for (const bar of barsOf(from, to, leg, sectionsM)) this.addBar(from, to, bar);
    }
  }

  counts(): { worst: number; repeatedShare: number } {
    let [worst, once, again] = [0, 0, 0];
    for (const [at, passes] of this.passes.entries()) {
      if (passes === 0 || this.isGround[at] === 0) continue;
      once += 1;
      if (passes > 1) again += 1;
      if (passes > worst) worst = passes;
    }
    return { worst, repeatedShare: once > 0 ? again / once : 0 };
  }

  private turn(point: PlanePoint): PlanePoint {
    const back = turnBack({ x: point.x - this.pivot.x, y: point.y - this.pivot.y }, -this.angle, { x: 0, y: 0 });
    return { x: back.x - this.west, y: back.y - this.south };
  }

  /** Within a distance of a line. */
  private addBand(from: PlanePoint, to: PlanePoint, halfM: number): void {
    const lengthSq = (to.x - from.x) ** 2 + (to.y - from.y) ** 2;
    this.each(from, to, halfM, (x, y) => {
      const along = (x - from.x) * (to.x - from.x) + (y - from.y) * (to.y - from.y);
      const share = lengthSq === 0 ? 0 : Math.max(0, Math.min(1, along / lengthSq));
      return Math.hypot(x - from.x - share * (to.x - from.x), y - from.y - share * (to.y - from.y)) <= halfM;
    });
  }

  /** In a rectangle along a line. */
  private addBar(from: PlanePoint, to: PlanePoint, bar: Bar): void {
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (length === 0) return;
    const [cosine, sine] = [(to.x - from.x) / length, (to.y - from.y) / length];
    const reach = Math.max(Math.abs(bar.leftM), Math.abs(bar.rightM));
    this.each(from, to, reach, (x, y) => {
      const along = (x - from.x) * cosine + (y - from.y) * sine;
      const left = (y - from.y) * cosine - (x - from.x) * sine;
      return along >= bar.fromM && along <= bar.toM && left >= bar.rightM && left <= bar.leftM;
    });
  }

  private each(from: PlanePoint, to: PlanePoint, reach: number, treats: (x: number, y: number) => boolean): void {
    const { stepM, columns, rows } = this;
    const first = Math.max(0, Math.floor((Math.min(from.x, to.x) - reach) / stepM));
    const last = Math.min(columns - 1, Math.ceil((Math.max(from.x, to.x) + reach) / stepM));
    const bottom = Math.max(0, Math.floor((Math.min(from.y, to.y) - reach) / stepM));
    const top = Math.min(rows - 1, Math.ceil((Math.max(from.y, to.y) + reach) / stepM));
    for (let row = bottom; row <= top; row += 1) {
      for (let column = first; column <= last; column += 1) {
        const at = row * columns + column;
        if (this.stamps[at] === this.leg || !treats((column + 0.5) * stepM, (row + 0.5) * stepM)) continue;
        this.stamps[at] = this.leg;
        this.passes[at] = (this.passes[at] as number) + 1;
      }
    }
  }

  /** Fields whose middle lies on the ground, row by row between the crossings of its sides. */
  private markGround(sides: Float64Array): void {
    for (let row = 0; row < this.rows; row += 1) {
      const y = this.south + (row + 0.5) * this.stepM;
      const crossings: number[] = [];
      for (let at = 0; at < sides.length; at += 4) {
        const [x1, y1, x2, y2] = sides.subarray(at, at + 4) as unknown as [number, number, number, number];
        if (y1 > y !== y2 > y) crossings.push(x1 + ((y - y1) / (y2 - y1)) * (x2 - x1));
      }
      crossings.sort((left, right) => left - right);
      for (let pair = 0; pair + 1 < crossings.length; pair += 2) {
        const first = Math.ceil(((crossings[pair] as number) - this.west) / this.stepM - 0.5);
        const last = Math.floor(((crossings[pair + 1] as number) - this.west) / this.stepM - 0.5);
        if (last >= first) this.isGround.fill(1, row * this.columns + first, row * this.columns + last + 1);
      }
    }
  }
}

/** A part of a swath: metres along it, and to the left of its middle; the right side is negative. */
type Bar = { readonly fromM: number; readonly toM: number; readonly leftM: number; readonly rightM: number };

function barsOf(from: PlanePoint, to: PlanePoint, leg: Leg, sectionsM: readonly number[] | null): readonly Bar[] {
  const half = leg.widthM / 2;
  if (leg.open === undefined || sectionsM === null) {
    return [{ fromM: 0, toM: Math.hypot(to.x - from.x, to.y - from.y), leftM: half, rightM: -half }];
  }
  const edges = [half];
  for (const widthM of sectionsM) edges.push((edges.at(-1) as number) - widthM);
  return leg.open.map(
    ({ section, fromM, toM }: OpenSection): Bar => ({
      fromM,
      toM,
      leftM: edges[section] as number,
      rightM: edges[section + 1] as number,
    }),
  );
}

const least = (values: Float64Array): number =>
  values.reduce((low, each) => Math.min(low, each), Number.POSITIVE_INFINITY);
