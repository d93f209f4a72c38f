import type { Book, Compartment, Gate, HandMethod, Head, Machine } from '../book/index.ts';
import type { Method, ReachQuestion, ReachReason } from './types.ts';

/** The question with its ids looked up. */
export type MachineFacts = {
  readonly kind: 'machine';
  readonly question: ReachQuestion;
  readonly machine: Machine;
  readonly head: Head;
  /** What the head draws from. */
  readonly vessels: readonly Compartment[];
};
export type HandFacts = {
  readonly kind: 'hand';
  readonly question: ReachQuestion;
  readonly hand: HandMethod;
  /** The machine it draws from; null where it does not or where the book has no such machine. */
  readonly source: Machine | null;
  readonly vessel: Vessel | null;
};
export type Facts = MachineFacts | HandFacts;

/** What a hand method draws from, whichever of the ways it is fixed. */
export type Vessel =
  | { readonly kind: 'tank'; readonly usableGal: number; readonly agitated: boolean }
  | { readonly kind: 'dry'; readonly capacityLb: number };

/** Why a test fails. */
export type Refusal = { readonly reason: ReachReason; readonly words: string };
/** One test of reach; null where it passes. */
export type Rule = (facts: Facts) => Refusal | null;

/** Looks up what a method is; null where the book does not hold it. */
export function factsOf(question: ReachQuestion): Facts | null {
  const { book, method } = question;
  if (method.kind === 'machine') {
    const machine = book.machines.find((each) => each.id === method.machineId);
    const head = machine?.heads.find((each) => each.id === method.headId);
    if (!machine || !head) return null;
    const vessels = machine.compartments.filter((each) => head.compartmentIds.includes(each.id));
    return { kind: 'machine', question, machine, head, vessels };
  }
  const hand = book.handMethods.find((each) => each.id === method.handMethodId);
  if (!hand) return null;
  return { kind: 'hand', question, hand, source: sourceMachine(book, hand), vessel: vesselOf(book, hand) };
}

function sourceMachine(book: Book, hand: HandMethod): Machine | null {
  const from = hand.drawsFrom;
  if (from.kind !== 'machine') return null;
  return book.machines.find((each) => each.id === from.machineId) ?? null;
}

function vesselOf(book: Book, hand: HandMethod): Vessel | null {
  const from = hand.drawsFrom;
  if (from.kind === 'own-hopper') return { kind: 'dry', capacityLb: from.capacityLb };
  if (from.kind !== 'machine') {
    return { kind: 'tank', usableGal: from.capacityGal - from.sumpGal, agitated: from.agitated };
  }
  const found = sourceMachine(book, hand)?.compartments.find((each) => each.id === from.compartmentId);
  if (!found) return null;
  if (found.kind !== 'tank') return { kind: 'dry', capacityLb: found.capacityLb };
  return { kind: 'tank', usableGal: found.capacityGal - found.sumpGal, agitated: found.agitated };
}

/** The gates on the way to the zone. Ids that the property does not have are left to the checks of the book. */
export function gatesOnTheWay(question: ReachQuestion): readonly Gate[] {
  return question.property.gates.filter((each) => question.zone.gateIds.includes(each.id));
}

/** Name of a method for people: "Heron, boom" or "reel". */
export function methodName(book: Book, method: Method): string {
  if (method.kind === 'hand') {
    return book.handMethods.find((each) => each.id === method.handMethodId)?.name ?? method.handMethodId;
  }
  const machine = book.machines.find((each) => each.id === method.machineId);
  const head = machine?.heads.find((each) => each.id === method.headId);
  return `${machine?.name ?? method.machineId}, ${head?.name ?? method.headId}`;
}

/** A figure without needless decimals: 34, 34.5, 61.3. */
export function figure(value: number): string {
  return String(Math.round(value * 10) / 10);
}
