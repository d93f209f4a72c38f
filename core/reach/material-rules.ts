import type { Book, HandMethod, Head, Treatment } from '../book/index.ts';
import { type Facts, figure, type HandFacts, type Refusal } from './facts.ts';

/** What a head has to be made for. */
export type Purpose = Head['purpose'];

/** The purpose a treatment asks for. A starter after seed is asked about as a spread treatment of its own. */
export function purposeOf(treatment: Treatment): Purpose {
  return treatment.kind;
}

const DOING: Readonly<Record<Purpose, string>> = {
  spray: 'spraying',
  spread: 'spreading',
  aerate: 'aerating',
  seed: 'seeding',
};

/** Which hand methods do which work; nobody aerates by hand here. */
const BY_HAND: Readonly<Record<Purpose, readonly HandMethod['what'][]>> = {
  spray: ['hose', 'backpack'],
  spread: ['hand-spreader'],
  seed: ['hand-spreader'],
  aerate: [],
};

export function handDoes(hand: HandMethod, treatment: Treatment): boolean {
  return BY_HAND[purposeOf(treatment)].includes(hand.what);
}

/** Who asks for agitation: the mix, or the label of one of its products; null where nobody does. */
function agitationAskedBy(book: Book, treatment: Treatment): string | null {
  if (treatment.kind !== 'spray') return null;
  const mix = book.mixes.find((each) => each.id === treatment.mixId);
  if (mix?.needsAgitation) return `mix ${mix.name}`;
  const product = book.products.find(
    (each) => each.label.needsAgitation && mix?.parts.some((part) => part.productId === each.id),
  );
  return product ? `the label of ${product.name}` : null;
}

/** A mix that settles needs a tank that keeps it moving; of tanks that run together, every one. */
export function agitationRule(facts: Facts): Refusal | null {
  const askedBy = agitationAskedBy(facts.question.book, facts.question.treatment);
  if (askedBy === null) return null;
  const still =
    facts.kind === 'machine'
      ? facts.vessels.find((each) => each.kind === 'tank' && !each.agitated)?.name
      : facts.vessel?.kind === 'tank' && !facts.vessel.agitated
        ? facts.hand.name
        : undefined;
  return still === undefined
    ? null
    : { reason: 'no-agitation', words: `${askedBy} asks for agitation, ${still} has none` };
}

/** The head is made for the work and has something to draw from. */
export function headRule(facts: Facts): Refusal | null {
  if (facts.kind === 'hand') return null;
  const { head, machine, vessels } = facts;
  const wanted = purposeOf(facts.question.treatment);
  const refuse = (words: string): Refusal => ({ reason: 'no-head-for-treatment', words });
  if (head.purpose !== wanted) {
    return refuse(`${head.name} of ${machine.name} is for ${DOING[head.purpose]}, the treatment is ${DOING[wanted]}`);
  }
  if (wanted === 'aerate') return null;
  const holds = vessels.some((each) => (wanted === 'spray') === (each.kind === 'tank'));
  if (holds) return null;
  return refuse(`${head.name} of ${machine.name} draws from no ${wanted === 'spray' ? 'tank' : 'hopper'}`);
}

/** Hose and backpack spray, the hand spreader spreads and seeds, and what they draw from holds such material. */
export function handRule(facts: Facts): Refusal | null {
  if (facts.kind === 'machine') return null;
  const { hand, question, vessel } = facts;
  const refuse = (words: string): Refusal => ({ reason: 'method-wrong-for-treatment', words });
  const wanted = purposeOf(question.treatment);
  if (!handDoes(hand, question.treatment)) return refuse(`${hand.name} is not made for ${DOING[wanted]}`);
  const needs = wanted === 'spray' ? 'tank' : 'dry';
  if (vessel?.kind === needs) return null;
  return refuse(`${hand.name} draws from no ${needs === 'tank' ? 'tank' : 'hopper'}`);
}

/** The tank gives at least what the gun or pump works with, and something at all. */
export function vesselRule(facts: Facts): Refusal | null {
  if (facts.question.treatment.kind !== 'spray') return null;
  const usable = facts.kind === 'machine' ? machineUsableGal(facts.vessels) : handUsableGal(facts);
  const least = facts.kind === 'machine' ? 0 : facts.hand.leastVolumeGal;
  if (usable === null || (usable > 0 && usable >= least - 1e-9)) return null;
  const name = facts.kind === 'machine' ? facts.machine.name : facts.hand.name;
  const words =
    usable > 0
      ? `${name} has ${figure(usable)} gal to draw, and needs ${figure(least)} gal to work evenly`
      : `${name} has nothing to draw: its tank is no larger than what stays in the sump`;
  return { reason: 'vessel-below-least-volume', words };
}

function machineUsableGal(vessels: readonly (Facts & { readonly kind: 'machine' })['vessels'][number][]): number {
  return vessels.reduce(
    (sum, each) => sum + (each.kind === 'tank' ? Math.max(0, each.capacityGal - each.sumpGal) : 0),
    0,
  );
}

function handUsableGal(facts: HandFacts): number | null {
  return facts.vessel?.kind === 'tank' ? facts.vessel.usableGal : null;
}

/** The zone has an area and no fault that keeps it out of plans. */
export function measuredRule(facts: Facts): Refusal | null {
  const { areaSqFt, plannable } = facts.question.zoneMeasure;
  if (areaSqFt !== null && plannable) return null;
  const words =
    areaSqFt === null ? 'the zone could not be measured' : 'the outline of the zone has a fault: repair it first';
  return { reason: 'zone-not-measured', words };
}
