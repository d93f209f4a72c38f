import type { Position } from '../book/index.ts';

/** What the records of a layer are. */
export const LAYER_ROLES = ['properties', 'zones', 'exclusions', 'gates', 'parcels', 'nothing'] as const;
/** One of `LAYER_ROLES`. */
export type LayerRole = (typeof LAYER_ROLES)[number];

/** What a field of a file can mean. */
export const MEANINGS = [
  'id',
  'name',
  'address',
  'property',
  'propertyName',
  'role',
  'area',
  'slope',
  'gateWidth',
  'what',
  'keepAway',
  'zones',
  'locked',
  'parking',
] as const;
/** One of `MEANINGS`. */
export type Meaning = (typeof MEANINGS)[number];

/** Units in which the figures of a field may be: of area, of length, of slope. */
export const FIELD_UNITS = ['ft2', 'ac', 'm2', 'ha', 'in', 'ft', 'cm', 'm', 'deg', '%'] as const;
/** One of `FIELD_UNITS`. */
export type FieldUnit = (typeof FIELD_UNITS)[number];
/** A field with the unit of bare numbers in it; a unit written beside a number goes before. */
export type FieldUse = { readonly field: string; readonly unit: FieldUnit | null };
/** The field for each meaning that has one. */
export type FieldUses = { readonly [Key in Meaning]?: FieldUse };

/** A point of a drawing, in its own units, and where it lies on the ground. */
export type ControlPoint = { readonly drawing: readonly [x: number, y: number]; readonly ground: Position };

/** What the numbers of a layer mean, where the file does not say. */
export type CoordinatesAnswer =
  /** Longitude and latitude, WGS84. */
  | { readonly kind: 'degrees' }
  | { readonly kind: 'epsg'; readonly code: number }
  | { readonly kind: 'two-points'; readonly first: ControlPoint; readonly second: ControlPoint }
  /** One point, the length of a unit, and the bearing on the ground of the drawing's y axis, degrees from north by east. */
  | {
      readonly kind: 'one-point';
      readonly point: ControlPoint;
      readonly metresPerUnit: number;
      readonly bearingDeg: number;
    };

/** How one layer of a file is to be understood. */
export type LayerMapping = {
  readonly role: LayerRole;
  readonly fields: FieldUses;
  /** The ids that the file itself gives its records count where no field does. */
  readonly ownIds: boolean;
  /** Null: as the file says. */
  readonly coordinates: CoordinatesAnswer | null;
};

/** How a file is to be understood. Fields without a meaning are not imported. */
export type Mapping = {
  /** One for each layer of the file, in its order. */
  readonly layers: readonly LayerMapping[];
  /** Lines are taken for outlines and closed. */
  readonly closeLines: boolean;
  /** Which property of the book a record is: the one with its id, or the one at its place. Records without id go by place. */
  readonly mergeBy: 'id' | 'place';
};
