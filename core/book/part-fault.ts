import * as v from 'valibot';
import type { AppError } from '../base/index.ts';
import { propertySchema } from './ground-schema.ts';
import { applicationRecordSchema, templateSchema } from './paper-schema.ts';
import { gaugeSchema, visitSchema } from './record-schema.ts';
import { bookSchema } from './schema.ts';
import { schemaError } from './schema-fault.ts';
import {
  applicatorSchema,
  capSchema,
  fleetSchema,
  programmeSchema,
  temperatureYearSchema,
  timingSchema,
  weatherDaySchema,
} from './season-schema.ts';
import { fillPointSchema, handMethodSchema, machineSchema, rigSchema } from './shed-schema.ts';
import { mixSchema, productSchema, roundSchema, treatmentSchema } from './work-schema.ts';

const RECORD_SCHEMAS = {
  properties: propertySchema,
  machines: machineSchema,
  handMethods: handMethodSchema,
  rigs: rigSchema,
  fillPoints: fillPointSchema,
  products: productSchema,
  mixes: mixSchema,
  treatments: treatmentSchema,
  rounds: roundSchema,
  programmes: programmeSchema,
  timings: timingSchema,
  temperatures: temperatureYearSchema,
  weather: weatherDaySchema,
  caps: capSchema,
  applicators: applicatorSchema,
  fleets: fleetSchema,
  visits: visitSchema,
  gauges: gaugeSchema,
  templates: templateSchema,
  applicationRecords: applicationRecordSchema,
};

/**
 * What keeps a value from being a record of a table of the book; null where it is a good one. The path of the field is in
 * `where`, behind the place given. Code 'book-invalid'.
 */
export function recordFault(table: keyof typeof RECORD_SCHEMAS, record: unknown, where: string): AppError | null {
  return fault(RECORD_SCHEMAS[table], record, where);
}

/** What keeps a value from being a member of the book, such as its prices; null where it is a good one. Code 'book-invalid'. */
export function memberFault(name: keyof typeof bookSchema.entries, value: unknown, where: string): AppError | null {
  return fault(bookSchema.entries[name], value, where);
}

function fault(schema: v.GenericSchema, value: unknown, where: string): AppError | null {
  const parsed = v.safeParse(schema, value);
  if (parsed.success) return null;
  const found = schemaError(parsed.issues, where);
  return { ...found, code: 'book-invalid', hint: 'Enter a value within the limits of this field.' };
}
