export { type ClockChange, type ClockSpan, clockChangeOn, clockShift, shiftOnClock } from './clock.ts';
export { fallsOn, type Weekday, weekdayName, weekdayOf } from './days.ts';
export { earliestWorkDay, holdWords, lawnClosedWhy, noticeDate, noticeDaysOf } from './notice.ts';
export type { OpenStretch } from './open-stretch.ts';
export { keptIn, type ProductWeather, roundWeather, weatherAsked } from './round-weather.ts';
export {
  holdReason,
  type ShiftHour,
  type ShiftWeather,
  shiftWeather,
  type WeatherLimit,
  type WeatherTable,
  weatherLimits,
  weatherTable,
} from './weather.ts';
export {
  calendarOf,
  heldBackCount,
  holidayWhy,
  isWorkday,
  nextWorkday,
  type RoundDay,
  type RoundDays,
  roundDays,
  workdaysBetween,
} from './working-days.ts';
