import path from 'node:path';
import { err, type Issue, issue, ok, type Result } from '../../../core/base/index.ts';
import { type Book, emptyBook, type Property, type Zone } from '../../../core/book/index.ts';
import { guessMapping, previewIntake } from '../../../core/intake/index.ts';
import { treatableOutline } from '../../../core/measure/index.ts';
import {
  localRates,
  type PassHead,
  type PassOptions,
  type PlacedPasses,
  passesOnOutline,
  passHeadOf,
} from '../../../core/passes/index.ts';
import {
  feetToMetres,
  formatArea,
  formatNumber,
  quantity,
  squareMetresToSquareFeet,
} from '../../../core/units/index.ts';
import { describePlace } from '../../services/files/index.ts';
import { type Answer, type Command, fileOf, type Typed, UsageFault, type World } from '../command.ts';
import { isBookFile, readBookFile, readGround } from '../input/index.ts';
import type { PassesOutput } from '../output/index.ts';
import { type Column, issueLines, tableLines } from '../text/index.ts';

/** Common practice, no source: 4 in of overlap, one pass round the edge, 4 s a turn, 3.5 mph. */
const USUAL = { overlapFt: 1 / 3, trimPasses: 1, turnSec: 4, speedMph: 3.5 };

export const passesCommand: Command = {
  name: 'passes',
  summary: "Lays a machine's passes over each zone: trim passes, swaths in the best direction, minutes, hand trim.",
  details: [
    'For a book: every head of the machines of the book, or of the one that --machine names, with its swath and speed and, where the book says it, how it is driven. For any file of ground (GeoJSON, KML, shapefiles …): the head that --swath-ft and --speed-mph describe, which in a book stands in for the machines.',
    'Trim passes go round the edge and round obstacles, then parallel swaths in the direction that takes least time, or in that of --angle. Missed ground is exactly what is listed as hand trim. Lengths are those of this plan, not of the best there is; minutes are at working speed with the seconds of --turn-sec for each change of swath.',
    'Plans of days do not use these figures yet: there, minutes come from field efficiency.',
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
    { name: 'sections-ft', value: 'A,B,C', words: 'boom sections shut one by one over treated ground, left to right' },
    { name: 'shield', value: 'SIDE', words: 'left or right: the shielded side, which faces the edge in trim passes' },
    { name: 'turn-sec', value: 'SECONDS', words: 'time for each change of swath (as in the book, else 4)' },
    {
      name: 'angle',
      value: 'DEGREES',
      words: 'direction of the swaths, anticlockwise from east (searched unless told)',
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

type Ground = {
  readonly book: Book;
  readonly where: string;
  readonly issues: readonly Issue[];
  readonly isBook: boolean;
};
type NamedHead = {
  readonly machineId: string | null;
  readonly headId: string | null;
  readonly name: string;
  readonly head: PassHead;
};

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

function headsOf({ book, where, isBook }: Ground, typed: Typed): Result<readonly NamedHead[]> {
  const given = numberOf(typed, 'swath-ft');
  const speedMph = numberOf(typed, 'speed-mph');
  const told = {
    ...numberAs('overlapFt', numberOf(typed, 'overlap-ft')),
    ...numberAs('trimPasses', numberOf(typed, 'trim')),
    ...numberAs('turnSec', numberOf(typed, 'turn-sec')),
    ...numberAs('trimSwathFt', numberOf(typed, 'trim-swath-ft')),
    ...numberAs('transitMph', numberOf(typed, 'transit-mph')),
    ...numberAs('speedMph', speedMph),
    ...sectionsOf(typed),
    ...shieldOf(typed),
  };
  if (given !== undefined) {
    const head = { ...USUAL, ...told, swathFt: given };
    return ok([{ machineId: null, headId: null, name: `${formatNumber(given, 2)} ft swath`, head }]);
  }
  if (!isBook) throw new UsageFault('--swath-ft is missing: this file has no machines.');
  const id = typed.options.machine;
  const machines = book.machines.filter((each) => id === undefined || each.id === id);
  if (machines.length === 0) return noMachine(book, where, id);
  return ok(
    machines.flatMap((machine) =>
      machine.heads.map(
        (head): NamedHead => ({
          machineId: machine.id,
          headId: head.id,
          name: `${machine.name}, ${head.name}`,
          head: { ...USUAL, swathFt: head.swathFt, speedMph: head.speedMph, ...passHeadOf(head), ...told },
        }),
      ),
    ),
  );
}

const numberAs = <Name extends keyof PassHead>(name: Name, value: number | undefined): Partial<Record<Name, number>> =>
  value === undefined ? {} : ({ [name]: value } as Record<Name, number>);

function sectionsOf(typed: Typed): Pick<PassHead, 'sectionsFt'> {
  const given = typed.options['sections-ft'];
  return given === undefined ? {} : { sectionsFt: given.split(',').map((each) => numberIn('sections-ft', each)) };
}

function shieldOf(typed: Typed): Pick<PassHead, 'shieldedSide'> {
  const side = typed.options.shield;
  if (side === undefined) return {};
  if (side !== 'left' && side !== 'right') throw new UsageFault(`--shield is left or right, not "${side}".`);
  return { shieldedSide: side };
}

function noMachine(book: Book, where: string, id: string | undefined): Result<never> {
  const known = book.machines.map((each) => each.id).join(', ');
  return err(
    'reference-missing',
    `${where}, machines`,
    id === undefined ? 'The book has no machine.' : `The book has no machine "${id}".`,
    known === '' ? 'Add a machine to the book, or give --swath-ft.' : `It has these: ${known}.`,
  );
}

/** The number after an option; undefined where it was not given. Whether it makes sense is for the passes to say. */
function numberOf(typed: Typed, name: string): number | undefined {
  const given = typed.options[name];
  return given === undefined ? undefined : numberIn(name, given);
}

function numberIn(name: string, given: string): number {
  const value = Number(given);
  if (given.trim() === '' || !Number.isFinite(value)) throw new UsageFault(`--${name} needs a number, not "${given}".`);
  return value;
}

type ZoneAnswer = PassesOutput['zones'][number];

function answerOf(ground: Ground, heads: readonly NamedHead[], typed: Typed): Result<Answer> {
  const angleDeg = numberOf(typed, 'angle');
  const options = angleDeg === undefined ? {} : { angleDeg };
  const zones: ZoneAnswer[] = [];
  const issues: Issue[] = [...ground.issues];
  for (const property of ground.book.properties) {
    for (const zone of property.zones) {
      const answer = zoneAnswer(property, zone, heads, options, typed.flags.has('figures'));
      if (!answer.ok) return answer;
      zones.push({ ...namesOf(property, zone), heads: answer.value });
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
  options: PassOptions,
  figuresAlone: boolean,
): Result<ZoneAnswer['heads']> {
  const coordinates = treatableOutline(property, zone.id);
  const answers: ZoneAnswer['heads'][number][] = [];
  for (const named of coordinates.length === 0 ? [] : heads) {
    const where = `property ${property.id}, zone ${zone.id}, ${named.name}`;
    const found = passesOnOutline({ type: 'MultiPolygon', coordinates }, named.head, options, where);
    if (!found.ok) return found;
    if (found.value !== null) answers.push(headAnswer(named, found.value, figuresAlone));
  }
  return ok(answers);
}

function headAnswer(
  { machineId, headId, name, head }: NamedHead,
  { ground, plan, path: way, handTrim }: PlacedPasses,
  figuresAlone: boolean,
): ZoneAnswer['heads'][number] {
  const squareFeet = (squareMetres: number): number => squareMetresToSquareFeet(quantity<'m2'>(squareMetres));
  const { swathCount, trimCount, turnCount, sprayedM, unsprayedM, minutes, angleDeg, notes } = plan;
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
    sectionsFt: head.sectionsFt ?? null,
    shieldedSide: head.shieldedSide ?? null,
    trimSwathFt: head.trimSwathFt ?? head.swathFt,
    transitMph: head.transitMph ?? head.speedMph,
    areaSqFt: squareFeet(plan.areaSqM),
    swathCount,
    trimCount,
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

const COLUMNS: readonly Column<Row>[] = [
  { title: 'property', cell: ({ zone }) => zone.propertyName },
  { title: 'zone', cell: ({ zone }) => zone.zoneName },
  { title: 'head', cell: ({ head }) => head.name },
  { title: 'to treat', cell: ({ head }) => formatArea(head.areaSqFt), right: true },
  { title: 'trim', cell: ({ head }) => formatNumber(head.trimCount), right: true },
  { title: 'swaths', cell: ({ head }) => formatNumber(head.swathCount), right: true },
  { title: 'minutes', cell: ({ head }) => formatNumber(head.minutes, 1), right: true },
  { title: 'overlap', cell: ({ head }) => percent(head.overlapShare), right: true },
  { title: 'by hand', cell: ({ head }) => formatArea(head.handTrimSqFt), right: true },
  { title: 'remarks', cell: ({ head }) => head.notes.map((each) => each.message).join(' ') },
];

function textOf(output: PassesOutput): string {
  const rows = output.zones.flatMap((zone) => zone.heads.map((head) => ({ zone, head })));
  return tableLines(COLUMNS, rows).join('\n');
}
