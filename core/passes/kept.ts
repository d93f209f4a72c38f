import { canonicalJson, fingerprint, ok, type Result } from '../base/index.ts';
import { feetToMetres, quantity } from '../units/index.ts';
import { localRates } from './local-rates.ts';
import { type PassGround, type PassOutline, passesOnOutline } from './on-outline.ts';
import type { PassHead, PassOptions } from './types.ts';

/** What passes over some ground come to, on the map, once over. */
export type PassFigures = {
  readonly areaSqM: number;
  /** Ground that the material goes over, overlap included. */
  readonly appliedSqM: number;
  readonly handTrimSqM: number;
  readonly minutes: number;
  readonly swathCount: number;
  readonly trimCount: number;
  /** Most passes over any one place. */
  readonly worstPasses: number;
};

/** Figures with their key: of ground, head and options. Null: there are none, and that is quickly found out again. */
export type KeptFigure = readonly [key: string, figures: PassFigures | null];
/** Figures that are kept, oldest first. */
export type KeptFigures = readonly KeptFigure[];

/** Of so many zones with so many heads figures are kept; some 200 bytes each. */
const MOST_KEPT = 50_000;

/** The worst place is looked for on a coarser raster than for a single lawn: there are thousands. */
const FIELDS = 15_000;

/** In the order in which they were last asked for. The same ground with the same head always has the same figures. */
const kept = new Map<string, PassFigures | null>();

/**
 * Figures of the passes over some ground, reckoned once for each shape and head and then kept.
 * @returns null where the outline has no ground. Errors: those of `planPasses`.
 */
export function passFigures(
  ground: PassGround,
  head: PassHead,
  options: Omit<PassOptions, 'obstacles'>,
  where: string,
): Result<PassFigures | null> {
  if (ground.outline.length === 0) return ok(null);
  const key = keyOf(ground, head, options);
  const known = kept.get(key);
  if (known !== undefined && known !== null) {
    keep(key, known);
    return ok(known);
  }
  const reckoned = reckon(ground, head, options, where);
  keep(key, reckoned.ok ? reckoned.value : null);
  return reckoned;
}

/** The same where nothing may be reckoned, since that takes a while: what is known already, with its key; null where nothing is. */
export function knownFigures(
  ground: PassGround,
  head: PassHead,
  options: Omit<PassOptions, 'obstacles'>,
): KeptFigure | null {
  const key = keyOf(ground, head, options);
  const known = kept.get(key);
  return known === undefined ? null : [key, known];
}

/** All figures that are kept, oldest first: for a thread that starts with what another one knows. */
export function keptFigures(): KeptFigures {
  return [...kept];
}

/** Takes over figures that another thread has reckoned. */
export function keepFigures(figures: KeptFigures): void {
  for (const [key, each] of figures) keep(key, each);
}

function keep(key: string, figures: PassFigures | null): void {
  kept.delete(key);
  kept.set(key, figures);
  for (const oldest of kept.keys()) {
    if (kept.size <= MOST_KEPT) break;
    kept.delete(oldest);
  }
}

/** Outlines never change, so each is looked at once. */
const prints = new WeakMap<PassOutline, string>();

function keyOf({ outline, obstacles }: PassGround, head: PassHead, options: Omit<PassOptions, 'obstacles'>): string {
  const print = printOf(outline);
  const round = obstacles.length === 0 ? '' : ` ${printOf(obstacles)}`;
  // A marker changes nothing of these figures.
  const { mark: _, ...driven } = head;
  return `${print}${round} ${canonicalJson([driven, options.angleDeg])}`;
}

function printOf(outline: PassOutline): string {
  const known = prints.get(outline);
  if (known !== undefined) return known;
  const corners = outline.reduce((sum, rings) => sum + rings.reduce((more, ring) => more + ring.length, 0), 0);
  const print = `${fingerprint(outline)} ${corners}`;
  prints.set(outline, print);
  return print;
}

function reckon(
  ground: PassGround,
  head: PassHead,
  options: Omit<PassOptions, 'obstacles'>,
  where: string,
): Result<PassFigures | null> {
  const found = passesOnOutline(ground, head, options, where);
  if (!found.ok) return found;
  if (found.value === null) return ok(null);
  const { ground: region, plan } = found.value;
  const { areaSqM, appliedSqM, handTrimSqM, minutes, swathCount, trimCount } = plan;
  const sectionsM = head.sectionsFt?.map((each) => feetToMetres(quantity<'ft'>(each))) ?? null;
  const { worst } = localRates(region, plan, sectionsM, FIELDS);
  return ok({ areaSqM, appliedSqM, handTrimSqM, minutes, swathCount, trimCount, worstPasses: worst });
}
