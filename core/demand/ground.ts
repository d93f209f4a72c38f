import { type Issue, issue } from '../base/index.ts';
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
  const issues = areaSqFt === null || !plannable ? [notMeasured(question)] : [];
  const whole = areaSqFt ?? 0;
  if (coverage.kind === 'whole') return { treatedSqFt: whole, issues };
  if (coverage.kind === 'spot') return { treatedSqFt: whole * coverage.share, issues };
  const band = Math.max(0, question.bandSqFt ?? 0);
  if (band === 0 && areaSqFt !== null) return { treatedSqFt: 0, issues: [...issues, noEdge(question)] };
  return { treatedSqFt: Math.min(band, whole), issues };
}

function notMeasured(question: DemandQuestion): Issue {
  const words = 'The zone has no area that can be planned with. Repair its outline or state an area.';
  return issue('warning', 'zone-not-measured', placeOf(question), words);
}

function noEdge(question: DemandQuestion): Issue {
  const words = `Nothing to do for ${question.treatment.name}: no edge of that kind borders the zone. Draw it as an exclusion or enter its length.`;
  return issue('note', 'band-without-edge', placeOf(question), words);
}
