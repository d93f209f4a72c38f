import { type Issue, issue } from '../base/index.ts';
import type { Coverage } from '../book/index.ts';
import { type DemandQuestion, placeOf } from './question.ts';

/** The ground a treatment really covers, and what has to be said about it. */
export type Ground = { readonly treatedSqFt: number; readonly issues: readonly Issue[] };

/**
 * Ground that is treated: the zone, the share of it that spots take, or the strip along paving and beds (never more than
 * the zone). Rates and label limits count on this ground, so that a spot gets the same rate as a whole lawn.
 */
export function groundOf(question: DemandQuestion): Ground {
  const { areaSqFt, plannable } = question.zoneMeasure;
  const { coverage } = question.treatment;
  const treatedSqFt = treatedGround(coverage, areaSqFt ?? 0, question.bandSqFt);
  const issues = areaSqFt === null || !plannable ? [notMeasured(question)] : [];
  const edgeless = coverage.kind === 'band' && areaSqFt !== null && (question.bandSqFt ?? 0) <= 0;
  return { treatedSqFt, issues: edgeless ? [...issues, noEdge(question)] : issues };
}

/** Ground of a zone that a treatment goes over, ft2: all of it, a share of it, or a band and never more than the zone. */
export function treatedGround(coverage: Coverage, areaSqFt: number, bandSqFt: number | null): number {
  if (coverage.kind === 'whole') return areaSqFt;
  if (coverage.kind === 'spot') return areaSqFt * coverage.share;
  return Math.min(Math.max(0, bandSqFt ?? 0), areaSqFt);
}

function notMeasured(question: DemandQuestion): Issue {
  const words = 'The zone has no area that can be planned with. Repair its outline or state an area.';
  return issue('warning', 'zone-not-measured', placeOf(question), words);
}

function noEdge(question: DemandQuestion): Issue {
  const words = `Nothing to do for ${question.treatment.name}: no edge of that kind borders the zone. Draw it as an exclusion or enter its length.`;
  return issue('note', 'band-without-edge', placeOf(question), words);
}
