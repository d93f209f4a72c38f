import type { Issue } from '../base/index.ts';
import type { Position } from '../book/index.ts';
import type { SquareFeet } from '../units/index.ts';

/** How an area was found. */
export type AreaSource = 'drawn' | 'stated';

/** The ground of one zone, and how it was found. */
export type ZoneMeasure = {
  readonly zoneId: string;
  readonly name: string;
  readonly source: AreaSource;
  /** Area on the map after holes, before exclusions; null where the outline cannot be measured, and for stated areas. ft2 */
  readonly planAreaSqFt: SquareFeet | null;
  /** Ground the zone has for treatment: exclusions (grown) and earlier zones of the property cut out, slope applied. ft2 */
  readonly areaSqFt: SquareFeet | null;
  /** Likely error of `areaSqFt` from the drawing, ft2; null where nobody said how far the outline may be off. */
  readonly errorSqFt: SquareFeet | null;
  readonly slopeDeg: number;
  /** False where a fault (self-crossing and the like) keeps the zone out of plans. */
  readonly plannable: boolean;
};

/** The ground of one property: its zones, and what is odd about them. */
export type PropertyMeasure = {
  readonly propertyId: string;
  readonly name: string;
  readonly zones: readonly ZoneMeasure[];
  /** Turf lost to exclusions and their keep-away distance, and holes, on the map. ft2 */
  readonly exclusionsSqFt: SquareFeet;
  /** Sum of `areaSqFt` over zones that could be measured; null where none could. */
  readonly treatableSqFt: SquareFeet | null;
  /** Sum of the zones' likely errors; null where that of a measured zone is not known. ft2 */
  readonly errorSqFt: SquareFeet | null;
  readonly issues: readonly Issue[];
};

/** The treatable part of one zone as rings in degrees, for maps and sheets. */
export type TreatableOutline = readonly (readonly (readonly Position[])[])[];
