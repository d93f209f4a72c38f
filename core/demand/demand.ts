import { type DryWork, dryStep } from './dry.ts';
import { groundOf } from './ground.ts';
import type { DemandQuestion } from './question.ts';
import { type StepResult, sprayStep } from './spray.ts';
import type { DemandResult, ZoneDemand } from './types.ts';

/**
 * What a treatment takes on a zone: ground, spray volume, products, pounds, passes. Seed with starter gives two demands.
 *
 * Figures are not rounded; whoever plans with them rounds up, whoever prints them rounds for reading. A step that breaks an
 * entered label limit, or that lacks what it needs, gives an issue and no demand. A zone without an area gives demands of
 * zero, so that the work is listed as impossible and not lost; a band along an edge that is not there gives none.
 */
export function demandFor(question: DemandQuestion): DemandResult {
  const ground = groundOf(question);
  const nothingThere = ground.treatedSqFt === 0 && question.zoneMeasure.areaSqFt !== null;
  if (nothingThere) return { demands: [], issues: ground.issues };
  const steps = stepsOf(question, ground.treatedSqFt);
  return {
    demands: steps.flatMap((each) => (each.demand ? [each.demand] : [])),
    issues: [...ground.issues, ...steps.flatMap((each) => each.issues)],
  };
}

function stepsOf(question: DemandQuestion, treatedSqFt: number): readonly StepResult[] {
  const { treatment } = question;
  switch (treatment.kind) {
    case 'spray':
      return [sprayStep(question, treatment, treatedSqFt)];
    case 'spread': {
      const { productId, rate } = treatment;
      return [dryStep(question, { what: 'spread', step: 0, productId, rate, passes: 1 }, treatedSqFt)];
    }
    case 'aerate':
      return [{ demand: aeration(question, treatment.passes, treatedSqFt), issues: [] }];
    case 'seed': {
      const rate = { kind: 'product', lbPer1000SqFt: treatment.lbPer1000SqFt } as const;
      const seed: DryWork = { what: 'seed', step: 0, productId: treatment.productId, rate, passes: treatment.passes };
      const works = treatment.starter ? [seed, { ...treatment.starter, what: 'spread', step: 1 } as const] : [seed];
      return works.map((each) => dryStep(question, each, treatedSqFt));
    }
  }
}

function aeration(question: DemandQuestion, passes: number, treatedSqFt: number): ZoneDemand {
  const { property, zone, treatment } = question;
  return {
    propertyId: property.id,
    zoneId: zone.id,
    treatmentId: treatment.id,
    step: 0,
    what: 'aerate',
    materialId: '',
    treatedSqFt,
    volumeGal: 0,
    weightLb: 0,
    products: [],
    passes,
  };
}
