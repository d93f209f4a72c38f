export {
  Chances,
  type ChanceWish,
  type DayChance,
  dayChance,
  type LoadChance,
  type Range,
  type StopChance,
} from './chance.ts';
export { type Learned, type LearnedSpread, learnSpread } from './learn.ts';
export type { OpenHours } from './play.ts';
