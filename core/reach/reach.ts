import { type Facts, factsOf, figure, type Refusal, type Rule } from './facts.ts';
import { gateFit, gateRule, hoseRule, hoseWay, isTight, slopeRule, wetRule } from './ground-rules.ts';
import { agitationRule, handRule, headRule, measuredRule, vesselRule } from './material-rules.ts';
import { carriedRule, trailerRule } from './rig-rules.ts';
import type { ReachAnswer, ReachQuestion } from './types.ts';

/** The tests in the order in which they are put; the first that fails gives the reason. */
const RULES: readonly Rule[] = [
  gateRule,
  slopeRule,
  hoseRule,
  carriedRule,
  trailerRule,
  agitationRule,
  wetRule,
  headRule,
  handRule,
  vesselRule,
  measuredRule,
];

/**
 * Whether one method can treat one zone, and why. The answer is always a value with its reason in words; a method that the
 * book does not hold is answered 'not-carried'.
 */
export function reach(question: ReachQuestion): ReachAnswer {
  const facts = factsOf(question);
  if (facts === null) {
    const { method } = question;
    const id = method.kind === 'hand' ? method.handMethodId : `${method.machineId}/${method.headId}`;
    return answer(question, { reason: 'not-carried', words: `the book has no method ${id}` }, false);
  }
  const fit = gateFit(facts);
  const tight = isTight(fit);
  for (const rule of RULES) {
    const refusal = rule(facts);
    if (refusal !== null) return answer(question, refusal, tight);
  }
  const reason = tight ? 'gate-tight' : 'fits';
  return { ...answer(question, { reason, words: fitWords(facts) }, tight), can: true };
}

function answer(question: ReachQuestion, refusal: Refusal, tight: boolean): ReachAnswer {
  return {
    propertyId: question.property.id,
    zoneId: question.zone.id,
    treatmentId: question.treatment.id,
    method: question.method,
    rigId: question.rig?.id ?? null,
    can: false,
    reason: refusal.reason,
    tight,
    words: refusal.words,
  };
}

/** Why it can: the figures that came nearest to a no. */
function fitWords(facts: Facts): string {
  if (facts.kind === 'machine') {
    const fit = gateFit(facts);
    if (fit === null) return 'no gate on the way';
    return isTight(fit) ? `${fit.words}: ${figure(fit.spareIn)} in to spare` : fit.words;
  }
  return (facts.hand.reachFt === undefined ? null : hoseWay(facts)?.words) ?? 'on foot';
}
