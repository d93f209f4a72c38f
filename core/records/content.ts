import type { ApplicationRecord } from '../book/index.ts';
import type { Draft, Filled } from './types.ts';

export type Content = Pick<ApplicationRecord, 'elements' | 'products'>;

/** What a draft says, in the form in which it is kept; what is missing is named, what is not asked of this work left out. */
export function contentOf({ elements, products }: Draft): Content {
  return {
    elements: written(elements),
    products: products.map(({ treatmentId, productId, zoneIds, amount, unit, areaSqFt, elements: own }) => ({
      treatmentId,
      productId,
      zoneIds,
      amount,
      ...(unit === undefined ? {} : { unit }),
      areaSqFt,
      elements: written(own),
    })),
  };
}

function written(elements: readonly Filled[]): ApplicationRecord['elements'] {
  return elements.flatMap(({ id, answer }): ApplicationRecord['elements'] => {
    if (answer.kind === 'known') return [{ id, text: answer.text }];
    if (answer.kind === 'hand' || answer.kind === 'planned') return [{ id, text: answer.text, from: answer.kind }];
    return answer.kind === 'missing' ? [{ id, text: '', from: 'missing' }] : [];
  });
}
