export { degreeDays } from './degree-days.ts';
export { type LawnWindow, lastInTime, lawnWindows } from './lawn-windows.ts';
export {
  type LawnDay,
  type LawnTiming,
  type LawnVerdict,
  lawnsBySite,
  MISSED,
  offsetOf,
  type SiteGroup,
} from './lawns.ts';
export { type DayRange, type MergedYear, mergeTemperatures, missingDays, rangesOf } from './merge.ts';
export { type NormalCurve, normalCurve } from './normal.ts';
export { PUBLISHED_TIMINGS, type PublishedTiming } from './published.ts';
export { seasonStart } from './season.ts';
export { dailySeries } from './series.ts';
export { stationNames } from './station.ts';
export type * from './types.ts';
export { type TimingSeason, timingSeason } from './window.ts';
export { siteOffsetWords, siteWords, timingWords } from './words.ts';
