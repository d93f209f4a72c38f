import type { ApplicationRecord } from '../book/index.ts';
import { type Content, contentOf } from './content.ts';
import { elementWords, productName } from './missing.ts';
import type { Draft } from './types.ts';

/** One thing that two versions say differently; '' where one of them does not say it. */
export type Difference = {
  readonly words: string;
  /** '' for the whole visit. */
  readonly product: string;
  readonly before: string;
  readonly after: string;
};

/** In what a draft differs from a version that is kept. */
export function differences(record: ApplicationRecord, draft: Draft): readonly Difference[] {
  return differencesOf(record, contentOf(draft));
}

type Written = ApplicationRecord['elements'];

/** In what two versions differ. */
export function differencesOf(before: Content, after: Content): readonly Difference[] {
  const keys = new Set([...before.products, ...after.products].map(keyOf));
  return [
    ...ofElements(before.elements, after.elements, ''),
    ...[...keys].flatMap((key) => {
      const old = before.products.find((each) => keyOf(each) === key);
      const next = after.products.find((each) => keyOf(each) === key);
      const named = next ?? old;
      return named === undefined ? [] : ofElements(old?.elements ?? [], next?.elements ?? [], productName(named));
    }),
  ];
}

function ofElements(before: Written, after: Written, product: string): readonly Difference[] {
  const ids = new Set([...before, ...after].map((each) => each.id));
  return [...ids].flatMap((id) => {
    const one = textOf(before, id);
    const other = textOf(after, id);
    return one === other ? [] : [{ words: elementWords(id), product, before: one, after: other }];
  });
}

function textOf(elements: Written, id: string): string {
  const found = elements.find((each) => each.id === id);
  if (found === undefined) return '';
  return found.from === 'planned' ? `${found.text} (as planned)` : found.text;
}

type Product = ApplicationRecord['products'][number];

function keyOf({ treatmentId, productId }: Pick<Product, 'treatmentId' | 'productId'>): string {
  return JSON.stringify([treatmentId, productId]);
}
