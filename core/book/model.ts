import type { InferOutput } from 'valibot';
import type { estimateSchema } from './estimate-schema.ts';
import type { areaWorkingSchema, plainShapeSchema, slopeWorkingSchema } from './field-work-schema.ts';
import type {
  exclusionSchema,
  gateSchema,
  pastMeasureSchema,
  propertySchema,
  zoneSchema,
  zoneShapeSchema,
} from './ground-schema.ts';
import type { overlaySchema } from './overlay-schema.ts';
import type { applicationRecordSchema, firmSchema, templateSchema } from './paper-schema.ts';
import type { gaugeSchema, visitSchema } from './record-schema.ts';
import type { roadExtractSchema, roadSettingsSchema } from './roads-schema.ts';
import type { bookSchema } from './schema.ts';
import type { areaGeometrySchema, hoursSchema } from './schema-parts.ts';
import type {
  applicatorSchema,
  calendarSchema,
  capSchema,
  choiceSchema,
  fleetSchema,
  programmeSchema,
  programmeStepSchema,
  spreadSchema,
  temperatureYearSchema,
  timingSchema,
  weatherDaySchema,
} from './season-schema.ts';
import type {
  calibrationSchema,
  carriedMachineSchema,
  compartmentSchema,
  fillPointSchema,
  handMethodSchema,
  headPassesSchema,
  headSchema,
  machineSchema,
  matrixSchema,
  pricesSchema,
  rigSchema,
  travelSettingsSchema,
} from './shed-schema.ts';
import type {
  coverageSchema,
  labelSchema,
  mixSchema,
  productSchema,
  roundSchema,
  spreadRateSchema,
  treatmentSchema,
} from './work-schema.ts';

/** Makes every member of a record, and of what it holds, readonly. */
export type Frozen<T> = T extends [number, number]
  ? readonly [number, number]
  : T extends [string, number | null, number | null, number | null]
    ? Readonly<T>
    : T extends (infer Item)[]
      ? readonly Frozen<Item>[]
      : T extends object
        ? { readonly [Key in keyof T]: Frozen<T[Key]> }
        : T;

/** Longitude, latitude in degrees (WGS84). */
export type Position = readonly [number, number];
export type AreaGeometry = Frozen<InferOutput<typeof areaGeometrySchema>>;
export type Hours = Frozen<InferOutput<typeof hoursSchema>>;
export type Gate = Frozen<InferOutput<typeof gateSchema>>;
export type ZoneShape = Frozen<InferOutput<typeof zoneShapeSchema>>;
export type PlainShape = Frozen<InferOutput<typeof plainShapeSchema>>;
/** What was measured on site behind a stated area. */
export type AreaWorking = Frozen<InferOutput<typeof areaWorkingSchema>>;
export type SlopeWorking = Frozen<InferOutput<typeof slopeWorkingSchema>>;
export type PastMeasure = Frozen<InferOutput<typeof pastMeasureSchema>>;
export type Estimate = Frozen<InferOutput<typeof estimateSchema>>;
export type Overlay = Frozen<InferOutput<typeof overlaySchema>>;
export type Zone = Frozen<InferOutput<typeof zoneSchema>>;
export type Exclusion = Frozen<InferOutput<typeof exclusionSchema>>;
export type Property = Frozen<InferOutput<typeof propertySchema>>;
export type Compartment = Frozen<InferOutput<typeof compartmentSchema>>;
export type Head = Frozen<InferOutput<typeof headSchema>>;
/** How a head is driven over a lawn. */
export type HeadPasses = Frozen<InferOutput<typeof headPassesSchema>>;
/** A calibration of a head or a hand method. */
export type Calibration = Frozen<InferOutput<typeof calibrationSchema>>;
export type HandMethod = Frozen<InferOutput<typeof handMethodSchema>>;
export type Machine = Frozen<InferOutput<typeof machineSchema>>;
export type CarriedMachine = Frozen<InferOutput<typeof carriedMachineSchema>>;
export type Rig = Frozen<InferOutput<typeof rigSchema>>;
export type FillPoint = Frozen<InferOutput<typeof fillPointSchema>>;
export type Prices = Frozen<InferOutput<typeof pricesSchema>>;
export type TravelSettings = Frozen<InferOutput<typeof travelSettingsSchema>>;
export type TravelMatrix = Frozen<InferOutput<typeof matrixSchema>>;
/** Driving by real roads: what was imported, and how it is driven. */
export type BookRoads = Frozen<InferOutput<typeof roadSettingsSchema>>;
export type RoadExtract = Frozen<InferOutput<typeof roadExtractSchema>>;
export type Label = Frozen<InferOutput<typeof labelSchema>>;
export type Product = Frozen<InferOutput<typeof productSchema>>;
export type Mix = Frozen<InferOutput<typeof mixSchema>>;
export type Coverage = Frozen<InferOutput<typeof coverageSchema>>;
export type SpreadRate = Frozen<InferOutput<typeof spreadRateSchema>>;
export type Treatment = Frozen<InferOutput<typeof treatmentSchema>>;
export type Round = Frozen<InferOutput<typeof roundSchema>>;
/** Which lawns or zones. */
export type Choice = Frozen<InferOutput<typeof choiceSchema>>;
export type Programme = Frozen<InferOutput<typeof programmeSchema>>;
export type ProgrammeStep = Frozen<InferOutput<typeof programmeStepSchema>>;
/** When a treatment is of use. */
export type Timing = Frozen<InferOutput<typeof timingSchema>>;
export type TemperatureYear = Frozen<InferOutput<typeof temperatureYearSchema>>;
export type WeatherDay = Frozen<InferOutput<typeof weatherDaySchema>>;
export type Calendar = Frozen<InferOutput<typeof calendarSchema>>;
export type Spread = Frozen<InferOutput<typeof spreadSchema>>;
export type Cap = Frozen<InferOutput<typeof capSchema>>;
export type Applicator = Frozen<InferOutput<typeof applicatorSchema>>;
export type Fleet = Frozen<InferOutput<typeof fleetSchema>>;
/** One visit as it was written down. */
export type Visit = Frozen<InferOutput<typeof visitSchema>>;
/** What a rig has aboard, read from its gauges. */
export type Gauge = Frozen<InferOutput<typeof gaugeSchema>>;
/** The firm as papers name it. */
export type Firm = Frozen<InferOutput<typeof firmSchema>>;
/** A text of the user's own with fields, for notices and signs. */
export type Template = Frozen<InferOutput<typeof templateSchema>>;
/** One version of a record of what was applied. */
export type ApplicationRecord = Frozen<InferOutput<typeof applicationRecordSchema>>;
/** The working file of one company. */
export type Book = Frozen<InferOutput<typeof bookSchema>>;
