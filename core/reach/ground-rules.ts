import type { Gate, Machine, Zone } from '../book/index.ts';
import { type Facts, figure, gatesOnTheWay, type HandFacts, type Refusal } from './facts.ts';
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
 * The hose reaches the farthest corner: from the stand or, where it draws from a machine, from any zone on which that machine fits.
 * Where nobody knows how far that is, the answer is no until it has been paced; a zone that could not be measured at all is left to
 * the test that says so.
 */
export function hoseRule(facts: Facts): Refusal | null {
  if (facts.kind === 'machine' || facts.hand.reachFt === undefined) return null;
  const { reachFt } = facts.hand;
  const way = hoseWay(facts);
  if (way === null) {
    if (facts.question.zoneMeasure.areaSqFt === null) return null;
    return {
      reason: 'hose-too-short',
      words: `hose ${figure(reachFt)} ft, way to the farthest corner not known: pace it and enter it`,
    };
  }
  return way.farthestFt <= reachFt + DUST ? null : { reason: 'hose-too-short', words: way.words };
}

/** The way that a hose has to reach, with its figures in words; null where it is not known. */
export function hoseWay(facts: HandFacts): { readonly farthestFt: number; readonly words: string } | null {
  const { question, hand, source } = facts;
  const hose = `hose ${figure(hand.reachFt ?? 0)} ft`;
  const farthest = knownFarthest(question);
  const fromStand =
    farthest === null ? null : { farthestFt: farthest, words: `farthest corner ${figure(farthest)} ft, ${hose}` };
  if (source === null || (farthest !== null && farthest <= (hand.reachFt ?? 0) + DUST)) return fromStand;
  const stands = (question.stands?.() ?? []).filter((each) => fitsOn(source, question, each.zone));
  const [first, ...others] = stands;
  if (first === undefined) return fromStand;
  const nearest = others.reduce((least, each) => (each.farthestFt < least.farthestFt ? each : least), first);
  if (farthest !== null && farthest <= nearest.farthestFt) return fromStand;
  const words = `farthest corner ${figure(nearest.farthestFt)} ft from ${source.name} on ${nearest.zone.name}, ${hose}`;
  return { farthestFt: nearest.farthestFt, words };
}

/** Whether a machine gets onto a zone of the property and may stand there: gates, slope and, where it is wet, weight. */
function fitsOn(machine: Machine, question: ReachQuestion, zone: Zone): boolean {
  const gates = question.property.gates.filter((each) => zone.gateIds.includes(each.id));
  if (gates.some((each) => each.clearWidthIn < machine.transitWidthIn - DUST)) return false;
  if (zone.slopeDeg > machine.maxSlopeDeg + DUST) return false;
  return !question.wetGround || zone.wetLimitLb === undefined || machineFullLb(machine) <= zone.wetLimitLb + DUST;
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
