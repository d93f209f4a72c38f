import { type Issue, issue } from '../../base/index.ts';
import type { BadFeature, ExclusionFeature, Feature, GateFeature, ZoneFeature } from './feature.ts';
import { findHome } from './home.ts';

/** The features that make one property. */
export type Group = {
  readonly id: string;
  readonly zones: readonly (ZoneFeature | BadFeature)[];
  readonly exclusions: readonly ExclusionFeature[];
  readonly gates: readonly GateFeature[];
  /** Exclusions and gates that cannot be used. */
  readonly unusable: readonly BadFeature[];
};

export type Grouping = {
  readonly groups: readonly Group[];
  /** Exclusions and gates of no property, with the issue that says so. */
  readonly homeless: readonly { readonly feature: Feature; readonly issue: Issue }[];
  readonly issues: readonly Issue[];
};

type Open = {
  readonly id: string;
  zones: (ZoneFeature | BadFeature)[];
  exclusions: ExclusionFeature[];
  gates: GateFeature[];
  unusable: BadFeature[];
};

/**
 * Joins features to properties: those with `properties.property` under that id, a zone without it as a property of its own.
 * Exclusions and gates without it go to the property whose turf they meet.
 */
export function groupFeatures(features: readonly Feature[]): Grouping {
  const issues: Issue[] = [];
  const groups = new Map<string, Open>();
  const joined = new Set(features.flatMap((each) => each.joins ?? []));
  const taken = new Set(joined);
  const rest: Feature[] = [];
  for (const feature of features) {
    if (!isZone(feature)) {
      rest.push(feature);
      continue;
    }
    const id = feature.joins ?? ownId(feature, joined, groups, taken, issues);
    const group = groups.get(id) ?? open(id);
    groups.set(id, group);
    group.zones.push(withFreeId(feature, group.zones, issues));
  }
  const homeless: { feature: Feature; issue: Issue }[] = [];
  for (const feature of rest) {
    const homes = feature.joins === null ? findHome(feature, [...groups.values()]) : [groups.get(feature.joins)];
    const found = homes.flatMap((each) => each ?? []);
    for (const group of found) add(group, feature, issues);
    if (found.length === 0)
      homeless.push({ feature, issue: feature.kind === 'bad' ? (feature.issues[0] ?? lost(feature)) : lost(feature) });
  }
  return { groups: [...groups.values()], homeless, issues };
}

function open(id: string): Open {
  return { id, zones: [], exclusions: [], gates: [], unusable: [] };
}

function isZone(feature: Feature): feature is ZoneFeature | BadFeature {
  return feature.kind === 'zone' || (feature.kind === 'bad' && feature.role === 'zone');
}

/** The id of a property made of one feature: the feature's, unless another property has it already. */
function ownId(
  feature: Feature,
  joined: ReadonlySet<string>,
  groups: ReadonlyMap<string, Open>,
  taken: Set<string>,
  issues: Issue[],
): string {
  const { id } = feature;
  const isReferredTo = joined.has(id) && !groups.get(id)?.zones.some((each) => each.joins === null);
  if (isReferredTo || !taken.has(id)) {
    taken.add(id);
    return id;
  }
  const free = freeId(id, taken);
  taken.add(free);
  issues.push(
    issue('warning', 'duplicate-id', feature.where, `The id ${id} is there before; this one is now ${free}.`),
  );
  return free;
}

function withFreeId<Kind extends Feature>(feature: Kind, others: readonly Feature[], issues: Issue[]): Kind {
  const taken = new Set(others.map((each) => each.id));
  if (!taken.has(feature.id)) return feature;
  const id = freeId(feature.id, taken);
  const message = `The id ${feature.id} is there before in its property; this one is now ${id}.`;
  issues.push(issue('warning', 'duplicate-id', feature.where, message));
  return { ...feature, id };
}

function freeId(id: string, taken: ReadonlySet<string>): string {
  let count = 2;
  while (taken.has(`${id}-${count}`)) count += 1;
  return `${id}-${count}`;
}

function add(group: Open, feature: Feature, issues: Issue[]): void {
  if (feature.kind === 'exclusion') group.exclusions.push(withFreeId(feature, group.exclusions, issues));
  else if (feature.kind === 'gate') group.gates.push(withFreeId(feature, group.gates, issues));
  else if (feature.kind === 'bad') group.unusable.push(feature);
}

function lost(feature: Feature): Issue {
  const what = feature.kind === 'gate' ? 'gate' : 'exclusion';
  if (feature.joins !== null) {
    const message = `The ${what} names property ${feature.joins}, which has no zone in the file. Correct properties.property.`;
    return issue('error', `${what}-without-property`, feature.where, message);
  }
  const message = `The ${what} meets the turf of no property in the file. Give it the property's id in properties.property.`;
  return issue('error', `${what}-without-property`, feature.where, message);
}
