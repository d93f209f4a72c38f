import * as v from 'valibot';
import { estimateSchema } from './estimate-schema.ts';
import { propertySchema } from './ground-schema.ts';
import { overlaySchema } from './overlay-schema.ts';
import { applicationRecordSchema, firmSchema, templateSchema } from './paper-schema.ts';
import { gaugeSchema, visitSchema } from './record-schema.ts';
import { roadSettingsSchema } from './roads-schema.ts';
import { idSchema, nameSchema, textSchema } from './schema-parts.ts';
import {
  applicatorSchema,
  calendarSchema,
  capSchema,
  fleetSchema,
  programmeSchema,
  siteOffsetsSchema,
  spreadSchema,
  temperatureYearSchema,
  timingSchema,
  weatherDaySchema,
} from './season-schema.ts';
import {
  fillPointSchema,
  handMethodSchema,
  machineSchema,
  matrixSchema,
  pricesSchema,
  rigSchema,
  travelSettingsSchema,
} from './shed-schema.ts';
import { mixSchema, productSchema, roundSchema, treatmentSchema } from './work-schema.ts';

/** Marks a JSON file as a book. */
export const BOOK_FORMAT = 'swardway-book';
/** The newest version of the JSON form that this program writes and reads. */
export const BOOK_VERSION = 1;

/** The JSON form of a book. Every quantity carries its unit in its name. Unknown members are kept. */
export const bookSchema = v.looseObject({
  format: v.literal(BOOK_FORMAT),
  version: v.literal(BOOK_VERSION),
  id: idSchema,
  name: nameSchema,
  note: v.optional(textSchema, ''),
  /** True for made-up data; every sheet then says so. */
  invented: v.optional(v.boolean(), false),
  units: v.optional(v.picklist(['us', 'metric']), 'us'),
  /** By which clock sheets tell times; absent: 12 hours beside US units, 24 beside metric ones. */
  clock: v.optional(v.picklist(['12-hour', '24-hour'])),
  /** Whether sheets write "March 16" or "16 March"; absent: the month comes first. */
  dates: v.optional(v.picklist(['month-first', 'day-first'])),
  prices: v.optional(pricesSchema, {}),
  travel: v.optional(travelSettingsSchema, {}),
  matrix: v.optional(matrixSchema),
  roads: v.optional(roadSettingsSchema),
  estimate: v.optional(estimateSchema),
  overlays: v.optional(v.array(overlaySchema)),
  properties: v.optional(v.array(propertySchema), []),
  machines: v.optional(v.array(machineSchema), []),
  handMethods: v.optional(v.array(handMethodSchema), []),
  rigs: v.optional(v.array(rigSchema), []),
  fillPoints: v.optional(v.array(fillPointSchema), []),
  products: v.optional(v.array(productSchema), []),
  mixes: v.optional(v.array(mixSchema), []),
  treatments: v.optional(v.array(treatmentSchema), []),
  rounds: v.optional(v.array(roundSchema), []),
  calendar: v.optional(calendarSchema),
  siteOffsets: v.optional(siteOffsetsSchema),
  spread: v.optional(spreadSchema),
  programmes: v.optional(v.array(programmeSchema), []),
  timings: v.optional(v.array(timingSchema), []),
  temperatures: v.optional(v.array(temperatureYearSchema), []),
  weather: v.optional(v.array(weatherDaySchema), []),
  caps: v.optional(v.array(capSchema), []),
  applicators: v.optional(v.array(applicatorSchema), []),
  fleets: v.optional(v.array(fleetSchema), []),
  visits: v.optional(v.array(visitSchema), []),
  gauges: v.optional(v.array(gaugeSchema), []),
  firm: v.optional(firmSchema),
  templates: v.optional(v.array(templateSchema), []),
  applicationRecords: v.optional(v.array(applicationRecordSchema), []),
});
