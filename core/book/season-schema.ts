import * as v from 'valibot';
import {
  dateSchema,
  finite,
  idSchema,
  monthDaySchema,
  nameSchema,
  notNegative,
  positive,
  share,
  textSchema,
  WEEKDAYS,
  wholeNumber,
} from './schema-parts.ts';

/** What makes the soil of a lawn warmer or cooler than that of the station. */
export const SITES = ['paved-edge', 'south-slope', 'shade'] as const;

/** Which lawns, or which zones of them. Members that are given have to hold together; without any, everything is chosen. */
export const choiceSchema = v.object({
  /** At least one of these tags. */
  tags: v.optional(v.array(nameSchema)),
  /** None of these tags. */
  withoutTags: v.optional(v.array(nameSchema)),
  /** Part of the address, capitals or not. */
  address: v.optional(nameSchema),
  /** Treatable ground of the whole property, ft2. */
  leastSqFt: v.optional(notNegative),
  mostSqFt: v.optional(positive),
});

/** One round of a programme, in every year that it is used. */
export const programmeStepSchema = v.object({
  id: idSchema,
  name: nameSchema,
  treatmentIds: v.pipe(v.array(idSchema), v.minLength(1)),
  /** First and last day of the year on which it may be done. The last one may lie in the next year. */
  from: monthDaySchema,
  to: monthDaySchema,
  timingId: v.optional(idSchema),
  /** The step before it in a split application, and how many days have to lie between the two on one lawn. */
  after: v.optional(
    v.object({
      stepId: idSchema,
      leastDays: wholeNumber,
      mostDays: v.optional(wholeNumber),
    }),
  ),
  choice: v.optional(choiceSchema),
});

/** Several rounds a season, to be used again. */
export const programmeSchema = v.object({
  id: idSchema,
  name: nameSchema,
  steps: v.pipe(v.array(programmeStepSchema), v.minLength(1)),
  note: v.optional(textSchema, ''),
});

const timingBase = {
  id: idSchema,
  name: nameSchema,
  /** Where the figures come from; sources disagree, so they are the user's choice. */
  source: v.optional(textSchema, ''),
};

/** How daily temperatures are used. */
const temperatureBase = {
  /** Whose temperatures; absent: those of the only station, or of the first one. */
  station: v.optional(nameSchema),
  /** Looked for, or counted, from this day of the year. */
  from: monthDaySchema,
  /** The normal curve of earlier years is smoothed over so many days on each side of a day. */
  smoothDays: v.optional(v.pipe(wholeNumber, v.maxValue(30)), 7),
  /** Gaps of at most so many days between two measured ones are bridged by a straight line; longer ones by the normal curve. */
  gapDays: v.optional(v.pipe(wholeNumber, v.maxValue(14)), 3),
};

/** When a treatment is of use. */
export const timingSchema = v.variant('kind', [
  v.object({
    ...timingBase,
    kind: v.literal('calendar'),
    opens: monthDaySchema,
    best: v.optional(monthDaySchema),
    /** The last useful day. */
    closes: monthDaySchema,
  }),
  v.object({
    ...timingBase,
    ...temperatureBase,
    kind: v.literal('soil-temperature'),
    /** Depth of the thermometer, inches. */
    depthIn: positive,
    /** Whether the window opens on the way up or on the way down. */
    course: v.picklist(['rising', 'falling']),
    /** Days that are averaged, the day itself being the last of them. */
    meanOfDays: v.optional(v.pipe(wholeNumber, v.minValue(1), v.maxValue(30)), 1),
    /** Days in a row for which a threshold has to hold before it counts. */
    forDays: v.optional(v.pipe(wholeNumber, v.minValue(1), v.maxValue(30)), 1),
    /** Absent: open from the first day on. */
    opensAtF: v.optional(finite),
    bestAtF: v.optional(finite),
    closesAtF: finite,
  }),
  v.object({
    ...timingBase,
    ...temperatureBase,
    kind: v.literal('degree-days'),
    /** Of the air, from the highest and lowest temperature of each day. */
    baseF: finite,
    opensAt: notNegative,
    bestAt: v.optional(notNegative),
    closesAt: positive,
  }),
]);

const temperature = v.nullable(v.pipe(finite, v.minValue(-100), v.maxValue(160)));

/** Daily temperatures of one station in one year, F. */
export const temperatureYearSchema = v.object({
  id: idSchema,
  station: nameSchema,
  source: v.optional(textSchema, ''),
  /** Depth of the soil thermometer, inches. */
  soilDepthIn: v.optional(positive),
  /** Date, highest and lowest of the air, mean of the soil; null where it was not read. */
  days: v.array(v.tuple([dateSchema, temperature, temperature, temperature])),
});

/** Weather of one day by the hour, measured or forecast. */
export const weatherDaySchema = v.object({
  id: idSchema,
  on: dateSchema,
  source: v.optional(textSchema, ''),
  hours: v.array(
    v.object({
      /** Hours after midnight by the clock on the wall. */
      hour: v.pipe(wholeNumber, v.maxValue(23)),
      windMph: v.optional(notNegative),
      airF: v.optional(finite),
      rainIn: v.optional(notNegative),
    }),
  ),
});

/** Somebody who may apply. */
export const applicatorSchema = v.object({
  id: idSchema,
  name: nameSchema,
  licence: v.optional(textSchema, ''),
  /** Whether this person is certified, or applies under the supervision of somebody who is; absent: not entered. */
  certified: v.optional(v.boolean()),
  /** Last day on which the licence holds; absent: not known. */
  expires: v.optional(dateSchema),
  /** Rigs that are this person's. */
  rigIds: v.optional(v.array(idSchema)),
  note: v.optional(textSchema, ''),
});

/** Rigs that are compared with others on the same round. */
export const fleetSchema = v.object({
  id: idSchema,
  name: nameSchema,
  rigIds: v.pipe(v.array(idSchema), v.minLength(1)),
  /** What it costs a season besides wages, miles and product: payments, insurance; dollars. */
  fixedPerSeason: v.optional(notNegative, 0),
  note: v.optional(textSchema, ''),
});

const CAPPED = ['nitrogen', 'phosphate', 'potash', 'active'] as const;

/** The most of a nutrient or an active ingredient on one lawn in a calendar year, whatever product it comes from. Entered by the user. */
export const capSchema = v.object({
  id: idSchema,
  what: v.picklist(CAPPED),
  /** Name of the active ingredient, as the products have it. */
  active: v.optional(nameSchema),
  mostLbPer1000SqFt: positive,
  /** Rule or label that sets it. */
  source: v.optional(textSchema, ''),
});

const CLOCK_CHANGES = ['united-states', 'none'] as const;

/** Days and hours that are worked, and what is kept free. */
export const calendarSchema = v.object({
  workdays: v.optional(v.array(v.picklist(WEEKDAYS)), ['monday', 'tuesday', 'wednesday', 'thursday', 'friday']),
  holidays: v.optional(v.array(v.object({ on: dateSchema, name: v.optional(nameSchema, '') })), []),
  /** Share of the working days that is expected to be lost to weather; so many days are held back at the end. */
  rainShare: v.optional(v.pipe(share, v.maxValue(0.9)), 0),
  /** Minutes of every rig's day that are kept for service calls. */
  serviceMin: v.optional(notNegative, 0),
  /** Days before the work on which customers and neighbours are told, where nothing else is said of a lawn. */
  noticeDays: v.optional(wholeNumber, 0),
  /** A day whose weather leaves no stretch of the shift open as long as this is on hold, minutes. */
  leastOpenMin: v.optional(v.pipe(finite, v.minValue(0), v.maxValue(1440)), 240),
  /** Whose rule changes the clock in spring and autumn; shifts that run through such a night count real minutes. */
  clockChange: v.optional(v.picklist(CLOCK_CHANGES), 'united-states'),
});

/** What is added to a station's temperature at a kind of site, F. */
export const siteOffsetsSchema = v.object({
  'paved-edge': v.optional(finite),
  'south-slope': v.optional(finite),
  shade: v.optional(finite),
});

/** Planned figures come out so much longer or larger on average: 1 where they are right. */
const meanFactor = v.optional(v.pipe(positive, v.maxValue(5)), 1);

/**
 * How far times and amounts of one day go from what was planned. `drive`, `setUp`, `treat` and `used`: standard deviation as a share
 * of the planned figure.
 */
export const spreadSchema = v.object({
  drive: v.optional(share, 0.2),
  setUp: v.optional(share, 0.25),
  treat: v.optional(share, 0.1),
  used: v.optional(share, 0.05),
  driveMean: meanFactor,
  setUpMean: meanFactor,
  treatMean: meanFactor,
  usedMean: meanFactor,
  /** Part of each variance that all of a day has in common: traffic, pace, a pump that delivers more than it should. */
  inCommon: v.optional(share, 0.5),
});
