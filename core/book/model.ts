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
/** An outline: a GeoJSON polygon or multi-polygon (RFC 7946), longitude and latitude in degrees (WGS84). */
export type AreaGeometry = Frozen<InferOutput<typeof areaGeometrySchema>>;
/** From when to when something is open or allowed, minutes after local midnight. */
export type Hours = Frozen<InferOutput<typeof hoursSchema>>;
/** An opening on the way to turf, with its clear width in inches. */
export type Gate = Frozen<InferOutput<typeof gateSchema>>;
/** Where the area of a zone comes from: an outline in degrees, or a stated area in square feet. */
export type ZoneShape = Frozen<InferOutput<typeof zoneShapeSchema>>;
/** A plain shape measured by tape or wheel, its lengths in feet. */
export type PlainShape = Frozen<InferOutput<typeof plainShapeSchema>>;
/** What was measured on site behind a stated area. */
export type AreaWorking = Frozen<InferOutput<typeof areaWorkingSchema>>;
/** How a slope was found: rise and run in feet, a level's degrees, or a model of heights. */
export type SlopeWorking = Frozen<InferOutput<typeof slopeWorkingSchema>>;
/** An earlier total of a property's treatable ground, square feet. */
export type PastMeasure = Frozen<InferOutput<typeof pastMeasureSchema>>;
/** How the owner turns area and hours into a price, dollars; every figure is the user's. */
export type Estimate = Frozen<InferOutput<typeof estimateSchema>>;
/** A picture laid over the map, sizes in pixels, with the points that hold it to the ground. */
export type Overlay = Frozen<InferOutput<typeof overlaySchema>>;
/** An area of turf treated in one way; area in square feet, slope in degrees. */
export type Zone = Frozen<InferOutput<typeof zoneSchema>>;
/** Ground that is not treated, with its keep-away distance in feet. */
export type Exclusion = Frozen<InferOutput<typeof exclusionSchema>>;
/** One address with its lawn: parking point, gates, zones, exclusions. */
export type Property = Frozen<InferOutput<typeof propertySchema>>;
/** A tank (gallons), or a hopper or seed box (pounds), of a machine. */
export type Compartment = Frozen<InferOutput<typeof compartmentSchema>>;
/** What a machine works with: swath in feet, speed in miles an hour, efficiency as a share from 0 to 1. */
export type Head = Frozen<InferOutput<typeof headSchema>>;
/** How a head is driven over a lawn. */
export type HeadPasses = Frozen<InferOutput<typeof headPassesSchema>>;
/** A calibration of a head or a hand method. */
export type Calibration = Frozen<InferOutput<typeof calibrationSchema>>;
/** A way of treating on foot: reach in feet, minutes for 1,000 square feet. */
export type HandMethod = Frozen<InferOutput<typeof handMethodSchema>>;
/** A ride-on, stand-on or walk-behind unit: width in inches, weight in pounds, steepest slope in degrees. */
export type Machine = Frozen<InferOutput<typeof machineSchema>>;
/** A machine on a rig, how it rides, and the minutes to unload and to load it. */
export type CarriedMachine = Frozen<InferOutput<typeof carriedMachineSchema>>;
/** A truck with its crew, nurse tank (gallons), bag places, payload (pounds) and shift (minutes). */
export type Rig = Frozen<InferOutput<typeof rigSchema>>;
/** Where water (gallons a minute) and product can be had. */
export type FillPoint = Frozen<InferOutput<typeof fillPointSchema>>;
/** What work, overtime, miles and days late cost, dollars. */
export type Prices = Frozen<InferOutput<typeof pricesSchema>>;
/** How drives are estimated: road over straight line as a ratio, speeds in miles an hour. */
export type TravelSettings = Frozen<InferOutput<typeof travelSettingsSchema>>;
/** Times (seconds) and distances (metres) between named places, imported; rows are where a drive begins. */
export type TravelMatrix = Frozen<InferOutput<typeof matrixSchema>>;
/** Driving by real roads: what was imported, and how it is driven. */
export type BookRoads = Frozen<InferOutput<typeof roadSettingsSchema>>;
/** The extract of a road map that a book's roads were read from. */
export type RoadExtract = Frozen<InferOutput<typeof roadExtractSchema>>;
/** Limits that the label of a product sets, as the user entered them. */
export type Label = Frozen<InferOutput<typeof labelSchema>>;
/** What is applied, counted in its own unit: fluid ounces, ounces or pounds. */
export type Product = Frozen<InferOutput<typeof productSchema>>;
/** One tank recipe: products and carrier (gallons) for 1,000 square feet. */
export type Mix = Frozen<InferOutput<typeof mixSchema>>;
/** How much of a zone a treatment meets: the whole, a share of it in spots, or a band so many feet wide. */
export type Coverage = Frozen<InferOutput<typeof coverageSchema>>;
/** Pounds of a product, or of one of its nutrients, for 1,000 square feet; the user's figure. */
export type SpreadRate = Frozen<InferOutput<typeof spreadRateSchema>>;
/** What a round applies to a zone: a mix sprayed, a product spread, aeration, seed. */
export type Treatment = Frozen<InferOutput<typeof treatmentSchema>>;
/** One treatment of the customer list, with the dates between which it must happen. */
export type Round = Frozen<InferOutput<typeof roundSchema>>;
/** Which lawns or zones. */
export type Choice = Frozen<InferOutput<typeof choiceSchema>>;
/** Several rounds a season, to be used again every year. */
export type Programme = Frozen<InferOutput<typeof programmeSchema>>;
/** One round of a programme, with its first and last day of the year. */
export type ProgrammeStep = Frozen<InferOutput<typeof programmeStepSchema>>;
/** When a treatment is of use. */
export type Timing = Frozen<InferOutput<typeof timingSchema>>;
/** Daily temperatures of one station in one year, degrees Fahrenheit. */
export type TemperatureYear = Frozen<InferOutput<typeof temperatureYearSchema>>;
/** Weather of one day by the hour: miles an hour, degrees Fahrenheit, inches of rain. */
export type WeatherDay = Frozen<InferOutput<typeof weatherDaySchema>>;
/** Days and hours that are worked, and what is kept free. */
export type Calendar = Frozen<InferOutput<typeof calendarSchema>>;
/** How far the times and amounts of a day go from the plan, as shares and factors. */
export type Spread = Frozen<InferOutput<typeof spreadSchema>>;
/** The most of a nutrient or active ingredient in a year, pounds for 1,000 square feet, as the user entered it. */
export type Cap = Frozen<InferOutput<typeof capSchema>>;
/** Somebody who may apply, with the licence. */
export type Applicator = Frozen<InferOutput<typeof applicatorSchema>>;
/** Rigs that are compared with others on the same round. */
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
