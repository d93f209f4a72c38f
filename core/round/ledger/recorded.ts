import type { Property, Treatment, Visit } from '../../book/index.ts';
import { treatedGround } from '../../demand/index.ts';
import { OUNCES_PER_POUND } from '../../units/index.ts';
import { add } from './contents.ts';
import type { Recipes } from './recipes.ts';
import type { Application, ByProduct, Ground } from './types.ts';

type DoneTask = (Visit['outcome'] & { readonly kind: 'done' })['tasks'][number];
/** One entry of the records: in all, not for 1,000 ft2. */
type Part = { readonly on: string; readonly groundSqFt: number; readonly amounts: ByProduct };
type Group = { readonly visit: Visit; readonly task: DoneTask; readonly parts: Part[] };

/** What recorded work is read with. */
export type Reading = {
  readonly recipes: Recipes;
  readonly ground: Ground;
  /** Told what cannot be counted, in words. */
  readonly say: (gap: string) => void;
};

/**
 * The applications that the visits of one round to one property tell of. Parts of one treatment on one zone, done at several times in
 * one year, are one application: their ground is added up as far as the treatment has ground there, and what was gone over twice
 * counts twice.
 */
export function recordedApplications(
  reading: Reading,
  property: Property,
  visits: readonly Visit[],
): readonly Omit<Application, 'roundName' | 'rank'>[] {
  const groups = new Map<string, Group>();
  for (const visit of visits) {
    for (const task of visit.outcome.kind === 'done' ? visit.outcome.tasks : []) {
      const steps = reading.recipes.treatments.get(task.treatmentId)?.kind === 'seed' ? (task.step ?? '') : '';
      const key = JSON.stringify([visit.on.slice(0, 4), steps, task.zoneId, task.treatmentId]);
      const group = groups.get(key) ?? { visit, task, parts: [] };
      group.parts.push(partOf(reading, property, visit, task));
      groups.set(key, group);
    }
  }
  return [...groups.values()].map((group) => joined(reading, property, group));
}

function joined(
  { recipes, ground, say }: Reading,
  property: Property,
  { visit, task, parts }: Group,
): Omit<Application, 'roundName' | 'rank'> {
  const days = parts.map((each) => each.on).toSorted();
  const covered = coveredSqFt(parts, wholeSqFt(recipes, ground, property, task));
  const rates = new Map<string, number>();
  if (covered > 0) {
    for (const { amounts } of parts)
      for (const [productId, amount] of amounts) add(rates, productId, (amount * 1000) / covered);
  } else if (parts.some((each) => each.amounts.size > 0)) {
    say(`${property.name}, ${visit.on}: the record names no ground, so its amounts cannot be counted.`);
  }
  return {
    zoneId: task.zoneId,
    treatmentId: task.treatmentId,
    roundId: visit.roundId,
    status: 'recorded',
    first: days[0] ?? visit.on,
    last: days.at(-1) ?? visit.on,
    years: [visit.on.slice(0, 4)],
    seeds: recipes.treatments.get(task.treatmentId)?.kind === 'seed' && task.step !== 1,
    treatedSqFt: covered,
    rates,
  };
}

/** Ground under several parts of one application: added up to what there is, and never less than the largest of them. */
function coveredSqFt(parts: readonly Part[], whole: number | null): number {
  const sum = parts.reduce((total, each) => total + each.groundSqFt, 0);
  const largest = Math.max(...parts.map((each) => each.groundSqFt));
  return whole === null ? sum : Math.max(largest, Math.min(sum, whole));
}

/** Ground that the treatment has on the zone; null where either is not in the book any more. */
function wholeSqFt({ treatments }: Recipes, ground: Ground, property: Property, task: DoneTask): number | null {
  const zone = property.zones.find((each) => each.id === task.zoneId);
  const coverage = treatments.get(task.treatmentId)?.coverage;
  const areaSqFt = zone === undefined ? null : ground.areaSqFt(property, zone.id);
  if (zone === undefined || coverage === undefined || areaSqFt === null) return null;
  return treatedGround(coverage, areaSqFt, coverage.kind === 'band' ? ground.bandSqFt(property, zone, coverage) : null);
}

function partOf({ recipes, ground, say }: Reading, property: Property, visit: Visit, task: DoneTask): Part {
  const groundSqFt = task.treatedSqFt > 0 ? task.treatedSqFt : (wholeSqFt(recipes, ground, property, task) ?? 0);
  const part = (amounts: ByProduct): Part => ({ on: visit.on, groundSqFt, amounts });
  if (task.products !== undefined) {
    const amounts = new Map<string, number>();
    for (const each of task.products) add(amounts, each.productId, each.amount);
    return part(amounts);
  }
  const treatment = recipes.treatments.get(task.treatmentId);
  if (treatment === undefined) {
    say(
      `${property.name}, ${visit.on}: treatment ${task.treatmentId} is no longer in the book and the record names no products, so it cannot be counted.`,
    );
    return part(new Map());
  }
  return part(
    treatment.kind === 'spray'
      ? sprayed(recipes, treatment, task, groundSqFt)
      : spread(recipes, treatment, task, groundSqFt),
  );
}

/** From the gallons that went down, else those that were expected, else from rate and ground. */
function sprayed(recipes: Recipes, { id }: Treatment, task: DoneTask, groundSqFt: number): ByProduct {
  const gallons = task.usedGal ?? task.expectedGal;
  const carrier = recipes.carriers.get(id);
  const thousands = gallons === undefined || carrier === undefined ? groundSqFt / 1000 : gallons / carrier;
  return scaled(recipes.rates.get(id), thousands);
}

/** From the pounds that went down, else those that were expected, else from rate and ground; of a starter beside its seed by rate alone. */
function spread(recipes: Recipes, treatment: Treatment, task: DoneTask, groundSqFt: number): ByProduct {
  const pounds = task.usedLb ?? task.expectedLb;
  const amounts = new Map(scaled(recipes.rates.get(treatment.id), groundSqFt / 1000));
  const steps = stepsOf(treatment);
  const weighed = steps[task.step ?? 0];
  if (task.step !== undefined) for (const id of steps) if (id !== weighed) amounts.delete(id);
  if (pounds !== undefined && weighed !== undefined) {
    const isOunces = recipes.products.get(weighed)?.unit === 'oz';
    amounts.set(weighed, isOunces ? pounds * OUNCES_PER_POUND : pounds);
  }
  return amounts;
}

/** Products of a dry treatment by step. */
function stepsOf(treatment: Treatment): readonly string[] {
  if (treatment.kind === 'spread') return [treatment.productId];
  if (treatment.kind !== 'seed') return [];
  return [treatment.productId, ...(treatment.starter === undefined ? [] : [treatment.starter.productId])];
}

function scaled(rates: ByProduct | undefined, factor: number): ByProduct {
  return new Map([...(rates ?? [])].map(([id, rate]) => [id, rate * factor]));
}
