import { SECONDS_PER_DAY } from './constants.ts';
import type { UnitSystem } from './format.ts';

/** Whether "1:05 pm" or "13:05" is written. */
export type Clock = '12-hour' | '24-hour';

/** The clock of those who have chosen none: twelve hours beside US units, 24 beside metric ones. */
export function clockBeside(units: UnitSystem): Clock {
  return units === 'us' ? '12-hour' : '24-hour';
}

/**
 * A time of day from seconds after midnight, to the nearest minute: "7:22 am", "1:05 pm", or "7:22", "13:05" by a clock of 24 hours. A
 * time after the next midnight carries the day: "12:40 am +1 d", "0:40 +1 d".
 */
export function formatClock(secondsAfterMidnight: number, clock: Clock = '12-hour'): string {
  if (!Number.isFinite(secondsAfterMidnight)) return '–';
  const minutes = Math.round(secondsAfterMidnight / 60);
  const perDay = SECONDS_PER_DAY / 60;
  const day = Math.floor(minutes / perDay);
  const ofDay = minutes - day * perDay;
  const hour = Math.floor(ofDay / 60);
  const rest = String(ofDay % 60).padStart(2, '0');
  const time =
    clock === '12-hour' ? `${hour % 12 === 0 ? 12 : hour % 12}:${rest} ${hour < 12 ? 'am' : 'pm'}` : `${hour}:${rest}`;
  return day === 0 ? time : `${time} ${day > 0 ? '+' : '-'}${Math.abs(day)} d`;
}

/** A span of time from seconds: "7 h 24 min", "45 min", "30 s" under a minute, "0 min" for none. */
export function formatDuration(seconds: number): string {
  if (!Number.isFinite(seconds)) return '–';
  const sign = seconds < 0 ? '-' : '';
  const size = Math.abs(seconds);
  if (size > 0 && Math.round(size) < 60) return Math.round(size) === 0 ? '0 min' : `${sign}${Math.round(size)} s`;
  const minutes = Math.round(size / 60);
  if (minutes === 0) return '0 min';
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `${sign}${rest} min`;
  return rest === 0 ? `${sign}${hours} h` : `${sign}${hours} h ${rest} min`;
}
