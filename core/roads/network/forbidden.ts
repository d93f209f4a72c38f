import type { RoadSettings } from '../settings.ts';
import { RESTRICTION, type RoadMap } from '../types.ts';

/** Whether turn restrictions forbid to go from an edge by way of a junction on to another. */
export type Forbidden = (edge: number, junction: number, next: number) => boolean;

type Rule = { readonly not: Set<number>; readonly only: Set<number> };

export function forbiddenTurns(map: RoadMap, settings: RoadSettings): Forbidden {
  const { from, via, to, flags } = map.restrictions;
  const rules = new Map<number, Map<number, Rule>>();
  for (let at = 0; at < from.length; at += 1) {
    const bits = flags[at] as number;
    if ((bits & RESTRICTION.heavy) !== 0 && !settings.truck.heavy) continue;
    const rule = ruleOf(rules, from[at] as number, via[at] as number);
    ((bits & RESTRICTION.only) !== 0 ? rule.only : rule.not).add(to[at] as number);
  }
  return (edge, junction, next) => {
    const rule = rules.get(edge)?.get(junction);
    if (rule === undefined) return false;
    return rule.not.has(next) || (rule.only.size > 0 && !rule.only.has(next));
  };
}

function ruleOf(rules: Map<number, Map<number, Rule>>, edge: number, junction: number): Rule {
  const ofEdge = rules.get(edge) ?? new Map<number, Rule>();
  rules.set(edge, ofEdge);
  const rule = ofEdge.get(junction) ?? { not: new Set<number>(), only: new Set<number>() };
  ofEdge.set(junction, rule);
  return rule;
}
