import * as v from 'valibot';

/** Small schema pieces that the records of a book are made of. */

/** An id: 1 to 120 characters. */
export const idSchema = v.pipe(v.string(), v.minLength(1), v.maxLength(120));
/** A name: at most 200 characters, and it may be empty. */
export const nameSchema = v.pipe(v.string(), v.maxLength(200));
/** A longer text: at most 4,000 characters, and it may be empty. */
export const textSchema = v.pipe(v.string(), v.maxLength(4000));
export const finite = v.pipe(v.number(), v.finite());
export const notNegative = v.pipe(finite, v.minValue(0));
export const positive = v.pipe(finite, v.gtValue(0));
/** Degrees clockwise from north. */
export const bearingSchema = v.pipe(notNegative, v.maxValue(360));
export const share = v.pipe(finite, v.minValue(0), v.maxValue(1));
export const wholeNumber = v.pipe(v.number(), v.integer(), v.minValue(0));
/** Minutes after local midnight. */
export const minuteOfDay = v.pipe(finite, v.minValue(0), v.maxValue(1440));
/** A calendar date, YYYY-MM-DD. */
export const dateSchema = v.pipe(v.string(), v.regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/));

/** The days of the week from Monday on, as ISO 8601 numbers them. */
export const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;

/** A day of any year, MM-DD; 02-29 is the last of February where the year has none. */
export const monthDaySchema = v.pipe(v.string(), v.regex(/^(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/));

/** Longitude and latitude in degrees, WGS84, in that order (RFC 7946). */
export const positionSchema = v.tuple([
  v.pipe(finite, v.minValue(-180), v.maxValue(180)),
  v.pipe(finite, v.minValue(-90), v.maxValue(90)),
]);
export const ringSchema = withQuickLook(v.array(positionSchema), isRing);
export const polygonSchema = v.object({ type: v.literal('Polygon'), coordinates: v.array(ringSchema) });
export const multiPolygonSchema = v.object({
  type: v.literal('MultiPolygon'),
  coordinates: v.array(v.array(ringSchema)),
});
/** A GeoJSON polygon or multi-polygon (RFC 7946). */
export const areaGeometrySchema = v.variant('type', [polygonSchema, multiPolygonSchema]);

/** A time of the day during which something is open or allowed, in minutes after local midnight. */
export const hoursSchema = v.object({ openMin: minuteOfDay, closeMin: minuteOfDay });

/**
 * The schema, which passes a value without going through it piece by piece where a quick look says that it is right: most of a book are
 * corners. What it does not pass the schema itself reads, with its words about each fault.
 */
function withQuickLook<Schema extends v.GenericSchema>(schema: Schema, isRight: (value: unknown) => boolean): Schema {
  return {
    ...schema,
    '~run': (dataset, config) =>
      isRight(dataset.value)
        ? { typed: true, value: dataset.value as v.InferOutput<Schema>, issues: undefined }
        : schema['~run'](dataset, config),
  };
}

/** Positions of two figures on the globe, and nothing else. */
function isRing(value: unknown): boolean {
  return Array.isArray(value) && value.every(isPosition);
}

function isPosition(value: unknown): boolean {
  if (!Array.isArray(value) || value.length !== 2) return false;
  const [longitude, latitude]: readonly unknown[] = value;
  return isWithin(longitude, 180) && isWithin(latitude, 90);
}

/** False for what is no number: it compares with none. */
function isWithin(value: unknown, most: number): boolean {
  return typeof value === 'number' && value >= -most && value <= most;
}
