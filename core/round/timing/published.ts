import type { Timing } from '../../book/index.ts';

/** Members of a timing that are figures. */
type Figures<Kind extends Timing['kind']> = Omit<
  Extract<Timing, { readonly kind: Kind }>,
  'id' | 'name' | 'source' | 'kind' | 'station' | 'smoothDays' | 'gapDays'
>;
type Partly<Kind extends Timing['kind']> = { readonly kind: Kind } & {
  readonly [Member in keyof Figures<Kind>]?: Figures<Kind>[Member];
};

/**
 * Figures that somebody has published for when a treatment is of use. Sources disagree on base, depth and threshold, so none of them is
 * ever taken by itself: a user picks one, sees where it comes from, fills in what it leaves open, and may change everything.
 */
export type PublishedTiming = {
  readonly id: string;
  readonly title: string;
  /** What was published, and by whom. */
  readonly source: string;
  /** Only what the source says; the rest has to be entered. */
  readonly figures: Partly<'calendar'> | Partly<'soil-temperature'> | Partly<'degree-days'>;
};

const FRANK = 'K. Frank, Timing crabgrass preemergence applications in spring, Michigan State University, 2020-2024';
const PURDUE = 'Purdue, When Will Crabgrass Germinate?, 2012';
const KENT_2009 = 'Kent County Extension, 2009, quoting Fidanza, Dernoeden, Zhang 1996';
const VIRGINIA = 'Virginia Tech text via Kent County Extension, 2008';

/** All that are known here, each with where it was published. Temperatures in degrees Fahrenheit, depths in inches. */
export const PUBLISHED_TIMINGS: readonly PublishedTiming[] = [
  {
    id: 'michigan-degree-days',
    title: 'Crabgrass pre-emergent, degree days base 32 °F (Michigan State)',
    source: `${FRANK}: applications between 250 and 500 degree days, base 32 F, from 15 February`,
    figures: { kind: 'degree-days', baseF: 32, from: '02-15', opensAt: 250, closesAt: 500 },
  },
  {
    id: 'michigan-soil',
    title: 'Crabgrass pre-emergent, before soil is at 50 °F at 0 to 2 in (Michigan State)',
    source: `${FRANK}: apply before soil at 0 to 2 in is consistently 50 to 55 F`,
    figures: { kind: 'soil-temperature', course: 'rising', depthIn: 2, closesAtF: 50 },
  },
  {
    id: 'purdue-degree-days',
    title: 'Crabgrass germination, degree days base 50 °F (Purdue)',
    source: `${PURDUE}: germination at about 200 degree days, base 50 F, air; first day of the count not read`,
    figures: { kind: 'degree-days', baseF: 50, closesAt: 200 },
  },
  {
    id: 'purdue-soil',
    title: 'Crabgrass germination, soil at 57 °F at 1 in (Purdue)',
    source: `${PURDUE}: first germination at a mean daily soil temperature of 57 to 64 F at 1 in, bulk at 73 F`,
    figures: { kind: 'soil-temperature', course: 'rising', depthIn: 1, meanOfDays: 1, closesAtF: 57 },
  },
  {
    id: 'study-soil',
    title: 'Crabgrass germination, soil at 60 °F at 1 in (study of 1996)',
    source: `${KENT_2009}: first germination at a mean of 60 to 64 F, main flush at 73 to 75 F, at 1 in`,
    figures: { kind: 'soil-temperature', course: 'rising', depthIn: 1, meanOfDays: 1, closesAtF: 60 },
  },
  {
    id: 'study-nights',
    title: 'Rule of thumb, soil above 50 °F for three nights in a row',
    source: `${KENT_2009}: rule of thumb, 3 consecutive nights with soil above 50 F; depth not read`,
    figures: { kind: 'soil-temperature', course: 'rising', forDays: 3, closesAtF: 50 },
  },
  {
    id: 'north-carolina-soil',
    title: 'Crabgrass germination, soil at 55 °F at 4 in (NC State)',
    source: 'NC State post 116, n.d.: germination at a 24-hour mean of 55 F at 4 in',
    figures: { kind: 'soil-temperature', course: 'rising', depthIn: 4, meanOfDays: 1, closesAtF: 55 },
  },
  {
    id: 'georgia-soil',
    title: 'Crabgrass germination, soil at 53 °F at 4 in (Georgia)',
    source: 'UGA Newton County, 2024: germination at 53 to 58 F at 4 in',
    figures: { kind: 'soil-temperature', course: 'rising', depthIn: 4, closesAtF: 53 },
  },
  {
    id: 'virginia-soil',
    title: 'Rule of thumb, soil at 55 °F at 4 in for four days (Virginia Tech)',
    source: `${VIRGINIA}: rule of thumb, 4 to 5 days at 55 to 58 F at 4 in`,
    figures: { kind: 'soil-temperature', course: 'rising', depthIn: 4, forDays: 4, closesAtF: 55 },
  },
  {
    id: 'virginia-degree-days',
    title: 'Crabgrass emergence, degree days base 50 °F (Virginia Tech)',
    source: `${VIRGINIA}: emergence at 70 to 140 degree days, base 50 F; first day of the count not read`,
    figures: { kind: 'degree-days', baseF: 50, closesAt: 70 },
  },
  {
    id: 'kansas-calendar',
    title: 'Crabgrass pre-emergent, 15 April (Kansas)',
    source: 'S. Eckert (K-State), 2020: 15 April in Kansas',
    figures: { kind: 'calendar', closes: '04-15' },
  },
  {
    id: 'mid-atlantic-calendar',
    title: 'Crabgrass germination from 8 April (mid-Atlantic)',
    source: 'P. Dernoeden, 2020: germination in the mid-Atlantic on 15 April, 7 days earlier or later',
    figures: { kind: 'calendar', closes: '04-08' },
  },
  {
    id: 'seeding-soil',
    title: 'Fall seeding, until soil falls below 56 °F',
    source: 'Common practice, no source: seeding ends when soil falls below 56 F; depth not known',
    figures: { kind: 'soil-temperature', course: 'falling', closesAtF: 56 },
  },
];
