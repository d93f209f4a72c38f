import type { Book, Visit } from '../book/index.ts';
import { doneAmounts, recipesOf } from '../round/ledger/index.ts';
import type { Applied } from './types.ts';

type Sum = {
  readonly treatmentId: string;
  readonly productId: string;
  readonly zoneIds: Set<string>;
  amount: number;
  areaSqFt: number;
  mixGal: number;
  isMeasured: boolean;
  readonly equipment: Set<string>;
};

/**
 * What went down on a visit, one entry for every treatment and product, as the season's ledger counts it. A figure is measured only
 * where it was written down for all of the zones.
 */
export function appliedOf(book: Book, { outcome }: Visit, isWritten: boolean): readonly Applied[] {
  const recipes = recipesOf(book);
  const sums = new Map<string, Sum>();
  for (const task of outcome.kind === 'done' ? outcome.tasks : []) {
    const isSpray = recipes.carriers.has(task.treatmentId) || (task.usedGal ?? task.expectedGal ?? 0) > 0;
    for (const [productId, amount] of doneAmounts(recipes, task, task.treatedSqFt) ?? []) {
      const key = JSON.stringify([task.treatmentId, productId]);
      const fresh = {
        amount: 0,
        areaSqFt: 0,
        mixGal: 0,
        isMeasured: isWritten,
        zoneIds: new Set<string>(),
        equipment: new Set<string>(),
      };
      const sum = sums.get(key) ?? { treatmentId: task.treatmentId, productId, ...fresh };
      sum.zoneIds.add(task.zoneId);
      for (const name of task.equipment ?? []) sum.equipment.add(name);
      sum.amount += amount;
      sum.areaSqFt += task.treatedSqFt;
      sum.mixGal += isSpray ? (task.usedGal ?? task.expectedGal ?? 0) : 0;
      sum.isMeasured = sum.isMeasured && isMeasured(task);
      sums.set(key, sum);
    }
  }
  return [...sums.values()].map((each) => ({ ...each, zoneIds: [...each.zoneIds], equipment: [...each.equipment] }));
}

/** Amounts that stand without any expectation were written down as such. */
function isMeasured({ usedGal, usedLb, expectedGal, expectedLb, products }: DoneTask): boolean {
  if (usedGal !== undefined || usedLb !== undefined) return true;
  return products !== undefined && expectedGal === undefined && expectedLb === undefined;
}

type DoneTask = (Visit['outcome'] & { readonly kind: 'done' })['tasks'][number];
