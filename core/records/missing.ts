import type { ApplicationRecord } from '../book/index.ts';
import { PRODUCT_ELEMENTS } from './product-elements.ts';
import { ruleNames } from './rules.ts';
import type { Draft, Filled, RecordElement } from './types.ts';
import { VISIT_ELEMENTS } from './visit-elements.ts';

/** An element that a record lacks, or has as planned only. */
export type Missing = {
  readonly elementId: string;
  readonly words: string;
  /** '' for elements about the whole visit. */
  readonly product: string;
  /** What is to be entered, and where. */
  readonly lacks: string;
  /** Rules that ask for it by name; '' where none of those that are listed does. */
  readonly askedBy: string;
};

/** What a draft lacks, in the order of the elements. */
export function missingOf({ elements, products }: Draft): readonly Missing[] {
  return [
    ...elements.flatMap((each) => missingElement(each, '')),
    ...products.flatMap(({ name, elements: own }) => own.flatMap((each) => missingElement(each, name))),
  ];
}

function missingElement({ id, words, askedBy, answer }: Filled, product: string): readonly Missing[] {
  if (answer.kind !== 'missing' && answer.kind !== 'planned') return [];
  return [{ elementId: id, words, product, lacks: answer.lacks, askedBy: ruleNames(askedBy) }];
}

/** Elements by their ids, for records that are kept: what they are called. */
const WORDS: ReadonlyMap<string, RecordElement<never>> = new Map(
  [...VISIT_ELEMENTS, ...PRODUCT_ELEMENTS].map((each) => [each.id, each as RecordElement<never>]),
);

/** What an element of a kept record is called; its id where this program no longer has it. */
export function elementWords(id: string): string {
  return WORDS.get(id)?.words ?? id;
}

/** True where a kept record says nothing but what was planned of some element. */
export function hasPlanned({ elements, products }: ApplicationRecord): boolean {
  return [...elements, ...products.flatMap((each) => each.elements)].some((each) => each.from === 'planned');
}
