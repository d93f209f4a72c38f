import { ok, type Result } from '../../base/index.ts';
import { catchPlot } from '../catch-plot.ts';
import { CATCH_PLOT_SQFT } from '../constants.ts';
import { BLANKS, blank } from './blanks.ts';
import { COURSE_SPEED, PER_ACRE, RUN_RATE } from './boom-rules.ts';
import { CARRIER_CHECK_BLANKS, carrierCheck } from './carrier-check.ts';
import { type Entries, type Finding, NO_FINDING, type Sheet, type Values } from './sheet.ts';
import { percent, shown } from './shown.ts';
import { SOURCES } from './sources.ts';

/** The 1/128-acre catch with every tip against the mean, and the run of known length. */
export const catchSheet: Sheet = {
  kind: 'catch',
  words:
    '1/128-acre method: fluid ounces of each tip in the time of the course; or gallons used over a run of known length',
  blanks: [
    blank('oz', 'fluid', 'fluid ounces caught; one figure for each tip with commas between', {
      many: true,
      most: 12_800,
    }),
    ...[BLANKS.spacingIn, BLANKS.courseFt, BLANKS.areaSqFt, BLANKS.seconds, BLANKS.mph, BLANKS.gpm],
    ...[BLANKS.usedGal, BLANKS.swathFt, BLANKS.gpa, BLANKS.galPer1000],
    blank('product-per-acre', 'product', 'product wanted on an acre, in its unit', { unit: 'product/acre' }),
    blank('product-per-gal', 'product', 'product in a gallon of mix', { unit: 'product/gal' }),
    blank('ft2-per-gal', 'area', 'ground that a gallon covers, ft²'),
    ...CARRIER_CHECK_BLANKS,
  ],
  rules: () => [
    { left: 'area-ft2', factor: 1, over: 12, above: ['course-ft', 'spacing-in'], below: [], source: SOURCES.ohio },
    COURSE_SPEED,
    RUN_RATE,
    { left: 'gpa', factor: CATCH_PLOT_SQFT, above: ['oz'], below: ['area-ft2'], source: SOURCES.ohio },
    PER_ACRE,
    { left: 'oz', factor: 128, over: 60, above: ['gpm', 'seconds'], below: [], source: SOURCES.arithmetic },
    { left: 'product-per-gal', factor: 1, above: ['product-per-acre'], below: ['gpa'], source: SOURCES.turfTrade },
    { left: 'ft2-per-gal', factor: 43_560, above: [], below: ['gpa'], source: SOURCES.arithmetic },
  ],
  before: (entries) => ok(withPlot(entries)),
  after: checked,
};

/** Without a course or an area the course is the exact one: it covers 1/128 acre for each tip. */
function withPlot({ values }: Entries): Finding {
  const isRun = values['used-gal'] !== undefined || values['swath-ft'] !== undefined;
  const hasGround = values['course-ft'] !== undefined || values['area-ft2'] !== undefined || isRun;
  // Ounces and a rate tell the ground by themselves.
  const isAsked = values.oz !== undefined && (values.gpa ?? values['gal-per-1000']) !== undefined;
  const isCatch = values.oz !== undefined || values['spacing-in'] !== undefined;
  if (hasGround || isAsked || !isCatch) return NO_FINDING;
  return {
    values: { 'area-ft2': CATCH_PLOT_SQFT },
    lines: [`area-ft2: no course is given, so it is 1/128 acre = ${shown(CATCH_PLOT_SQFT)} ft²`],
    used: [],
    sources: [SOURCES.ohio],
  };
}

function checked(values: Values, entries: Entries): Result<Finding> {
  const tips = tipsAgainstMean(entries);
  const carrier = carrierCheck(values);
  if (!tips.ok || !carrier.ok) return tips.ok ? carrier : tips;
  return ok({
    values: carrier.value.values,
    lines: [...tips.value.lines, ...carrier.value.lines],
    used: carrier.value.used,
    sources: [...tips.value.sources, ...carrier.value.sources],
  });
}

function tipsAgainstMean({ lists }: Entries): Result<Finding> {
  const caughtOunces = lists.oz ?? [];
  if (caughtOunces.length < 2) return ok(NO_FINDING);
  const caught = catchPlot({ widthIn: 12, courseFt: CATCH_PLOT_SQFT, caughtOunces });
  if (!caught.ok) return caught;
  const lines = caught.value.tips.map(({ ounces, offMean, verdict }, index) => {
    const off = `${percent(Math.abs(offMean))} ${offMean < 0 ? 'under' : 'over'} the mean`;
    return `tip ${index + 1}: ${shown(ounces)} fl oz, ${off}: ${verdict}`;
  });
  return ok({ ...NO_FINDING, lines, sources: [SOURCES.nedin] });
}
