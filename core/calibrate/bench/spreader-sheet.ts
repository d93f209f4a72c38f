import { type Err, err, ok, type Result } from '../../base/index.ts';
import { acceptableRates, effectiveSwathFt } from '../spreader.ts';
import { BLANKS, blank } from './blanks.ts';
import { PRODUCT_PER_ACRE } from './boom-rules.ts';
import { type Entries, type Finding, NO_FINDING, type Sheet, type Values } from './sheet.ts';
import { percent, shown } from './shown.ts';
import { SOURCES } from './sources.ts';

/** Runs have to agree within this share of their mean (the spreader slides). */
const RUNS_AGREE = 0.1;

/** A spreader by weighing back over a measured run, its effective swath from pans, and the rate of one of several passes. */
export const spreaderSheet: Sheet = {
  kind: 'spreader',
  words: 'rate by weighing the hopper before and after a run; effective swath from pans; rate of one of several passes',
  blanks: [
    blank('before-lb', 'weight', 'weight before the run, lb'),
    blank('after-lb', 'weight', 'weight after the run, lb'),
    blank('used-lb', 'weight', 'pounds that the run used; several runs with commas between', { many: true }),
    ...[BLANKS.courseFt, BLANKS.swathFt, BLANKS.areaSqFt],
    blank('pans', 'number', 'what each pan caught, left to right, in any one unit', {
      many: true,
      most: 1e6,
      mayBeZero: true,
    }),
    blank('pan-spacing-ft', 'length', 'distance from pan to pan, ft', { most: 20 }),
    blank('course-for-1000-ft', 'length', 'length of a course that covers 1,000 ft²'),
    ...[BLANKS.lbPer1000, BLANKS.lbPerAcre, BLANKS.passes, BLANKS.lbPerPass],
    blank('want-lb-per-1000', 'lb-per-1000', 'wanted rate, lb per 1,000 ft²'),
    blank('least-lb-per-1000', 'lb-per-1000', 'least rate that passes', { onlyFound: true }),
    blank('most-lb-per-1000', 'lb-per-1000', 'most that passes', { onlyFound: true }),
  ],
  rules: () => [
    { left: 'course-for-1000-ft', factor: 1000, above: [], below: ['swath-ft'], source: SOURCES.slides },
    { left: 'area-ft2', factor: 1, above: ['course-ft', 'swath-ft'], below: [], source: SOURCES.arithmetic },
    { left: 'lb-per-1000', factor: 1000, above: ['used-lb'], below: ['area-ft2'], source: SOURCES.umass },
    PRODUCT_PER_ACRE,
    { left: 'lb-per-1000-per-pass', factor: 1, above: ['lb-per-1000'], below: ['passes'], source: SOURCES.umass },
  ],
  before: (entries) => {
    const weighed = weighedBack(entries);
    const pans = swathFromPans(entries);
    if (!weighed.ok) return weighed;
    if (!pans.ok) return pans;
    return ok({
      values: { ...weighed.value.values, ...pans.value.values },
      lines: [...weighed.value.lines, ...pans.value.lines, ...runsDiffer(entries)],
      used: [...weighed.value.used, ...pans.value.used],
      sources: [...weighed.value.sources, ...pans.value.sources],
    });
  },
  after: againstWanted,
};

function weighedBack({ values }: Entries): Result<Finding> {
  const before = values['before-lb'];
  const after = values['after-lb'];
  if (before === undefined && after === undefined) return ok(NO_FINDING);
  if (before === undefined || after === undefined) return needs('before-lb', 'after-lb');
  if (values['used-lb'] !== undefined) {
    return err('request-invalid', 'used-lb', 'Both weights and the pounds used are given.', 'Give one or the other.');
  }
  const used = before - after;
  const lines = [`used-lb = before-lb - after-lb = ${shown(before)} - ${shown(after)} = ${shown(used)} lb`];
  return ok({ values: { 'used-lb': used }, lines, used: ['before-lb', 'after-lb'], sources: [SOURCES.umass] });
}

function needs(one: string, other: string): Err {
  return err('request-invalid', one, `${one} and ${other} go together, and one of them is missing.`, 'Give both.');
}

function swathFromPans({ lists, values }: Entries): Result<Finding> {
  const pans = lists.pans;
  const spacing = values['pan-spacing-ft'];
  if (pans === undefined && spacing === undefined) return ok(NO_FINDING);
  if (pans === undefined || spacing === undefined) return needs('pans', 'pan-spacing-ft');
  if (values['swath-ft'] !== undefined) {
    return err('request-invalid', 'swath-ft', 'Both the pans and the swath are given.', 'Give one or the other.');
  }
  const swath = effectiveSwathFt(pans, spacing);
  if (!swath.ok) return swath;
  const half = (pans[(pans.length - 1) / 2] ?? 0) / 2;
  const lines = [
    `swath-ft: between the points left and right that catch ${shown(half)}, half of the middle pan: ${shown(swath.value)} ft`,
  ];
  return ok({
    values: { 'swath-ft': swath.value },
    lines,
    used: ['pans', 'pan-spacing-ft'],
    sources: [SOURCES.landschoot],
  });
}

function runsDiffer({ lists }: Entries): readonly string[] {
  const runs = lists['used-lb'] ?? [];
  if (runs.length < 2) return [];
  const most = Math.max(...runs);
  const apart = (most - Math.min(...runs)) / most;
  const verdict = apart <= RUNS_AGREE ? 'within 10 %: they agree' : 'more than 10 %: repeat the runs';
  return [`the runs differ by ${percent(apart)}, ${verdict}`];
}

function againstWanted(values: Values): Result<Finding> {
  const wanted = values['want-lb-per-1000'];
  if (wanted === undefined) return ok(NO_FINDING);
  const { least, most } = acceptableRates(wanted);
  const found = values['lb-per-1000'];
  const range = `wanted ${shown(wanted)}: ${shown(least)} to ${shown(most)} lb/1000ft2 passes`;
  const verdict =
    found === undefined
      ? ''
      : `; ${shown(found)} is ${percent(Math.abs(found / wanted - 1))} ${found < wanted ? 'under' : 'over'}, ${found >= least && found <= most ? 'accepted' : 'adjust the setting'}`;
  return ok({
    values: { 'least-lb-per-1000': least, 'most-lb-per-1000': most },
    lines: [`${range}${verdict}`],
    used: ['want-lb-per-1000'],
    sources: [SOURCES.umass],
  });
}
