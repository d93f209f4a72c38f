import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatClock, formatDuration, parseClock, parseDuration } from '../../../core/units/index.ts';

const HOUR = 3600;

describe('spans of time', () => {
  test.each([
    ['7 h 30', 7.5 * HOUR],
    ['7h30', 7.5 * HOUR],
    ['7h30m', 7.5 * HOUR],
    ['7 hours 30 minutes', 7.5 * HOUR],
    ['7:30', 7.5 * HOUR],
    ['0:05:20', 320],
    ['1.5 h', 1.5 * HOUR],
    ['1 1/2 h', 1.5 * HOUR],
    ['45', 45 * 60],
    ['45 min', 45 * 60],
    ['90 s', 90],
    ['4 min 30', 270],
  ])('%s', (text, seconds) => {
    expect(parseDuration(text)).toEqual({ ok: true, value: seconds });
  });

  test.each(['', 'h', '7:60', '7:5', '30 min 1 h', '1,5 h'])('"%s" is unreadable', (text) => {
    expect(parseDuration(text)).toMatchObject({ error: { code: 'quantity-unreadable' } });
  });

  test.each(['-5 min', '101 h', '-1:30'])('"%s" is refused', (text) => {
    expect(parseDuration(text).ok).toBe(false);
  });
});

describe('times of the day', () => {
  test.each([
    ['7:22', 7 * HOUR + 22 * 60],
    ['07:22', 7 * HOUR + 22 * 60],
    ['7', 7 * HOUR],
    ['7 am', 7 * HOUR],
    ['1:30 pm', 13.5 * HOUR],
    ['1:30 P.M.', 13.5 * HOUR],
    ['1:30pm', 13.5 * HOUR],
    ['13:30', 13.5 * HOUR],
    ['0730', 7.5 * HOUR],
    ['12 am', 0],
    ['12:30 am', HOUR / 2],
    ['12 pm', 12 * HOUR],
    ['noon', 12 * HOUR],
    ['24:00', 24 * HOUR],
    ['7:05:30', 7 * HOUR + 330],
  ])('%s', (text, seconds) => {
    expect(parseClock(text)).toEqual({ ok: true, value: seconds });
  });

  test.each(['', '7.30', '7:60', 'dawn', '-7', '1,30'])('"%s" is unreadable', (text) => {
    expect(parseClock(text)).toMatchObject({ error: { code: 'quantity-unreadable' } });
  });

  test.each(['25:00', '24:01', '13 pm', '0 am'])('"%s" is out of range', (text) => {
    expect(parseClock(text)).toMatchObject({ error: { code: 'quantity-out-of-range' } });
  });
});

describe('formatting of time', () => {
  test('clock', () => {
    expect(formatClock(7 * HOUR + 22 * 60)).toBe('7:22 am');
    expect(formatClock(7 * HOUR + 22 * 60, '24-hour')).toBe('7:22');
    expect(formatClock(13 * HOUR + 5 * 60, '24-hour')).toBe('13:05');
    expect(formatClock(13 * HOUR + 5 * 60, '12-hour')).toBe('1:05 pm');
    expect(formatClock(0, '12-hour')).toBe('12:00 am');
    expect(formatClock(12 * HOUR, '12-hour')).toBe('12:00 pm');
    expect(formatClock(7 * HOUR + 59 * 60 + 31, '24-hour')).toBe('8:00');
    expect(formatClock(24 * HOUR + 40 * 60)).toBe('12:40 am +1 d');
    expect(formatClock(24 * HOUR + 40 * 60, '24-hour')).toBe('0:40 +1 d');
    expect(formatClock(Number.NaN)).toBe('–');
  });

  test('duration', () => {
    expect(formatDuration(7 * HOUR + 24 * 60)).toBe('7 h 24 min');
    expect(formatDuration(2 * HOUR)).toBe('2 h');
    expect(formatDuration(45 * 60)).toBe('45 min');
    expect(formatDuration(30)).toBe('30 s');
    expect(formatDuration(59.6)).toBe('1 min');
    expect(formatDuration(0)).toBe('0 min');
    expect(formatDuration(0.2)).toBe('0 min');
    expect(formatDuration(3599.9)).toBe('1 h');
    expect(formatDuration(-90 * 60)).toBe('-1 h 30 min');
  });

  test('what is shown can be typed again', () => {
    fc.assert(
      fc.property(fc.nat(24 * 60 - 1), fc.constantFrom('12-hour' as const, '24-hour' as const), (minutes, clock) => {
        expect(parseClock(formatClock(minutes * 60, clock))).toEqual({ ok: true, value: minutes * 60 });
      }),
    );
    fc.assert(
      fc.property(fc.double({ min: 0, max: 90 * HOUR, noNaN: true }), (seconds) => {
        const read = parseDuration(formatDuration(seconds));
        expect(read.ok && Math.abs(read.value - seconds) <= 30.0001).toBe(true);
      }),
    );
  });
});
