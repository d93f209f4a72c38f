import path from 'node:path';
import { type Issue, issue, ok, type Result } from '../../../core/base/index.ts';
import { emptyBook, type Property, type Zone } from '../../../core/book/index.ts';
import { guessMapping, previewIntake } from '../../../core/intake/index.ts';
import { edgeLengths, edgeWords, treatableGround } from '../../../core/measure/index.ts';
import {
  directionOptions,
  localRates,
  type PassOptions,
  type PlacedPasses,
  passesOnOutline,
} from '../../../core/passes/index.ts';
import {
  feetToMetres,
  formatArea,
  formatLength,
  formatNumber,
  quantity,
  squareMetresToSquareFeet,
} from '../../../core/units/index.ts';
import { describePlace } from '../../services/files/index.ts';
import { type Answer, type Command, fileOf, type Typed, type World } from '../command.ts';
import { isBookFile, readBookFile, readGround } from '../input/index.ts';
import type { PassesOutput } from '../output/index.ts';
import { type Column, issueLines, tableLines } from '../text/index.ts';
import { type Ground, headsOf, type NamedHead, numberOf } from './passes-heads.ts';

export const passesCommand: Command = {
  name: 'passes',
  summary: "Lays a machine's passes over each zone: trim passes, swaths in the best direction, minutes, hand trim.",
  details: [
    'For a book: every head of the machines of the book, or of the one that --machine names, with its swath and speed and, where the book says it, how it is driven. For any file of ground (GeoJSON, KML, shapefiles …): the head that --swath-ft and --speed-mph describe, which in a book stands in for the machines.',
    'Trim passes go round the whole edge and round obstacles, with the shielded side to it where the head has one; what the edge lies next to is told. Then come parallel swaths in the direction that takes least time, or in that of --angle. Missed ground is exactly what is listed as hand trim. Lengths are those of this plan, not of the best there is; minutes are at working speed with the seconds of --turn-sec for each change of swath. In a corner of a trim pass the machine turns on the spot, which leaves a rest; with --square-corners it drives straight on until the end of its swath stands at the edge, and back, where that treats enough, for a turn more.',
    'Plans of days take these passes for every head of which the book says how it is driven; the others are reckoned from field efficiency.',
  ],
  operands: [{ name: 'FILE', words: 'book, or outlines (GeoJSON or another file of ground)' }],
  options: [
    { name: 'machine', value: 'ID', words: 'machine of the book (all of them unless told)' },
    { name: 'swath-ft', value: 'FEET', words: 'width that one swath treats' },
    { name: 'speed-mph', value: 'MPH', words: 'working speed (3.5 unless told)' },
    { name: 'transit-mph', value: 'MPH', words: 'speed with nothing coming out (the working speed unless told)' },
    { name: 'overlap-ft', value: 'FEET', words: 'what neighbouring swaths share at least (as in the book, else 4 in)' },
    { name: 'trim', value: 'N', words: 'passes round the edge and obstacles (as in the book, else 1)' },
    { name: 'trim-swath-ft', value: 'FEET', words: 'width of a trim pass (as in the book, else that of the swath)' },
    {
      name: 'square-corners',
      value: null,
      words: 'drives out the corners of trim passes (as in the book, else turns on the spot)',
    },
    { name: 'sections-ft', value: 'A,B,C', words: 'boom sections shut one by one over treated ground, left to right' },
    { name: 'shield', value: 'SIDE', words: 'left or right: the shielded side, which faces the edge in trim passes' },
    { name: 'turn-sec', value: 'SECONDS', words: 'time for each change of swath (as in the book, else 4)' },
    {
      name: 'angle',
      value: 'DEGREES',
      words: 'direction of the swaths, anticlockwise from east (as the zone says, else searched)',
    },
    {
      name: 'up-and-down-from',
      value: 'DEGREES',
      words: 'swaths run up and down on ground at least this steep (as in the book, else never)',
    },
    {
      name: 'downhill',
      value: 'DEGREES',
      words: 'which way the ground falls, clockwise from north, where a zone does not say',
    },
    {
      name: 'mark',
      value: 'MARKER',
      words: 'foam or dye, which shows where the last swath was (as in the book, else none)',
    },
    {
      name: 'mark-fl-oz',
      value: 'FL-OZ',
      words: 'marker for 1,000 ft marked: by foam swaths, by dye all that is sprayed',
    },
    { name: 'figures', value: null, words: 'with --json: figures alone, without ways and outlines' },
  ],
  schema: 'passes',
  example: 'npx swardway passes lawns.geojson --swath-ft 5 --trim 2',
  run: async (typed, world) => {
    const ground = await readFile(fileOf(typed, 'FILE'), world);
    if (!ground.ok) return ground;
    const heads = headsOf(ground.value, typed);
    return heads.ok ? answerOf(ground.value, heads.value, typed) : heads;
  },
};

/** Files that are no book by their names; of others the bytes tell. */
const OTHER_GROUND = /\.(?:csv|txt|kml|kmz|gpx|zip|shp|gpkg|dxf)$/i;
const NO_BOOK: ReadonlySet<string> = new Set(['not-a-book', 'not-json']);

async function readFile(file: string, world: World): Promise<Result<Ground>> {
  const stored = await isBookFile(file);
  if (!stored.ok) return stored;
  const read = await readBookFile(file);
  if (read.ok) return ok({ ...read.value, isBook: true });
  if (!OTHER_GROUND.test(file) && (stored.value || !NO_BOOK.has(read.error.code))) return read;
  const source = await readGround(file, world);
  if (!source.ok) return source;
  const { mapping } = guessMapping(source.value);
  const empty = emptyBook('passes', '');
  const preview = previewIntake(empty, source.value, mapping, path.basename(file));
  return ok({
    book: { ...empty, properties: preview.properties.map((each) => each.after) },
    where: describePlace(file),
    issues: [...preview.issues, ...preview.rows.flatMap((each) => each.issues)],
    isBook: false,
  });
}

type ZoneAnswer = PassesOutput['zones'][number];

function answerOf(ground: Ground, heads: readonly NamedHead[], typed: Typed): Result<Answer> {
  const zones: ZoneAnswer[] = [];
  const issues: Issue[] = [...ground.issues];
  for (const property of ground.book.properties) {
    for (const zone of property.zones) {
      const answer = zoneAnswer(property, zone, heads, typed);
      if (!answer.ok) return answer;
      zones.push({ ...namesOf(property, zone), edges: edgeLengths(property, zone.id), heads: answer.value });
      if (answer.value.length === 0 && heads.length > 0) issues.push(withoutOutline(property, zone));
    }
  }
  const json: PassesOutput = { format: 'swardway-passes', version: 1, zones, issues };
  return ok({ json, text: () => textOf(json), remarks: issueLines(issues) });
}

const namesOf = (property: Property, zone: Zone) => ({
  propertyId: property.id,
  propertyName: property.name,
  zoneId: zone.id,
  zoneName: zone.name,
});

const withoutOutline = (property: Property, zone: Zone): Issue =>
  issue(
    'note',
    'passes-without-outline',
    `property ${property.id}, zone ${zone.id}`,
    'Passes need an outline with turf; this zone has none.',
  );

function zoneAnswer(
  property: Property,
  zone: Zone,
  heads: readonly NamedHead[],
  typed: Typed,
): Result<ZoneAnswer['heads']> {
  const ground = treatableGround(property, zone.id);
  const answers: ZoneAnswer['heads'][number][] = [];
  for (const named of ground.outline.length === 0 ? [] : heads) {
    const where = `property ${property.id}, zone ${zone.id}, ${named.name}`;
    const found = passesOnOutline(ground, named.head, directionOf(zone, named, typed), where);
    if (!found.ok) return found;
    if (found.value !== null) answers.push(headAnswer(named, found.value, typed.flags.has('figures')));
  }
  return ok(answers);
}

/** The direction told on the command line, or that of the zone, or up and down where the ground is steep. */
function directionOf(zone: Zone, { upAndDownFromDeg }: NamedHead, typed: Typed): PassOptions {
  const angleDeg = numberOf(typed, 'angle');
  if (angleDeg !== undefined) return { angleDeg };
  const downhillDeg = zone.downhillDeg ?? numberOf(typed, 'downhill');
  const passes = upAndDownFromDeg === undefined ? null : { upAndDownFromDeg };
  return directionOptions(downhillDeg === undefined ? zone : { ...zone, downhillDeg }, passes);
}

function headAnswer(
  { machineId, headId, name, head }: NamedHead,
  { ground, plan, path: way, handTrim }: PlacedPasses,
  figuresAlone: boolean,
): ZoneAnswer['heads'][number] {
  const squareFeet = (squareMetres: number): number => squareMetresToSquareFeet(quantity<'m2'>(squareMetres));
  const { swathCount, trimCount, cornerCount, turnCount, sprayedM, unsprayedM, minutes, angleDeg, mark, notes } = plan;
  const sectionsM = head.sectionsFt?.map((each) => feetToMetres(quantity<'ft'>(each))) ?? null;
  const rates = localRates(ground, plan, sectionsM);
  const shown = {
    handTrim,
    path: way.map(({ positions, ...leg }) => ({ ...leg, coordinates: positions })),
  };
  return {
    machineId,
    headId,
    name,
    ...head,
    mark: head.mark === undefined || mark === null ? null : { ...mark, flOzPer1000Ft: head.mark.flOzPer1000Ft },
    sectionsFt: head.sectionsFt ?? null,
    shieldedSide: head.shieldedSide ?? null,
    squareCorners: head.squareCorners ?? false,
    trimSwathFt: head.trimSwathFt ?? head.swathFt,
    transitMph: head.transitMph ?? head.speedMph,
    areaSqFt: squareFeet(plan.areaSqM),
    swathCount,
    trimCount,
    cornerCount,
    turnCount,
    sprayedM,
    swathM: plan.swathM,
    unsprayedM,
    minutes,
    averagePasses: rates.average,
    worstPasses: rates.worst,
    appliedSqFt: squareFeet(plan.appliedSqM),
    overlapShare: plan.overlapShare,
    missedShare: plan.missedShare,
    offTargetShare: plan.offTargetShare,
    handTrimSqFt: squareFeet(plan.handTrimSqM),
    angleDeg,
    ...(figuresAlone ? {} : shown),
    notes,
  };
}

type Row = { readonly zone: ZoneAnswer; readonly head: ZoneAnswer['heads'][number] };
const percent = (share: number): string => `${formatNumber(100 * share, 1)} %`;

const markWords = ({ mark }: Row['head']): string =>
  mark === null ? '' : `${formatNumber(mark.flOz, 0)} fl oz ${mark.what}`;

const COLUMNS: readonly Column<Row>[] = [
  { title: 'property', cell: ({ zone }) => zone.propertyName },
  { title: 'zone', cell: ({ zone }) => zone.zoneName },
  { title: 'head', cell: ({ head }) => head.name },
  { title: 'to treat', cell: ({ head }) => formatArea(head.areaSqFt), right: true },
  { title: 'trim', cell: ({ head }) => formatNumber(head.trimCount), right: true },
  { title: 'swaths', cell: ({ head }) => formatNumber(head.swathCount), right: true },
  { title: 'minutes', cell: ({ head }) => formatNumber(head.minutes, 1), right: true },
  { title: 'overlap', cell: ({ head }) => percent(head.overlapShare), right: true },
  { title: 'mark', cell: ({ head }) => markWords(head), right: true },
  { title: 'by hand', cell: ({ head }) => formatArea(head.handTrimSqFt), right: true },
  { title: 'remarks', cell: ({ head }) => head.notes.map((each) => each.message).join(' ') },
];

/** What the edges of zones lie next to, where anything is drawn there. */
function edgeLines({ zones }: PassesOutput): readonly string[] {
  const told = zones.filter(({ edges }) => edges.some((each) => each.kind !== 'open'));
  const lines = told.map(
    ({ propertyName, zoneName, edges }) => `${propertyName}, ${zoneName}: edge ${edgeWords(edges, formatLength)}`,
  );
  return lines.length === 0 ? [] : ['', ...lines];
}

function textOf(output: PassesOutput): string {
  const rows = output.zones.flatMap((zone) => zone.heads.map((head) => ({ zone, head })));
  return [...tableLines(COLUMNS, rows), ...edgeLines(output)].join('\n');
}
