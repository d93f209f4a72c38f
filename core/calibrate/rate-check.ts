import { type Issue, issue } from '../base/index.ts';
import type { Mix, Product } from '../book/index.ts';
import type { MilesPerHour } from '../units/index.ts';
import { RATE_TOLERANCE } from './constants.ts';
import { speedForRate } from './speed.ts';

/** A head of a machine or a hand method: whatever has a calibrated delivery. */
export type Applicator = {
  readonly name: string;
  /** gal per 1,000 ft2; absent where it was never calibrated. */
  readonly deliveredGalPer1000SqFt?: number | undefined;
  readonly speedMph?: number | undefined;
};

/** What becomes of one product's rate when the tank is mixed for one carrier rate and sprayed at another. */
export type ProductShift = {
  readonly productId: string;
  /** Product's unit per 1,000 ft2. */
  readonly wanted: number;
  readonly becomes: number;
  /** The label's limit for one application where it is known and `becomes` is above it, else null. */
  readonly overLabel: number | null;
};

/**
 * Whether a head delivers the carrier that a mix asks for, gallons for 1,000 square feet, and what the product rates
 * become.
 */
export type RateCheck =
  | { readonly kind: 'not-calibrated'; readonly wantedGalPer1000SqFt: number; readonly words: string }
  | {
      readonly kind: 'agrees' | 'differs';
      readonly wantedGalPer1000SqFt: number;
      readonly deliveredGalPer1000SqFt: number;
      /** Delivered over wanted less one: 0.08 is 8 % too much. */
      readonly difference: number;
      readonly products: readonly ProductShift[];
      /** Speed at which the head would deliver what the mix asks for, pressure unchanged; null without a speed. */
      readonly matchingMph: MilesPerHour | null;
      readonly words: string;
    };

/**
 * Compares the carrier a mix asks for with what the head or hand method delivers. Up to 5 % either way they agree (W. Buhler,
 * Spray Gun, NC Cooperative Extension). A tank mixed by the recipe holds amount / carrier of a product in each gallon, so at
 * another delivery the ground gets amount x delivered / carrier.
 *
 * @param products products of the book, to see whether the real rate passes a label limit; may be left empty
 */
export function rateCheck(mix: Mix, applicator: Applicator, products: readonly Product[] = []): RateCheck {
  const wanted = mix.carrierGalPer1000SqFt;
  const delivered = applicator.deliveredGalPer1000SqFt;
  if (delivered === undefined) {
    return {
      kind: 'not-calibrated',
      wantedGalPer1000SqFt: wanted,
      words: `${applicator.name} has not been calibrated`,
    };
  }
  const difference = delivered / wanted - 1;
  const agrees = Math.abs(difference) <= RATE_TOLERANCE + 1e-9;
  const shifts = mix.parts.map((part) => shiftOf(part, delivered / wanted, products));
  const { speedMph } = applicator;
  return {
    kind: agrees ? 'agrees' : 'differs',
    wantedGalPer1000SqFt: wanted,
    deliveredGalPer1000SqFt: delivered,
    difference,
    products: shifts,
    matchingMph: speedMph === undefined ? null : speedForRate(speedMph, delivered, wanted),
    words: rateWords(mix, applicator.name, delivered, difference),
  };
}

function shiftOf(part: Mix['parts'][number], ratio: number, products: readonly Product[]): ProductShift {
  const becomes = part.amountPer1000SqFt * ratio;
  const limit = products.find((each) => each.id === part.productId)?.label.mostPerApplication;
  const over = limit !== undefined && becomes > limit * (1 + 1e-9);
  return { productId: part.productId, wanted: part.amountPer1000SqFt, becomes, overLabel: over ? limit : null };
}

function rateWords(mix: Mix, name: string, delivered: number, difference: number): string {
  const percent = Math.abs(difference * 100).toFixed(1);
  const sense = difference > 0 ? `${percent} % more` : difference < 0 ? `${percent} % less` : 'the same';
  return `mix ${mix.name} asks for ${figure(mix.carrierGalPer1000SqFt)} gal per 1,000 ft², ${name} delivers ${figure(delivered)}: ${sense}`;
}

function figure(value: number): string {
  return String(Number(value.toPrecision(3)));
}

/**
 * The check as an issue for lists: null where the rates agree, a note where there is no calibration, a warning where they
 * differ, an error where a real rate passes a label limit.
 */
export function rateIssue(check: RateCheck, where: string): Issue | null {
  if (check.kind === 'not-calibrated') {
    return issue('note', 'rate-not-calibrated', where, `${check.words}; the plan counts on the mix's own rate.`);
  }
  const over = check.products.find((each) => each.overLabel !== null);
  if (over) {
    const sum = `${figure(over.becomes)} per 1,000 ft² against ${figure(over.overLabel ?? 0)} on the label`;
    return issue('error', 'label-limit-broken', where, `${check.words}. Product ${over.productId} becomes ${sum}.`);
  }
  if (check.kind === 'agrees') return null;
  const shifts = check.products.map(
    (each) => `${each.productId} ${figure(each.wanted)} becomes ${figure(each.becomes)}`,
  );
  const remedy = check.matchingMph === null ? '' : ` Driving ${figure(check.matchingMph)} mph would match it.`;
  const becomes = shifts.length === 0 ? '' : ` Product rates per 1,000 ft²: ${shifts.join(', ')}.`;
  return issue('warning', 'rate-differs', where, `${check.words}.${becomes}${remedy}`);
}
