import { type ConversionConfig, toJsonSchema } from '@valibot/to-json-schema';
import type { BaseIssue, BaseSchema } from 'valibot';
import { bookSchema } from '../../core/book/index.ts';
import { planSchema } from '../../core/plan/result/index.ts';
import {
  areaSchema,
  calibrateSchema,
  demandSchema,
  exportSchema,
  failureSchema,
  importSchema,
  judgeSchema,
  measureSchema,
  passesSchema,
  reachSchema,
  recordsSchema,
  reportSchema,
  roadsSchema,
  solveSchema,
} from '../cli/output/index.ts';

/** One schema to publish: the file is docs/schemas/NAME.schema.json. */
type Published = {
  readonly name: string;
  readonly title: string;
  readonly schema: BaseSchema<unknown, unknown, BaseIssue<unknown>>;
  /** What the file describes: what may be given (input) or what is handed out (output). */
  readonly mode: 'input' | 'output';
};

/** Every file format and every answer of a command that is documented by a JSON Schema. */
const PUBLISHED: readonly Published[] = [
  { name: 'book', title: 'Swardway book, JSON form', schema: bookSchema, mode: 'input' },
  { name: 'plan', title: 'Swardway plan', schema: planSchema, mode: 'output' },
  { name: 'measure', title: 'Answer of swardway measure --json', schema: measureSchema, mode: 'output' },
  { name: 'passes', title: 'Answer of swardway passes --json', schema: passesSchema, mode: 'output' },
  { name: 'reach', title: 'Answer of swardway reach --json', schema: reachSchema, mode: 'output' },
  { name: 'demand', title: 'Answer of swardway demand --json', schema: demandSchema, mode: 'output' },
  { name: 'judge', title: 'Answer of swardway judge --json', schema: judgeSchema, mode: 'output' },
  { name: 'report', title: 'Answer of swardway report --json', schema: reportSchema, mode: 'output' },
  { name: 'records', title: 'Answer of swardway records --json', schema: recordsSchema, mode: 'output' },
  { name: 'import', title: 'Answer of swardway import --json', schema: importSchema, mode: 'output' },
  { name: 'export', title: 'Answer of swardway export --json', schema: exportSchema, mode: 'output' },
  { name: 'roads', title: 'Answer of swardway roads --json', schema: roadsSchema, mode: 'output' },
  { name: 'solve', title: 'Answer of swardway solve --json', schema: solveSchema, mode: 'output' },
  { name: 'calibrate', title: 'Answer of swardway calibrate --json', schema: calibrateSchema, mode: 'output' },
  { name: 'area', title: 'Answer of swardway area --json', schema: areaSchema, mode: 'output' },
  {
    name: 'failure',
    title: 'Answer of any command with --json that could not do its work',
    schema: failureSchema,
    mode: 'output',
  },
];

/** A file of docs/schemas and its whole text. */
export type SchemaDocument = { readonly file: string; readonly text: string };

/** Checks that say nothing a JSON Schema could: JSON knows no endless number, and trimming is done by the reader. */
const WITHOUT_WORDS = ['finite', 'check', 'trim'];

const convert = ({ name, title, schema, mode }: Published): SchemaDocument => {
  const config: ConversionConfig = {
    target: 'draft-07',
    typeMode: mode,
    errorMode: 'throw',
    ignoreActions: WITHOUT_WORDS,
  };
  const { $schema, ...body } = toJsonSchema(schema, config);
  return { file: `${name}.schema.json`, text: `${JSON.stringify({ $schema, title, ...body }, null, 2)}\n` };
};

/** The JSON Schemas of every published format, made from the schemas that the program itself checks with. */
export const schemaDocuments = (): readonly SchemaDocument[] => PUBLISHED.map(convert);
