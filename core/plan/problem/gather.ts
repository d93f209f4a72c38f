import type { Issue } from '../../base/index.ts';
import type { Book, Property, Round, Treatment, Zone } from '../../book/index.ts';
import { demandFor, intervalIssues, yearLimitIssues } from '../../demand/index.ts';
import {
  bandAreaSqFt,
  farthestFt,
  measureProperty,
  type PropertyMeasure,
  treatableGround,
} from '../../measure/index.ts';
import type { PassGround } from '../../passes/index.ts';
import { zonesOf } from '../../round/programme/index.ts';
import { quantity } from '../../units/index.ts';
import { flagNotes } from './flags.ts';
import type { TaskFacts } from './options.ts';

/** Measures of properties, made when they are asked for and kept. */
export class Measures {
  private readonly known: Map<string, PropertyMeasure>;

  constructor(known: ReadonlyMap<string, PropertyMeasure> | undefined) {
    this.known = new Map(known);
  }

  of(property: Property): PropertyMeasure {
    const measure = this.known.get(property.id) ?? measureProperty(property);
    this.known.set(property.id, measure);
    return measure;
  }
}

export type Gathered = { readonly facts: readonly TaskFacts[]; readonly issues: readonly Issue[] };

/** Measures every zone and works out what each treatment of the round takes there. */
export function gatherFacts(book: Book, round: Round, properties: readonly Property[], measures: Measures): Gathered {
  const facts: TaskFacts[] = [];
  const issues: Issue[] = [];
  const treatments = round.treatmentIds.flatMap((id) => book.treatments.filter((each) => each.id === id));
  for (const property of properties) {
    const measure = measures.of(property);
    issues.push(...measure.issues);
    const getting = treatments.map((treatment) => ({
      treatment,
      zones: zonesOf(round, treatment.id, property, () => measure.treatableSqFt),
    }));
    for (const zone of property.zones) {
      for (const { treatment, zones } of getting)
        if (zones.includes(zone)) gatherZone(book, property, zone, measure, treatment, facts, issues);
    }
  }
  const demands = facts.map((each) => each.demand);
  issues.push(
    ...flagNotes(treatments),
    ...yearLimitIssues(book.products, demands),
    ...intervalIssues(book.products, demands),
  );
  return { facts, issues: uniqueIssues(issues) };
}

function gatherZone(
  book: Book,
  property: Property,
  zone: Zone,
  propertyMeasure: PropertyMeasure,
  treatment: Treatment,
  facts: TaskFacts[],
  issues: Issue[],
): void {
  const measure = propertyMeasure.zones.find((each) => each.zoneId === zone.id);
  if (measure === undefined) return;
  const { coverage } = treatment;
  const bandSqFt =
    coverage.kind === 'band' ? bandAreaSqFt(property, zone, quantity(coverage.widthFt), coverage.along) : null;
  const result = demandFor({ book, property, zone, zoneMeasure: measure, treatment, bandSqFt });
  issues.push(...result.issues);
  const farthest = farthestFt(property, zone);
  const ground = onceOnly(() => treatableGround(property, zone.id));
  for (const demand of result.demands) {
    if (demand.treatedSqFt > 0 || measure.areaSqFt === null)
      facts.push({ property, zone, measure, treatment, demand, farthestFt: farthest, ground });
  }
}

function onceOnly(find: () => PassGround): () => PassGround {
  let found: PassGround | null = null;
  return () => {
    found ??= find();
    return found;
  };
}

/** The products that one task puts down: those of its mix, its dry product, or none. */
export function productIdsOf(book: Book, { demand }: TaskFacts): readonly string[] {
  if (demand.what === 'aerate') return [];
  if (demand.what !== 'spray') return [demand.materialId];
  return book.mixes.find((each) => each.id === demand.materialId)?.parts.map((each) => each.productId) ?? [];
}

/** Every issue once. */
export function uniqueIssues(issues: readonly Issue[]): readonly Issue[] {
  return [...new Map(issues.map((each) => [`${each.code} ${each.where} ${each.message}`, each])).values()];
}
