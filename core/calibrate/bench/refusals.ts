import { type Err, err } from '../../base/index.ts';
import { equalTo, missing, namesOf, solved } from './rule.ts';
import type { Entries, Finding, Rule, Values } from './sheet.ts';
import { shown } from './shown.ts';

const ruleWords = (rule: Rule): string => `${rule.left} = ${equalTo(rule, rule.left, (name) => name)}`;

/** Two ways to one figure that do not agree. */
export function contradiction(rule: Rule, values: Values): Err {
  const { left } = rule;
  const detail = `The figures contradict each other: ${ruleWords(rule)} gives ${shown(solved(rule, left, values))}, and ${left} is ${shown(values[left] ?? Number.NaN)}.`;
  return err(
    'request-invalid',
    left,
    detail,
    `Leave out one of ${namesOf(rule).join(', ')}: it is worked out from the others.`,
  );
}

/** The first figure that served for nothing, with what it lacks; null where all served. */
export function unusedEntry(entries: Entries, found: Finding, rules: readonly Rule[]): Err | null {
  const given = Object.keys(entries.values);
  if (given.length === 0) return err('request-invalid', 'bench', 'No figure is given.', 'Give what was measured.');
  const unused = given.find((name) => !found.used.includes(name));
  if (unused === undefined) return null;
  const closest = rules
    .filter((rule) => namesOf(rule).includes(unused))
    .toSorted((left, right) => missing(left, found.values).length - missing(right, found.values).length)[0];
  if (closest === undefined) {
    return err('request-invalid', unused, `Nothing follows from ${unused} here.`, 'Leave it out.');
  }
  const lacks = missing(closest, found.values);
  const some = lacks.length > 2 ? 'all but one of ' : lacks.length > 1 ? 'one of ' : '';
  const detail = `Nothing follows from ${unused} yet: ${ruleWords(closest)} needs ${some}${lacks.join(', ')}.`;
  return err('request-invalid', unused, detail, 'Give what is missing, or leave the figure out.');
}
