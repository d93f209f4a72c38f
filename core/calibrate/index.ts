export { type EntryChoices, readEntries, typedBlanks } from './bench/entries.ts';
export { unitOf } from './bench/ranges.ts';
export type { Blank, Entries, Sheet } from './bench/sheet.ts';
export { SHEETS } from './bench/sheets.ts';
export { SOURCES } from './bench/sources.ts';
export { isTipWish, tipWish } from './bench/tip-wish.ts';
export { type BenchAnswer, type BenchResult, workSheet } from './bench/work.ts';
export {
  flowAtPressure,
  gallonsOnArea,
  gallonsPerAcre,
  gallonsPerAcreFromOunces,
  gallonsPerAcreFromSwath,
  gallonsPerMinute,
  litresPerHectare,
  ouncesPerMinute,
  per1000SqFt,
  perAcre,
  pressureForFlow,
  rateAtSpeed,
} from './boom.ts';
export {
  type CatchPlotResult,
  type CatchPlotTest,
  catchPlot,
  catchPlotCourseFt,
  rateFromRun,
  type TipReading,
} from './catch-plot.ts';
export {
  acresPerHour,
  efficiencyFromJob,
  hectaresPerHour,
  minutesForArea,
  speedForCapacity,
} from './field-capacity.ts';
export { courseFor1000SqFt, type HandGunResult, type HandGunTest, handGunCatch } from './hand-gun.ts';
export { type Calibrated, keepCalibration, overdueUses, type Trace, tracesOf } from './keep.ts';
export {
  type Applicator,
  type ProductShift,
  type RateCheck,
  rateCheck,
  rateIssue,
} from './rate-check.ts';
export { secondsForCourse, speedForRate, speedFromCourse } from './speed.ts';
export { acceptableRates, effectiveSwathFt, ratePerPass, type WeighBackTest, weighBack } from './spreader.ts';
export { type TipCombination, type TipWish, tipCombinations } from './tip-choice.ts';
export { TIP_SIZES, type TipSize, tipFlow } from './tips.ts';
