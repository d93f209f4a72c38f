/** A trip that was driven, and what its way along the roads was reckoned to take. */
export type Trip = {
  /** Seconds on each class of road, by the name of the class, before any correction. */
  readonly secondsByClass: Readonly<Record<string, number>>;
  /** Seconds of turns, signals and whatever else belongs to no class. */
  readonly otherSec: number;
  /** What it really took, seconds. */
  readonly drivenSec: number;
};

/** What real trips say of one class of road. */
export type LearnedClass = {
  readonly roadClass: string;
  /** Trips with at least a tenth of their time on this class. */
  readonly trips: number;
  /** Times on this class are to be multiplied by it; 1 where there are too few trips. */
  readonly timeFactor: number;
  /** Whether there are trips enough. */
  readonly isUsed: boolean;
};

/** A class of road with fewer trips keeps its speed. */
export const LEAST_TRIPS = 20;
/** A trip tells of a class where it spends so much of its time. Common practice, no source. */
const LEAST_SHARE = 0.1;
/** The pull towards 1, as strong as so many seconds that were driven exactly as reckoned. Common practice, no source. */
const RIDGE_SEC = 120;
/** No correction beyond these: more says that something else is wrong. Common practice, no source. */
const FACTORS = { least: 0.5, most: 2 } as const;
/** Trips this many times off were no trips straight from place to place. Common practice, no source. */
const FARTHEST_OFF = 3;
/** Beyond so many middle deviations a trip counts less: Huber, Annals of Mathematical Statistics 35 (1964), from memory. */
const HUBER = 1.345;
/** The middle absolute deviation times this is the standard deviation of normal noise (from memory). */
const PER_MIDDLE_DEVIATION = 1.4826;
const ROUNDS = 12;
/** A usual drive between two lawns. */
const USUAL_SEC = 300;

/**
 * Corrections of driving times by class of road from trips that were driven: weighted least squares of the driven seconds on the
 * seconds of each class, where the spread grows with the time, pulled towards 1, and with less weight for trips far off (Huber).
 * Classes with fewer than `LEAST_TRIPS` trips are held at 1.
 *
 * @returns one line for every class that any trip used, the one with most trips first
 */
export function learnFactors(trips: readonly Trip[]): readonly LearnedClass[] {
  const usable = trips.filter(isUsable);
  const counts = new Map<string, number>();
  for (const trip of usable) {
    for (const [name, seconds] of Object.entries(trip.secondsByClass)) {
      const tells = seconds >= LEAST_SHARE * reckonedSec(trip);
      counts.set(name, (counts.get(name) ?? 0) + (tells ? 1 : 0));
    }
  }
  const names = [...counts].filter(([, count]) => count >= LEAST_TRIPS).map(([name]) => name);
  const factors = correctionsOf(usable, names);
  return [...counts]
    .map(([roadClass, count]): LearnedClass => {
      const found = factors[names.indexOf(roadClass)];
      return { roadClass, trips: count, timeFactor: found ?? 1, isUsed: found !== undefined };
    })
    .toSorted((one, other) => other.trips - one.trips || (one.roadClass < other.roadClass ? -1 : 1));
}

function reckonedSec({ secondsByClass, otherSec }: Trip): number {
  return Object.values(secondsByClass).reduce((sum, each) => sum + each, otherSec);
}

function isUsable(trip: Trip): boolean {
  const reckoned = reckonedSec(trip);
  const ratio = trip.drivenSec / reckoned;
  return reckoned > 0 && ratio >= 1 / FARTHEST_OFF && ratio <= FARTHEST_OFF;
}

function correctionsOf(trips: readonly Trip[], names: readonly string[]): readonly number[] {
  if (names.length === 0) return [];
  const rows = trips.map((trip) => {
    const own = names.map((name) => trip.secondsByClass[name] ?? 0);
    const reckoned = reckonedSec(trip);
    // What the trip took beyond what was reckoned, to be explained by its classes.
    return { own, beyond: trip.drivenSec - reckoned, variance: varianceOf(reckoned) };
  });
  let weights = rows.map(() => 1);
  let deltas = names.map(() => 0);
  for (let round = 0; round < ROUNDS; round += 1) {
    deltas = solveRidge(rows, weights);
    const misses = rows.map(({ own, beyond, variance }) => (beyond - dot(own, deltas)) / Math.sqrt(variance));
    const spread = PER_MIDDLE_DEVIATION * middle(misses.map(Math.abs));
    weights = misses.map((each) => Math.min(1, (HUBER * spread) / Math.max(Math.abs(each), 1e-9)));
    if (spread === 0) break;
  }
  return deltas.map((each) => Math.min(FACTORS.most, Math.max(FACTORS.least, 1 + each)));
}

type Row = { readonly own: readonly number[]; readonly beyond: number; readonly variance: number };

/**
 * How far the time of a trip spreads, up to a factor: short trips by chance alone, with the square root of their time; long ones
 * in proportion to it. Common practice, no source.
 */
function varianceOf(reckonedSec: number): number {
  return (reckonedSec * (reckonedSec + USUAL_SEC)) / (2 * USUAL_SEC);
}

/** Normal equations, each trip weighed by its variance. */
function solveRidge(rows: readonly Row[], weights: readonly number[]): number[] {
  const size = rows[0]?.own.length ?? 0;
  const matrix = Array.from({ length: size }, (_, row) =>
    Array.from({ length: size + 1 }, (__, column) => (row === column ? RIDGE_SEC : 0)),
  );
  rows.forEach(({ own, beyond, variance }, index) => {
    const weight = (weights[index] ?? 0) / variance;
    own.forEach((left, row) => {
      if (left === 0) return;
      const line = matrix[row] as number[];
      own.forEach((right, column) => {
        line[column] = (line[column] ?? 0) + weight * left * right;
      });
      line[size] = (line[size] ?? 0) + weight * left * beyond;
    });
  });
  return eliminate(matrix);
}

/** Gauss without pivoting: the matrix is symmetric and, with the ridge, positive definite. */
function eliminate(matrix: number[][]): number[] {
  const size = matrix.length;
  for (let step = 0; step < size; step += 1) {
    const lead = matrix[step] as number[];
    for (let row = step + 1; row < size; row += 1) {
      const line = matrix[row] as number[];
      const share = (line[step] ?? 0) / (lead[step] ?? 1);
      for (let column = step; column <= size; column += 1)
        line[column] = (line[column] ?? 0) - share * (lead[column] ?? 0);
    }
  }
  const found = new Array<number>(size).fill(0);
  for (let row = size - 1; row >= 0; row -= 1) {
    const line = matrix[row] as number[];
    const known = line.slice(row + 1, size).reduce((sum, each, index) => sum + each * (found[row + 1 + index] ?? 0), 0);
    found[row] = ((line[size] ?? 0) - known) / (line[row] ?? 1);
  }
  return found;
}

function dot(left: readonly number[], right: readonly number[]): number {
  return left.reduce((sum, each, index) => sum + each * (right[index] ?? 0), 0);
}

function middle(values: readonly number[]): number {
  return values.toSorted((one, other) => one - other)[Math.floor(values.length / 2)] ?? 0;
}
