import { err, ok, type Result } from '../../base/index.ts';
import { checkRanges, unitOf } from './ranges.ts';
import { contradiction, unusedEntry } from './refusals.ts';
import { apart, equalTo, missing, namesOf, solved } from './rule.ts';
import { type Entries, type Finding, NO_FINDING, type Rule, type Sheet, type Values } from './sheet.ts';
import { mean, shown, shownWithUnit } from './shown.ts';

/** One figure that was found, in the unit beside it: '' for a plain number, 'share' for 0 to 1. */
export type BenchAnswer = { readonly name: string; readonly value: number; readonly unit: string };

/** A sheet worked out: what was found, the arithmetic in lines of text, and where the rules come from. */
export type BenchResult = {
  readonly answers: readonly BenchAnswer[];
  readonly working: readonly string[];
  readonly source: string;
};

/** Figures that say the same may differ by so much: printed and rounded ones do. Ours. */
const SAME_SHARE = 0.01;

type State = Finding & { readonly pending: readonly Rule[] };

/**
 * Works a sheet out: whatever follows from the figures that were filled in, one rule after the other.
 *
 * Errors: 'request-invalid' where figures are missing, contradict each other or serve for nothing; 'quantity-out-of-range'
 * where a figure, given or found, cannot be right.
 */
export function workSheet(sheet: Sheet, entries: Entries): Result<BenchResult> {
  const checked = checkRanges(sheet, entries.values, entries);
  if (!checked.ok) return checked;
  const before = sheet.before?.(entries) ?? ok(NO_FINDING);
  if (!before.ok) return before;
  const prepared = checkRanges(sheet, before.value.values, entries);
  if (!prepared.ok) return prepared;
  const rules = sheet.rules(entries);
  const start: State = joined(
    { ...NO_FINDING, values: entries.values, lines: meanLines(sheet, entries) },
    before.value,
    rules,
  );
  const ruled = applyRules(sheet, entries, start);
  if (!ruled.ok) return ruled;
  const after = sheet.after?.(ruled.value.values, entries) ?? ok(NO_FINDING);
  if (!after.ok) return after;
  const end = joined(ruled.value, after.value, []);
  const unused = unusedEntry(entries, end, rules);
  if (unused !== null) return unused;
  const inRange = checkRanges(sheet, end.values, entries);
  return inRange.ok ? finished(sheet, entries, end) : inRange;
}

function joined(state: Finding, found: Finding, pending: readonly Rule[]): State {
  return {
    values: { ...state.values, ...found.values },
    lines: [...state.lines, ...found.lines],
    used: [...state.used, ...found.used],
    sources: [...state.sources, ...found.sources],
    pending,
  };
}

function meanLines({ blanks }: Sheet, { lists }: Entries): readonly string[] {
  return blanks.flatMap(({ name, unit }) => {
    const list = lists[name] ?? [];
    if (list.length < 2 || unit === '') return [];
    return [`${name}: (${list.map(shown).join(' + ')}) / ${list.length} = ${shownWithUnit(mean(list), unit)}`];
  });
}

/** Applies every rule that lacks one value, until none does; rules that lack nothing have to agree. */
function applyRules(sheet: Sheet, entries: Entries, start: State): Result<State> {
  let state = start;
  for (;;) {
    const next = state.pending.find((rule) => missing(rule, state.values).length <= 1);
    if (next === undefined) return ok(state);
    const unknown = missing(next, state.values)[0];
    const pending = state.pending.filter((rule) => rule !== next);
    if (unknown === undefined) {
      const differs = Math.abs(apart(next, state.values));
      if (!(differs <= SAME_SHARE)) return contradiction(next, state.values);
      state = joined(state, { ...NO_FINDING, used: namesOf(next) }, pending);
    } else {
      const value = solved(next, unknown, state.values);
      const checked = checkRanges(sheet, { [unknown]: value }, entries);
      if (!checked.ok) return checked;
      state = joined(state, foundBy(next, unknown, value, state.values, unitOf(sheet, unknown, entries)), pending);
    }
  }
}

function foundBy(rule: Rule, unknown: string, value: number, values: Values, unit: string): Finding {
  const words = equalTo(rule, unknown, (name) => name);
  const figures = equalTo(rule, unknown, (name) => shown(values[name] ?? Number.NaN));
  return {
    values: { [unknown]: value },
    lines: [`${unknown} = ${words} = ${figures} = ${shownWithUnit(value, unit)}`],
    used: namesOf(rule),
    sources: [rule.source],
  };
}

function finished(sheet: Sheet, entries: Entries, state: State): Result<BenchResult> {
  const answers = Object.entries(state.values)
    .filter(([name]) => entries.values[name] === undefined)
    .map(([name, value]) => ({ name, value, unit: unitOf(sheet, name, entries) }));
  if (answers.length === 0) {
    return err(
      'request-invalid',
      sheet.kind,
      'Every figure is given, and they agree: nothing is left to work out.',
      'Leave out the one that is wanted.',
    );
  }
  return ok({ answers, working: state.lines, source: [...new Set(state.sources)].join('; ') });
}
