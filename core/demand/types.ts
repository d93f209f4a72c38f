import type { Issue } from '../base/index.ts';

/** One product and how much of it, in the product's own unit. */
export type ProductAmount = {
  readonly productId: string;
  readonly amount: number;
  readonly unit: 'fl-oz' | 'oz' | 'lb';
};

/** What one treatment takes on one zone. A seed treatment with starter gives two of these (`step` 0 and 1). */
export type ZoneDemand = {
  readonly propertyId: string;
  readonly zoneId: string;
  readonly treatmentId: string;
  readonly step: number;
  readonly what: 'spray' | 'spread' | 'aerate' | 'seed';
  /** What the tank or hopper has to hold: a mix id for 'spray', a product id for 'spread' and 'seed', '' for 'aerate'. */
  readonly materialId: string;
  /** Ground that is really treated: the zone's area, or the share or band of it. Label limits count on this. ft2 */
  readonly treatedSqFt: number;
  /** Spray volume with everything in it, gal; 0 for dry work. */
  readonly volumeGal: number;
  /** Dry material, lb; 0 for spraying. */
  readonly weightLb: number;
  readonly products: readonly ProductAmount[];
  /** Times the ground is gone over. */
  readonly passes: number;
};

/** What a round takes, zone by zone, and what is odd about it. */
export type DemandResult = { readonly demands: readonly ZoneDemand[]; readonly issues: readonly Issue[] };
