import type { ApplicationRecord } from '../book/index.ts';
import type { Draft, Filled } from './types.ts';

/** A text that somebody typed into a record, where neither the book nor the visit has a place for it or it was otherwise. */
export type Typed = {
  readonly elementId: string;
  /** Absent for elements about the whole visit. */
  readonly treatmentId?: string;
  readonly productId?: string;
  readonly text: string;
};

/** What was typed into a version, so that the next one keeps it. */
export function typedIn({ elements, products }: ApplicationRecord): readonly Typed[] {
  const own = elements.filter((each) => each.from === 'hand').map(({ id, text }) => ({ elementId: id, text }));
  return [
    ...own,
    ...products.flatMap(({ treatmentId, productId, elements: inside }) =>
      inside
        .filter((each) => each.from === 'hand')
        .map(({ id, text }) => ({ elementId: id, treatmentId, productId, text })),
    ),
  ];
}

/** A draft with texts typed into it; an empty text takes a typed one away. Figures cannot be typed: they are corrected where they were written. */
export function withTyped(draft: Draft, typed: readonly Typed[]): Draft {
  const put = (element: Filled, treatmentId?: string, productId?: string): Filled => {
    const found = typed.findLast(
      (each) => each.elementId === element.id && each.treatmentId === treatmentId && each.productId === productId,
    );
    const text = found?.text.trim() ?? '';
    return element.canType && text !== '' ? { ...element, answer: { kind: 'hand', text } } : element;
  };
  return {
    ...draft,
    elements: draft.elements.map((each) => put(each)),
    products: draft.products.map((product) => ({
      ...product,
      elements: product.elements.map((each) => put(each, product.treatmentId, product.productId)),
    })),
  };
}
