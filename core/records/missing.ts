import type { ApplicationRecord } from '../book/index.ts';
import { PRODUCT_ELEMENTS } from './product-elements.ts';
import { type RuleId, ruleNames } from './rules.ts';
import type { Draft, Filled } from './types.ts';
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

/** Elements by their ids, for records that are kept. */
const ELEMENTS = new Map<string, { readonly words: string; readonly askedBy: readonly RuleId[] }>(
  [...VISIT_ELEMENTS, ...PRODUCT_ELEMENTS].map(({ id, words, askedBy }) => [id, { words, askedBy }]),
);

/** What an element of a kept record is called; its id where this program no longer has it. */
export function elementWords(id: string): string {
  return ELEMENTS.get(id)?.words ?? id;
}

/** What a record that is kept lacked, or had as planned only, when it was written. */
export function missingInRecord({ elements, products }: ApplicationRecord): readonly Missing[] {
  return [
    ...elements.flatMap((each) => lackedElement(each, '')),
    ...products.flatMap((product) => product.elements.flatMap((each) => lackedElement(each, productName(product)))),
  ];
}

function lackedElement({ id, from }: ApplicationRecord['elements'][number], product: string): readonly Missing[] {
  if (from !== 'missing' && from !== 'planned') return [];
  const lacks = from === 'planned' ? 'it stands as planned' : 'it was not known when the record was written';
  return [
    { elementId: id, words: elementWords(id), product, lacks, askedBy: ruleNames(ELEMENTS.get(id)?.askedBy ?? []) },
  ];
}

/** The name of a product as a kept record has it. */
export function productName({ elements, productId }: ApplicationRecord['products'][number]): string {
  const name = elements.find((each) => each.id === 'product')?.text ?? '';
  return name === '' ? productId : name;
}
