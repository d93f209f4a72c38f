import type { Gate } from '../book/index.ts';
import { type Facts, figure, gatesOnTheWay, type Refusal } from './facts.ts';
import type { ReachQuestion } from './types.ts';
import { machineFullLb } from './weight.ts';

/** Less than this to spare at a gate is tight. inches */
export const TIGHT_SPARE_IN = 2;
/** Figures typed as decimals may differ in their last binary digit; that much never decides. */
const DUST = 1e-9;

/** How a machine stands to the narrowest gate on the way; null where there is none or the method goes on foot. */
export type GateFit = { readonly gate: Gate; readonly spareIn: number; readonly words: string };

export function gateFit(facts: Facts): GateFit | null {
  if (facts.kind === 'hand') return null;
  const gates = gatesOnTheWay(facts.question);
  const [first, ...others] = gates;
  if (!first) return null;
  const gate = others.reduce(
    (narrowest, each) => (each.clearWidthIn < narrowest.clearWidthIn ? each : narrowest),
    first,
  );
  const which = gates.length > 1 ? ` (${gate.name}, the narrowest of ${gates.length})` : '';
  const words = `gate ${inches(gate.clearWidthIn)} in${which}, machine ${inches(facts.machine.transitWidthIn)} in`;
  return { gate, spareIn: gate.clearWidthIn - facts.machine.transitWidthIn, words };
}

/** Gates keep two decimals, so that a hundredth of an inch too little is not shown as equal. */
function inches(value: number): string {
  return String(Math.round(value * 100) / 100);
}

export function isTight(fit: GateFit | null): boolean {
  return fit !== null && fit.spareIn >= -DUST && fit.spareIn < TIGHT_SPARE_IN - DUST;
}

/** Every gate has to be at least as wide as the machine on the move. */
export function gateRule(facts: Facts): Refusal | null {
  const fit = gateFit(facts);
  return fit !== null && fit.spareIn < -DUST ? { reason: 'gate-too-narrow', words: fit.words } : null;
}

/** The slope is within the maker's figure for the machine. Work on foot has no figure. */
export function slopeRule(facts: Facts): Refusal | null {
  if (facts.kind === 'hand') return null;
  const { slopeDeg } = facts.question.zone;
  const limit = facts.machine.maxSlopeDeg;
  if (slopeDeg <= limit + DUST) return null;
  return { reason: 'too-steep', words: `slope ${figure(slopeDeg)}°, machine up to ${figure(limit)}°` };
}

/**
 * The hose reaches the farthest corner. Where nobody knows how far that is, the answer is no until it has been paced; a zone
 * that could not be measured at all is left to the test that says so.
 */
export function hoseRule(facts: Facts): Refusal | null {
  if (facts.kind === 'machine' || facts.hand.reachFt === undefined) return null;
  const { reachFt } = facts.hand;
  const farthest = knownFarthest(facts.question);
  if (farthest === null) {
    if (facts.question.zoneMeasure.areaSqFt === null) return null;
    return {
      reason: 'hose-too-short',
      words: `hose ${figure(reachFt)} ft, way to the farthest corner not known: pace it and enter it`,
    };
  }
  if (farthest <= reachFt + DUST) return null;
  return { reason: 'hose-too-short', words: `farthest corner ${figure(farthest)} ft, hose ${figure(reachFt)} ft` };
}

/** The way to the farthest corner, ft; null where it is not known. */
export function knownFarthest(question: ReachQuestion): number | null {
  const { farthestFt } = question;
  return farthestFt === null || !Number.isFinite(farthestFt) ? null : farthestFt;
}

/** On wet ground the machine, full, is no heavier than the zone carries. */
export function wetRule(facts: Facts): Refusal | null {
  const { question } = facts;
  if (facts.kind === 'hand' || !question.wetGround || question.zone.wetLimitLb === undefined) return null;
  const full = machineFullLb(facts.machine);
  if (full <= question.zone.wetLimitLb + DUST) return null;
  return {
    reason: 'too-heavy-when-wet',
    words: `machine ${figure(full)} lb full, wet ground carries ${figure(question.zone.wetLimitLb)} lb`,
  };
}
