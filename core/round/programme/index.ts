export { type AreaOf, isEmptyChoice } from './choice.ts';
export { type CopiedRound, copiedToYear } from './last-season.ts';
export { type LawnsWish, type LeftOut, lawnsOf, ofAskedZones, type RoundLawns, zonesOf } from './lawns.ts';
export { type SeasonRounds, seasonRounds } from './season.ts';
export { type PlannedDays, type SplitSpan, splitSpans } from './split.ts';
