import path from 'node:path';
import { type AppError, ok, type Result } from '../../../core/base/index.ts';
import { BOOK_FORMAT, emptyBook } from '../../../core/book/index.ts';
import {
  type MeasuredFile,
  type MeasuredProperty,
  type MeasuredZone,
  measuredFromBook,
  measureGeojson,
} from '../../../core/formats/index.ts';
import { guessMapping, previewIntake } from '../../../core/intake/index.ts';
import { measureBook, measureProperty } from '../../../core/measure/index.ts';
import { formatArea, formatLargeArea, formatSlope } from '../../../core/units/index.ts';
import { describePlace, readText } from '../../services/files/index.ts';
import { type Answer, type Command, fileOf, type World } from '../command.ts';
import { isBookFile, readBookFile, readGround } from '../input/index.ts';
import { type Column, counted, issueLines, tableLines } from '../text/index.ts';

/** Files that are no GeoJSON, by their names; anything else is read as GeoJSON. */
const OTHER_GROUND = /\.(?:csv|txt|kml|kmz|gpx|zip|shp|gpkg|dxf)$/i;

export const measureCommand: Command = {
  name: 'measure',
  summary: 'Measures the lawns of a file: turf, exclusions and what is left to treat.',
  details: [
    'Each GeoJSON feature is a property with one zone; its id is the id of the feature, else properties.id. With properties.role (zone, exclusion, gate) and properties.property several features make one property. Holes count as exclusions.',
    'Areas are ellipsoidal (WGS84). A feature that cannot be measured has null areas and an issue; the exit code is 1 only where none could be measured. A book, and every other file of ground that import reads (KML, GPX, shapefiles, GeoPackage, CSV …), are measured as well.',
    'The likely error (±) is how far the outline may be off, as the book has it, times the length of every edge of what is treated; a property has the sum of its zones. Where nobody said how far off, it is not known, and stated areas have none.',
  ],
  operands: [{ name: 'FILE', words: 'outlines (GeoJSON), another file of ground, or a book' }],
  options: [],
  schema: 'measure',
  example: 'npx swardway measure lawns.geojson',
  run: async (typed, world) => {
    const file = fileOf(typed, 'FILE');
    const measured = await measureFile(file, world);
    return measured.ok ? ok(answerOf(measured.value, file)) : measured;
  },
};

async function measureFile(file: string, world: World): Promise<Result<MeasuredFile>> {
  if (OTHER_GROUND.test(file)) return measureGround(file, world);
  const stored = await isBookFile(file);
  if (!stored.ok) return stored;
  if (stored.value) return measureWholeBook(file);
  const content = await readText(file);
  if (!content.ok) return content;
  const where = describePlace(file);
  if (new RegExp(`^\\s*\\{[^{[]*"format"\\s*:\\s*"${BOOK_FORMAT}"`).test(content.value)) return measureWholeBook(file);
  return measureGeojson(content.value, where, measureProperty);
}

async function measureWholeBook(file: string): Promise<Result<MeasuredFile>> {
  const read = await readBookFile(file);
  if (!read.ok) return read;
  const measured = measuredFromBook(measureBook(read.value.book));
  return ok({ ...measured, issues: [...read.value.issues, ...measured.issues] });
}

/** Measures what an import would make of the file. */
async function measureGround(file: string, world: World): Promise<Result<MeasuredFile>> {
  const source = await readGround(file, world);
  if (!source.ok) return source;
  const { mapping } = guessMapping(source.value);
  const { properties, rows, issues } = previewIntake(
    emptyBook('measure', ''),
    source.value,
    mapping,
    path.basename(file),
  );
  const measured = measuredFromBook(properties.map((each) => measureProperty(each.after)));
  return ok({ ...measured, issues: [...issues, ...rows.flatMap((each) => each.issues), ...measured.issues] });
}

function answerOf(measured: MeasuredFile, file: string): Answer {
  const hasAny = measured.properties.some((each) => each.treatableSqFt !== null);
  const remarks = issueLines(measured.issues);
  const base = { text: () => textOf(measured), remarks };
  if (hasAny) return { ...base, json: measured };
  const error = nothingMeasured(measured, file);
  return { ...base, json: { ...measured, error }, failure: { code: 1, error } };
}

function nothingMeasured(measured: MeasuredFile, file: string): AppError {
  const first = measured.issues.find((each) => each.severity === 'error');
  return {
    code: 'geometry-invalid',
    where: first?.where ?? describePlace(file),
    detail: `Nothing in the file could be measured${first === undefined ? '.' : `: ${first.message}`}`,
    hint: 'Correct the outlines that are named above, or export them again as longitude and latitude (WGS84).',
  };
}

type Row = { readonly property: MeasuredProperty; readonly zone: MeasuredZone };

const area = (value: number | null): string => (value === null ? 'not measured' : formatArea(value));

const COLUMNS: readonly Column<Row>[] = [
  { title: 'property', cell: ({ property }) => property.name },
  { title: 'zone', cell: ({ zone }) => zone.name },
  { title: 'on the map', cell: ({ zone }) => (zone.source === 'stated' ? '' : area(zone.planAreaSqFt)), right: true },
  { title: 'slope', cell: ({ zone }) => (zone.slopeDeg === 0 ? '' : formatSlope(zone.slopeDeg)), right: true },
  { title: 'to treat', cell: ({ zone }) => area(zone.areaSqFt), right: true },
  { title: '±', cell: ({ zone }) => (zone.errorSqFt === null ? '' : formatArea(zone.errorSqFt)), right: true },
  { title: 'how', cell: ({ zone }) => (zone.plannable ? zone.source : `${zone.source}, repair before planning`) },
];

function textOf(measured: MeasuredFile): string {
  const rows = measured.properties.flatMap((property) => property.zones.map((zone) => ({ property, zone })));
  const lost = measured.properties.reduce((sum, each) => sum + (each.exclusionsSqFt ?? 0), 0);
  const hasErrors = rows.some(({ zone }) => zone.errorSqFt !== null);
  const bad = rows.filter(({ zone }) => zone.areaSqFt === null).length;
  return [
    ...tableLines(hasErrors ? COLUMNS : COLUMNS.filter((each) => each.title !== '±'), rows),
    '',
    `${counted(measured.properties.length, 'property', 'properties')}, ${counted(rows.length, 'zone')}, ${bad} not measured`,
    `To treat: ${formatArea(measured.totalSqFt)} (${formatLargeArea(measured.totalSqFt)})${lost === 0 ? '' : `; exclusions took ${formatArea(lost)}`}`,
  ].join('\n');
}
