import type { Property, Visit } from '../../book/index.ts';
import { treatedGround } from '../../demand/index.ts';
import { add } from './contents.ts';
import { type DoneTask, doneAmounts } from './done-amounts.ts';
import type { Recipes } from './recipes.ts';
import type { Application, ByProduct, Ground } from './types.ts';

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
  const amounts = doneAmounts(recipes, task, groundSqFt);
  if (amounts === null) {
    say(
      `${property.name}, ${visit.on}: treatment ${task.treatmentId} is no longer in the book and the record names no products, so it cannot be counted.`,
    );
  }
  return { on: visit.on, groundSqFt, amounts: amounts ?? new Map() };
}
