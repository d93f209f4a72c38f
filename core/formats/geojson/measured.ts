import { type Issue, ok, type Result } from '../../base/index.ts';
import type { Property } from '../../book/index.ts';
import type { AreaSource, PlaceNames, PropertyMeasure, ZoneMeasure } from '../../measure/index.ts';
import type { Feature } from './feature.ts';
import type { Group } from './group.ts';
import { draftProperty, readContent } from './read.ts';

const MEASURE_FORMAT = 'swardway-measure';
const MEASURE_VERSION = 1;

/**
 * What the measure command says of a zone: areas in square feet, null where it cannot be measured; slope in degrees.
 */
export type MeasuredZone = {
  readonly id: string;
  readonly name: string;
  readonly planAreaSqFt: number | null;
  readonly areaSqFt: number | null;
  /** Likely error of the area; null where not known. */
  readonly errorSqFt: number | null;
  readonly source: AreaSource;
  readonly slopeDeg: number;
  readonly plannable: boolean;
};
/** What the measure command says of a property; areas in square feet. */
export type MeasuredProperty = {
  readonly id: string;
  readonly name: string;
  readonly zones: readonly MeasuredZone[];
  /** Null where no zone could be measured. */
  readonly exclusionsSqFt: number | null;
  readonly treatableSqFt: number | null;
  readonly errorSqFt: number | null;
};
/** What the measure command answers. */
export type MeasuredFile = {
  readonly format: typeof MEASURE_FORMAT;
  readonly version: typeof MEASURE_VERSION;
  readonly properties: readonly MeasuredProperty[];
  readonly totalSqFt: number;
  readonly issues: readonly Issue[];
};

/** The measure step, handed in: a format knows only its types. */
export type MeasureProperty = (property: Property, places?: PlaceNames) => PropertyMeasure;

/**
 * Measures a GeoJSON text: each feature is a property, unless role and property join several. Features that cannot be used
 * are listed with null areas and an issue. Errors: only where the text as a whole is no GeoJSON.
 */
export function measureGeojson(text: string, where: string, measure: MeasureProperty): Result<MeasuredFile> {
  const content = readContent(text, where);
  if (!content.ok) return content;
  const { grouping, issues } = content.value;
  const measured = grouping.groups.map((group) => measureGroup(group, measure, where));
  return ok(
    measuredFile(
      measured.map((each) => each.property),
      [...issues, ...measured.flatMap((each) => each.issues)],
    ),
  );
}

/** The same answer for properties of a book. */
export function measuredFromBook(measures: readonly PropertyMeasure[]): MeasuredFile {
  const properties = measures.map((each) =>
    measuredProperty(each.propertyId, each.name, each.zones.map(measuredZone), each),
  );
  return measuredFile(
    properties,
    measures.flatMap((each) => each.issues),
  );
}

function measuredFile(properties: readonly MeasuredProperty[], issues: readonly Issue[]): MeasuredFile {
  const totalSqFt = properties.reduce((sum, each) => sum + (each.treatableSqFt ?? 0), 0);
  return { format: MEASURE_FORMAT, version: MEASURE_VERSION, properties, totalSqFt, issues };
}

function measureGroup(
  group: Group,
  measure: MeasureProperty,
  file: string,
): { readonly property: MeasuredProperty; readonly issues: readonly Issue[] } {
  const property = draftProperty(group);
  const measures = measure(property, placesOf(group, file));
  const known = new Map(measures.zones.map((each) => [each.zoneId, each]));
  const isWhole = group.unusable.every((each) => each.role !== 'exclusion');
  const zones = group.zones.map((feature): MeasuredZone => {
    const found = known.get(feature.id);
    if (found === undefined) return unmeasuredZone(feature);
    return { ...measuredZone(found), plannable: found.plannable && isWhole };
  });
  const hasNone = group.zones.every((each) => each.kind === 'bad');
  return {
    property: measuredProperty(property.id, property.name, zones, measures),
    issues: hasNone ? [] : measures.issues,
  };
}

function measuredProperty(
  id: string,
  name: string,
  zones: readonly MeasuredZone[],
  measures: PropertyMeasure,
): MeasuredProperty {
  const { treatableSqFt, errorSqFt } = measures;
  const exclusionsSqFt = treatableSqFt === null ? null : measures.exclusionsSqFt;
  return { id, name, zones, exclusionsSqFt, treatableSqFt, errorSqFt };
}

function measuredZone(zone: ZoneMeasure): MeasuredZone {
  const { name, planAreaSqFt, areaSqFt, errorSqFt, source, slopeDeg, plannable } = zone;
  return { id: zone.zoneId, name, planAreaSqFt, areaSqFt, errorSqFt, source, slopeDeg, plannable };
}

function unmeasuredZone(feature: Feature): MeasuredZone {
  const name = feature.name === '' ? feature.id : feature.name;
  const unknown = { planAreaSqFt: null, areaSqFt: null, errorSqFt: null };
  return { id: feature.id, name, ...unknown, source: 'drawn', slopeDeg: 0, plannable: false };
}

/** Names places by the features they come from. */
export function placesOf(group: Group, file: string): PlaceNames {
  const whereOf = (features: readonly Feature[], id: string) =>
    features.find((each) => each.id === id)?.where ?? `${file}, ${id}`;
  return {
    property: () => group.zones[0]?.where ?? file,
    zone: (_, zoneId) => whereOf(group.zones, zoneId),
    exclusion: (_, exclusionId) => whereOf(group.exclusions, exclusionId),
  };
}
