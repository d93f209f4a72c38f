import type { Rule, Values } from './sheet.ts';
import { shown } from './shown.ts';

/** Every name of a rule, each once. */
export function namesOf(rule: Rule): readonly string[] {
  return [...new Set([rule.left, ...rule.above, ...rule.below])];
}

/** A rule solved for one of its names: what stands on top and below, and the root to take. */
type Turned = {
  readonly top: readonly string[];
  readonly bottom: readonly string[];
  readonly factorOnTop: boolean;
  readonly root: number;
};

function turned({ left, above, below }: Rule, unknown: string): Turned {
  const isNot = (name: string): boolean => name !== unknown;
  const root = [left, ...above, ...below].length - [left, ...above, ...below].filter(isNot).length;
  return above.includes(unknown)
    ? { top: [left, ...below].filter(isNot), bottom: above.filter(isNot), factorOnTop: false, root }
    : { top: above.filter(isNot), bottom: [left, ...below].filter(isNot), factorOnTop: true, root };
}

const product = (names: readonly string[], values: Values): number =>
  names.reduce((all, name) => all * (values[name] ?? Number.NaN), 1);

/** The one value of a rule that is not known. */
export function solved(rule: Rule, unknown: string, values: Values): number {
  const { top, bottom, factorOnTop, root } = turned(rule, unknown);
  const share = product(top, values) / product(bottom, values);
  const factor = rule.factor / (rule.over ?? 1);
  const power = factorOnTop ? factor * share : share / factor;
  return root === 1 ? power : power ** (1 / root);
}

/** "5940 × gpm / (mph × spacing-in)": what the unknown equals, with names or with figures. */
export function equalTo(rule: Rule, unknown: string, word: (name: string) => string): string {
  const { top, bottom, factorOnTop, root } = turned(rule, unknown);
  const factor = constant(rule.factor);
  const over = constant(rule.over ?? 1);
  const above = [...(factorOnTop ? factor : over), ...squared(top, word)];
  const below = [...(factorOnTop ? over : factor), ...squared(bottom, word)];
  const upper = above.length === 0 ? '1' : above.join(' × ');
  const lower = below.length > 1 ? `(${below.join(' × ')})` : (below[0] ?? '');
  const all = lower === '' ? upper : `${upper} / ${lower}`;
  return root === 1 ? all : `√(${all})`;
}

const constant = (value: number): readonly string[] => (value === 1 ? [] : [shown(value)]);

function squared(names: readonly string[], word: (name: string) => string): readonly string[] {
  const count = (name: string): number => names.filter((each) => each === name).length;
  return [...new Set(names)].map((name) => (count(name) === 2 ? `${word(name)}²` : word(name)));
}

/** How far the two sides of a rule are apart where every value is known: 0.1 where the left is 10 % above. */
export function apart(rule: Rule, values: Values): number {
  return (values[rule.left] ?? Number.NaN) / solved(rule, rule.left, values) - 1;
}

/** Names of a rule whose values are not known. */
export function missing(rule: Rule, values: Values): readonly string[] {
  return namesOf(rule).filter((name) => values[name] === undefined);
}
