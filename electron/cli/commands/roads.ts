import { type AppError, err, ok, type Result } from '../../../core/base/index.ts';
import { type DriveTable, offRoadWords, placesOffRoad, positionKey } from '../../../core/travel/index.ts';
import { formatNumber, METRES_PER_MILE } from '../../../core/units/index.ts';
import { programPlaces } from '../../program.ts';
import { describePlace } from '../../services/files/index.ts';
import { importRoads, type RoadsAbout } from '../../services/roads/index.ts';
import { type Answer, type Command, fileOf, type Typed, UsageFault, type World } from '../command.ts';
import { type BookInput, mayWrite, ROADS_OPTION, readBookFile, withDrives } from '../input/index.ts';
import type { RoadsOutput } from '../output/index.ts';
import { counted, issueLines, tableLines } from '../text/index.ts';

/** The first bytes of a road file: see core/roads/store. */
const ROAD_FILE = /^SWRDROAD/;

export const roadsCommand: Command = {
  name: 'roads',
  summary: 'Imports an extract of a road map, or tells the drive times between the places of a book.',
  details: [
    'import EXTRACT --out FILE reads an extract of OpenStreetMap (.osm.pbf or .osm) and writes its roads into FILE, whole or not at all. A file named like the book, with the ending .roads, is used by all commands and by the program without being named. Ctrl-C ends the import; what was there before stays.',
    'table BOOK gives seconds and metres between all fill points and properties of a book by road. Pairs without a way by road are null, and plans take the estimate for them; places that no road reaches are listed with the reason.',
  ],
  operands: [
    { name: 'ACTION', words: 'import or table' },
    { name: 'FILE', words: 'the extract (import), or a book file or its JSON form (table)' },
  ],
  options: [{ name: 'out', value: 'FILE', words: 'with import: the road file to write' }, ROADS_OPTION],
  usage: 'import EXTRACT --out FILE | table BOOK [--roads FILE]',
  schema: 'roads',
  example: 'npx swardway roads import sample-routes/creek-town.osm --out creek-town.roads',
  run: async (typed, world) => {
    const { ACTION: action } = typed.operands;
    if (action === 'import') return importExtract(typed, world);
    if (action === 'table') return tellTable(typed, world);
    throw new UsageFault(`There is no "roads ${action}"; there are import and table.`);
  },
};

async function importExtract(typed: Typed, world: World): Promise<Result<Answer>> {
  if (typed.options.out === undefined) throw new UsageFault('roads import needs --out FILE.');
  if (typed.options.roads !== undefined) throw new UsageFault('--roads belongs to roads table.');
  const out = fileOf(typed, 'out');
  const free = await mayWrite(out, ROAD_FILE, 'road file');
  if (!free.ok) return free;
  const controller = new AbortController();
  const release = world.onInterrupt(() => controller.abort());
  const { roadsWorkerFile } = programPlaces(world.bundleFolder);
  const read = await importRoads(fileOf(typed, 'FILE'), out, {
    workerFile: roadsWorkerFile,
    signal: controller.signal,
  });
  release();
  if (!read.ok) return read;
  const json = importedJson(read.value);
  const remarks = [`road file written: ${describePlace(out)}`];
  return ok({ json, text: () => importedText(read.value), remarks });
}

function importedJson({ about, fingerprint }: RoadsAbout): RoadsOutput {
  const { attribution, licence, dataOf, writtenBy, bounds, counts } = about;
  return {
    format: 'swardway-roads',
    version: 1,
    action: 'import',
    attribution,
    licence,
    fingerprint,
    dataOf,
    writtenBy,
    bounds: [...bounds],
    counts: { ...counts },
  };
}

function importedText({ about }: RoadsAbout): string {
  const { counts, attribution, licence, dataOf, bounds } = about;
  return [
    `${counted(counts.roads, 'road')} of ${counts.ways} ways; ${counted(counts.restrictionsUsed, 'turn restriction')}`,
    `left out: ${counts.brokenRoads} broken roads, ${counts.restrictionsViaWay} restrictions by way of another road, ${counts.restrictionsIgnored} other restrictions`,
    `from ${bounds[0]}, ${bounds[1]} to ${bounds[2]}, ${bounds[3]}`,
    `${attribution}, ${licence}${dataOf === '' ? '' : `; as of ${dataOf}`}`,
  ].join('\n');
}

async function tellTable(typed: Typed, world: World): Promise<Result<Answer>> {
  if (typed.options.out !== undefined) throw new UsageFault('--out belongs to roads import.');
  const read = await readBookFile(fileOf(typed, 'FILE'));
  if (!read.ok) return read;
  const book = { ...typed, operands: { ...typed.operands, BOOK: typed.operands.FILE ?? '' } };
  const input = await withDrives(read.value, book, world);
  if (!input.ok) return input;
  const { roads } = input.value;
  if (roads === undefined || roads.trouble !== undefined) return { ok: false, error: noTable(input.value) };
  const json = tableJson(input.value, roads);
  return ok({ json, text: () => tableText(json), remarks: issueLines(read.value.issues) });
}

function noTable({ where, roads }: BookInput): AppError {
  const detail = roads?.trouble ?? 'There are no roads beside this book.';
  return err('not-available', where, detail, 'Name a road file or an extract with --roads.').error;
}

type TableOutput = Extract<RoadsOutput, { readonly action: 'table' }>;

function tableJson({ book }: BookInput, roads: DriveTable): TableOutput {
  const all = [
    ...book.fillPoints.map(({ id, name, at }) => ({ id, name, at })),
    ...book.properties.map(({ id, name, parking }) => ({ id, name, at: parking })),
  ];
  const rowOf = new Map(roads.at.map((at, row) => [positionKey(at), row]));
  const rows = all.map(({ at }) => rowOf.get(positionKey(at)) ?? 0);
  const cells = (figures: Int32Array): (number | null)[][] =>
    rows.map((row) =>
      rows.map((column) => {
        const figure = figures[row * roads.at.length + column] ?? -1;
        return figure < 0 ? null : figure;
      }),
    );
  const durationSec = cells(roads.durationSec);
  const known = durationSec.flatMap((line, row) => line.filter((each, column) => each !== null && row !== column));
  return {
    format: 'swardway-roads',
    version: 1,
    action: 'table',
    bookId: book.id,
    credit: roads.credit,
    pairs: all.length * (all.length - 1),
    byRoad: known.length,
    places: all.map(({ id, name, at: [lon, lat] }) => ({ id, name, lon, lat })),
    durationSec,
    distanceM: cells(roads.distanceM),
    offRoad: placesOffRoad(roads, all).map((each) => ({
      id: each.id,
      name: all.find(({ id }) => id === each.id)?.name ?? each.id,
      words: offRoadWords(each),
    })),
  };
}

/** From the first place to every other, and back: the whole table is for --json. */
function tableText({ places, durationSec, distanceM, byRoad, pairs, offRoad, credit }: TableOutput): string {
  const minutes = (seconds: number | null | undefined): string =>
    seconds == null ? '-' : formatNumber(seconds / 60, 1);
  const miles = (metres: number | null | undefined): string =>
    metres == null ? '-' : formatNumber(metres / METRES_PER_MILE, 1);
  const numbers = places.map((_, index) => index).slice(1);
  return [
    `${byRoad} of ${pairs} pairs of places are by road${credit === '' ? '' : ` (${credit})`}`,
    '',
    ...tableLines(
      [
        { title: `from ${places[0]?.name ?? ''} to`, cell: (index: number) => places[index]?.name ?? '' },
        { title: 'min', cell: (index: number) => minutes(durationSec[0]?.[index]) },
        { title: 'mi', cell: (index: number) => miles(distanceM[0]?.[index]) },
        { title: 'back min', cell: (index: number) => minutes(durationSec[index]?.[0]) },
      ],
      numbers,
    ),
    ...(offRoad.length === 0 ? [] : ['', ...offRoad.map(({ name, words }) => `${name}: ${words}`)]),
  ].join('\n');
}
