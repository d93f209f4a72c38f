import type { Issue } from '../base/index.ts';
import type { Book, Property } from '../book/index.ts';
import { boxesMeet, type GeometryFault, regionArea, union } from '../geometry/index.ts';
import { quantity, type SquareFeet, squareMetresToSquareFeet } from '../units/index.ts';
import { BOOK_PLACES, type PlaceNames } from './places.ts';
import { type PreparedExclusion, type PreparedProperty, type PreparedZone, prepareOnce } from './prepare.ts';
import { groundArea } from './slope.ts';
import type { PropertyMeasure, ZoneMeasure } from './types.ts';
import { totalErrorSqFt, zoneErrorSqFt } from './uncertainty.ts';
import {
  cutIssues,
  exclusionFaultIssue,
  farExclusionIssue,
  faultIssue,
  noZonesIssue,
  unknownExclusionIssue,
  unusedExclusionIssue,
} from './words.ts';

/**
 * Measures one property: ellipsoidal areas in its own plane, no ground counted twice, exclusions grown by their keep-away
 * distance and cut, map area turned into ground area by the slope. Never fails: what cannot be measured has null areas and
 * an issue.
 * @param places how issues name the zones and exclusions
 */
export function measureProperty(property: Property, places: PlaceNames = BOOK_PLACES): PropertyMeasure {
  const prepared = prepareOnce(property);
  const exclusionsKnown = prepared.exclusions.every(
    (each) => each.grown !== null || each.isFar || cutsNothing(each.faults),
  );
  const zones = prepared.zones.map((each) => measureZone(each, exclusionsKnown));
  const measured = zones.flatMap((each) => each.areaSqFt ?? []);
  return {
    propertyId: property.id,
    name: property.name,
    zones,
    exclusionsSqFt: lostArea(prepared),
    errorSqFt: totalErrorSqFt(zones),
    treatableSqFt: measured.length === 0 ? null : quantity<'ft2'>(measured.reduce((sum, each) => sum + each, 0)),
    issues: collectIssues(property, prepared, exclusionsKnown, places),
  };
}

/** Measures every property of a book, in the book's order. */
export function measureBook(book: Book): readonly PropertyMeasure[] {
  return book.properties.map((property) => measureProperty(property));
}

function measureZone(prepared: PreparedZone, exclusionsKnown: boolean): ZoneMeasure {
  const { zone } = prepared;
  const base = { zoneId: zone.id, name: zone.name, slopeDeg: zone.slopeDeg };
  switch (prepared.kind) {
    case 'stated': {
      const areaSqFt = quantity<'ft2'>(prepared.areaSqFt);
      return { ...base, source: 'stated', planAreaSqFt: null, areaSqFt, errorSqFt: null, plannable: areaSqFt > 0 };
    }
    case 'refused':
      return { ...base, source: 'drawn', planAreaSqFt: null, areaSqFt: null, errorSqFt: null, plannable: false };
    case 'drawn': {
      const areaSqFt = groundArea(toSquareFeet(prepared.cut.treatableSqM), zone.slopeDeg);
      return {
        ...base,
        source: 'drawn',
        planAreaSqFt: toSquareFeet(regionArea(prepared.cut.outline.net)),
        areaSqFt,
        errorSqFt: zoneErrorSqFt(zone, prepared.cut.treatable),
        plannable: exclusionsKnown && areaSqFt > 0 && !prepared.faults.some(isError),
      };
    }
  }
}

/** Ground inside the zones' shells that is not treatable, on the map: exclusions, holes and pieces too small to count. */
function lostArea({ zones }: PreparedProperty): SquareFeet {
  const cuts = zones.flatMap((each) => (each.kind === 'drawn' ? [each.cut] : []));
  const gross = regionArea(union(cuts.map((each) => each.outline.gross)));
  const treatable = cuts.reduce((sum, each) => sum + each.treatableSqM, 0);
  return toSquareFeet(Math.max(0, gross - treatable));
}

function collectIssues(
  property: Property,
  { zones, exclusions }: PreparedProperty,
  exclusionsKnown: boolean,
  places: PlaceNames,
): readonly Issue[] {
  const issues: Issue[] = [];
  if (zones.length === 0) issues.push(noZonesIssue(places.property(property)));
  for (const each of zones) {
    if (each.kind === 'stated') continue;
    const where = places.zone(property, each.zone.id);
    for (const fault of each.faults) issues.push(faultIssue(fault, where));
    if (each.kind === 'refused') continue;
    issues.push(...cutIssues(each.cut, where));
    if (!exclusionsKnown) issues.push(unknownExclusionIssue(where));
  }
  for (const each of exclusions)
    issues.push(...exclusionIssues(each, zones, places.exclusion(property, each.exclusion.id)));
  return issues;
}

function exclusionIssues(prepared: PreparedExclusion, zones: readonly PreparedZone[], where: string): readonly Issue[] {
  const issues = prepared.faults.map((fault) => exclusionFaultIssue(fault, where));
  const drawn = zones.flatMap((each) => (each.kind === 'drawn' ? [each.cut.outline.net] : []));
  if (drawn.length === 0) {
    if (zones.some((each) => each.kind === 'stated')) issues.push(unusedExclusionIssue(where));
    return issues;
  }
  const { grown, isFar } = prepared;
  if (isFar || (grown !== null && !drawn.some((each) => boxesMeet(each.box, grown.box)))) {
    issues.push(farExclusionIssue(where));
  }
  return issues;
}

/** True where an exclusion was refused because it has no ground, so that nothing is missing from the cut. */
function cutsNothing(faults: readonly GeometryFault[]): boolean {
  return faults.every((each) => each.code === 'geometry-zero-width' || each.code === 'geometry-too-few-corners');
}

function isError(fault: GeometryFault): boolean {
  return fault.severity === 'error';
}

function toSquareFeet(squareMetres: number): SquareFeet {
  return squareMetresToSquareFeet(quantity<'m2'>(squareMetres));
}
