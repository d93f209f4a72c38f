import type { Coverage, Property, Zone } from '../../book/index.ts';
import type { ProductUnit } from '../../units/index.ts';

/** Ground of lawns, handed in by whoever has measured them. */
export type Ground = {
  /** Ground of a zone, ft2; null where it is not known. */
  readonly areaSqFt: (property: Property, zoneId: string) => number | null;
  /** Ground of a strip along paving or beds of a zone, ft2. */
  readonly bandSqFt: (property: Property, zone: Zone, band: Coverage & { readonly kind: 'band' }) => number;
};

/** Amounts by product id, each in its product's own unit. */
export type ByProduct = ReadonlyMap<string, number>;

/** One treatment of one zone: as it was recorded, or as a round of the book has it planned. */
export type Application = {
  readonly zoneId: string;
  readonly treatmentId: string;
  readonly roundId: string;
  readonly roundName: string;
  readonly status: 'recorded' | 'planned';
  /** Rank of its round among all, by first day: lower comes earlier; -1 for a round that is no longer in the book. */
  readonly rank: number;
  /** Days between which it was or will be done. */
  readonly first: string;
  readonly last: string;
  /** Calendar years in which it may count: one for what is recorded; all of the round's where its day is not known. */
  readonly years: readonly string[];
  readonly seeds: boolean;
  /** Ground that it went or will go over, ft2; 0 where that is not known. */
  readonly treatedSqFt: number;
  /** What it puts down on 1,000 ft2 of that ground: by product id, in the product's unit. */
  readonly rates: ByProduct;
};

export const LIMIT_KINDS = ['product-year', 'product-application', 'nutrient', 'active'] as const;

/** A limit of a label, or a cap that the user entered. */
export type Limit = {
  /** "product-year forecrop", "nutrient cap-1". */
  readonly id: string;
  readonly kind: (typeof LIMIT_KINDS)[number];
  /** What it is about: "Forecrop 3", "nitrogen". */
  readonly name: string;
  /** On 1,000 ft2 in a calendar year, or in one application. */
  readonly most: number;
  readonly unit: ProductUnit;
  /** Rule behind a cap as it was entered; '' for labels. */
  readonly source: string;
  /** How much of what is limited one unit of a product holds, by product id. Products without it are not in the map. */
  readonly per: ReadonlyMap<string, number>;
};

/** How far one limit is used up on one zone. */
export type LimitUse = {
  readonly limitId: string;
  /** On 1,000 ft2, in the limit's unit. */
  readonly used: number;
  /** Used over allowed: 1 is the limit itself. */
  readonly share: number;
};

/** Amounts that went or will go down. */
export type Amounts = {
  /** By product id, in the product's unit. */
  readonly products: ByProduct;
  /** By name as the products have it, lb. */
  readonly actives: ReadonlyMap<string, number>;
  /** Pounds; phosphate and potash as they are printed (P2O5, K2O). */
  readonly nutrients: Readonly<Record<Nutrient, number>>;
};

/** What is counted of a printed analysis: N, P2O5 and K2O. */
export const NUTRIENTS = ['nitrogen', 'phosphate', 'potash'] as const;
/** One of `NUTRIENTS`. */
export type Nutrient = (typeof NUTRIENTS)[number];

/** What one zone gets in a year, against its limits. */
export type ZoneYear = {
  readonly zoneId: string;
  readonly name: string;
  /** Ground of the zone, ft2; null where it is not known, and for zones that are only in records. */
  readonly areaSqFt: number | null;
  readonly applications: readonly Application[];
  /** On 1,000 ft2 of treated ground, all applications as if they met the same ground. */
  readonly per1000: Amounts;
  /** In all. */
  readonly total: Amounts;
  readonly uses: readonly LimitUse[];
};

/** What one lawn gets in a year, against its limits. */
export type LawnYear = {
  readonly propertyId: string;
  readonly name: string;
  readonly zones: readonly ZoneYear[];
  readonly total: Amounts;
  /** For every limit the zone that uses most of it; limits that no zone touches are left out. */
  readonly worst: readonly (LimitUse & { readonly zoneId: string })[];
  /** The largest share among `worst`; 0 where nothing is limited. */
  readonly share: number;
};

/** What all lawns get in a calendar year (YYYY), against every limit that was entered. */
export type SeasonLedger = {
  readonly year: string;
  readonly limits: readonly Limit[];
  readonly lawns: readonly LawnYear[];
  readonly total: Amounts;
  /** What could not be counted, in words. */
  readonly gaps: readonly string[];
};
