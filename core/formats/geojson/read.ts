import { type Issue, issue, ok, type Result } from '../../base/index.ts';
import type { Property } from '../../book/index.ts';
import { type Feature, readFeature, type ZoneFeature } from './feature.ts';
import { type Group, type Grouping, groupFeatures } from './group.ts';
import { oddFeatures } from './odd.ts';
import { makeProperty } from './property.ts';
import { readFeatures } from './structure.ts';

/** A GeoJSON file by its features and the properties that they make. Nothing is measured yet. */
export type GeojsonContent = {
  readonly features: readonly Feature[];
  readonly grouping: Grouping;
  /** Issues of single features and of the file, in the order of the file. */
  readonly issues: readonly Issue[];
};

/** Errors: those of `readFeatures`. A file without features is no error here; it has an issue. */
export function readContent(text: string, where: string): Result<GeojsonContent> {
  const list = readFeatures(text, where);
  if (!list.ok) return list;
  const features = list.value.features.map((each, index) => readFeature(each, index, where, list.value.grid));
  const grouping = groupFeatures(features);
  const issues: Issue[] = [];
  if (features.length === 0) {
    issues.push(
      issue('error', 'nothing-to-measure', where, 'The file has no features. Export the outlines once more.'),
    );
  }
  issues.push(...features.flatMap((each) => each.issues));
  issues.push(...grouping.issues);
  issues.push(...grouping.homeless.flatMap((each) => (each.feature.kind === 'bad' ? [] : [each.issue])));
  issues.push(...oddFeatures(features));
  return ok({ features, grouping, issues });
}

/** The property of a group with every zone whose coordinates are numbers, whether they lie on the ground or not. */
export function draftProperty(group: Group): Property {
  return makeProperty(group, soundZones(group)).property;
}

export function soundZones(group: Group): readonly ZoneFeature[] {
  return group.zones.flatMap((each) => (each.kind === 'zone' ? [each] : []));
}
