import { type Issue, issue, ok, type Result } from '../../base/index.ts';
import { outlineArea } from '../../geometry/index.ts';
import type { GroundPreview } from '../types.ts';
import type { Feature, ZoneFeature } from './feature.ts';
import type { Group } from './group.ts';
import { makeProperty } from './property.ts';
import { readContent, soundZones } from './read.ts';

/**
 * Reads a GeoJSON text as properties for a book. Features that a book could not hold or that have no area are rejected, each
 * with an error; a property of which no zone is left is rejected with all its features.
 * Errors: where the text as a whole is no GeoJSON.
 */
export function previewGeojson(text: string, where: string): Result<GroundPreview> {
  const content = readContent(text, where);
  if (!content.ok) return content;
  const { features, grouping } = content.value;
  const issues: Issue[] = [...content.value.issues];
  const rejected = new Set<number>();
  for (const each of features) if (each.kind === 'bad') rejected.add(each.index);
  for (const each of grouping.homeless) rejected.add(each.feature.index);
  const sound = grouping.groups.map((group) => ({
    zones: soundZones(group).filter((zone) => isUsable(zone, issues, rejected)),
    group: { ...group, exclusions: group.exclusions.filter((each) => isUsable(each, issues, rejected)) },
  }));
  const kept = sound.filter(({ zones }) => zones.length > 0);
  const used = new Set(kept.flatMap(({ group }) => [...group.exclusions, ...group.gates].map((each) => each.index)));
  for (const { group, zones } of sound) if (zones.length === 0) rejectRest(group, used, issues, rejected);
  const made = kept.map(({ group, zones }) => makeProperty(group, zones));
  return ok({
    properties: made.map((each) => each.property),
    parkingAssumed: made.flatMap((each) => (each.parkingAssumed ? [each.property.id] : [])),
    found: features.length,
    accepted: features.length - rejected.size,
    rejected: rejected.size,
    issues,
  });
}

/** True where the outline has an area. Its faults become issues either way. */
function isUsable(
  feature: ZoneFeature | Extract<Feature, { kind: 'exclusion' }>,
  issues: Issue[],
  rejected: Set<number>,
): boolean {
  if (rejected.has(feature.index)) return false;
  const { areaSqM, faults } = outlineArea(feature.geometry);
  for (const fault of faults) issues.push(issue(fault.severity, fault.code, feature.where, fault.message));
  if (areaSqM !== null) return true;
  rejected.add(feature.index);
  return false;
}

function rejectRest(group: Group, used: ReadonlySet<number>, issues: Issue[], rejected: Set<number>): void {
  for (const feature of [...group.exclusions, ...group.gates]) {
    if (rejected.has(feature.index) || used.has(feature.index)) continue;
    rejected.add(feature.index);
    const message = `Property ${group.id} has no zone that can be used. Correct its zones first.`;
    issues.push(issue('error', 'property-without-zones', feature.where, message));
  }
}
