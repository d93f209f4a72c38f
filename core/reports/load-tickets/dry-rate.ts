import type { Book, Treatment } from '../../book/index.ts';
import { spreadLbPer1000 } from '../../demand/index.ts';
import type { PlanLoad } from '../../plan/result/index.ts';

/**
 * What a spreader or seeder is set to for a load, lb per 1,000 ft2: the rate of the treatment, not what the load comes to on its ground,
 * since strips that are gone over twice take it twice. Null where the book has lost it or where treatments differ.
 */
export function dryRate(book: Book, load: PlanLoad): number | null {
  const ids = new Set(load.covers.map((each) => each.treatmentId));
  const rates = new Set(
    book.treatments.filter((each) => ids.has(each.id)).map((each) => rateOf(book, each, load.materialId)),
  );
  const [rate] = rates;
  return rates.size === 1 && rate !== undefined ? rate : null;
}

function rateOf(book: Book, treatment: Treatment, productId: string): number | null {
  const product = book.products.find((each) => each.id === productId);
  if (product === undefined) return null;
  switch (treatment.kind) {
    case 'spread':
      return treatment.productId === productId ? spreadLbPer1000(treatment.rate, product) : null;
    case 'seed': {
      if (treatment.productId === productId) return treatment.lbPer1000SqFt;
      const { starter } = treatment;
      return starter?.productId === productId ? spreadLbPer1000(starter.rate, product) : null;
    }
    case 'spray':
    case 'aerate':
      return null;
  }
}
