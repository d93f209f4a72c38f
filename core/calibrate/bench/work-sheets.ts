import { BLANKS, blank } from './blanks.ts';
import type { Sheet } from './sheet.ts';
import { SOURCES } from './sources.ts';

/** Ground in an hour from speed, swath and the share of time that is really worked. */
export const capacitySheet: Sheet = {
  kind: 'capacity',
  words: 'acres in an hour from speed, swath and efficiency; minutes for an area',
  blanks: [
    ...[BLANKS.mph, BLANKS.swathFt],
    blank('efficiency', 'share', 'share left after turning, overlap and minor stops: 65 % or 0.65'),
    blank('acres-per-hour', 'number', 'field capacity, acres per hour', { unit: 'acre/h', most: 1000 }),
    ...[BLANKS.areaSqFt, BLANKS.minutes],
  ],
  rules: () => [
    {
      left: 'acres-per-hour',
      factor: 1,
      over: 8.25,
      above: ['mph', 'swath-ft', 'efficiency'],
      below: [],
      source: SOURCES.iowa,
    },
    {
      left: 'minutes',
      factor: 60,
      over: 43_560,
      above: ['area-ft2'],
      below: ['acres-per-hour'],
      source: SOURCES.arithmetic,
    },
  ],
};

/** Holes on a square foot from the spacing of the tines across and along the way. */
export const aeratorSheet: Sheet = {
  kind: 'aerator',
  words:
    'holes on a square foot from the spacing across and along, or from width, tines, speed and strokes of the machine',
  blanks: [
    blank('across-in', 'width', 'distance between holes across the way, in', { most: 48 }),
    blank('along-in', 'width', 'distance between holes along the way, in', { most: 240 }),
    blank('width-in', 'width', 'working width, in'),
    blank('tines', 'number', 'tines side by side', { unit: 'tines', most: 500 }),
    BLANKS.mph,
    blank('strokes-per-min', 'number', 'times that each tine goes down in a minute', { unit: '1/min', most: 5000 }),
    BLANKS.passes,
    blank('holes-per-ft2', 'number', 'holes on a square foot after all passes', { unit: 'holes/ft2', most: 1000 }),
  ],
  rules: ({ values }) => [
    { left: 'across-in', factor: 1, above: ['width-in'], below: ['tines'], source: SOURCES.arithmetic },
    { left: 'along-in', factor: 88 * 12, above: ['mph'], below: ['strokes-per-min'], source: SOURCES.arithmetic },
    {
      left: 'holes-per-ft2',
      factor: 144,
      above: values.passes === undefined ? [] : ['passes'],
      below: ['across-in', 'along-in'],
      source: SOURCES.arithmetic,
    },
  ],
};
