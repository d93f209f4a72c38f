import { ok } from '../../../core/base/index.ts';
import type { Book, Rig, Round, Treatment } from '../../../core/book/index.ts';
import { bandAreaSqFt, farthestFt, measureBook, standsFor, treatableGround } from '../../../core/measure/index.ts';
import { zonePassesWith } from '../../../core/passes/index.ts';
import { type FitTable, type FitTrim, fitTable } from '../../../core/reach/index.ts';
import { formatArea, formatNumber } from '../../../core/units/index.ts';
import { type Answer, type Command, fileOf } from '../command.ts';
import {
  type BookInput,
  propertiesOf,
  readBookFile,
  rigOf,
  roundOf,
  treatmentsOf,
  withZonesOf,
} from '../input/index.ts';
import type { ReachOutput } from '../output/index.ts';
import { issueLines, tableLines } from '../text/index.ts';

export const reachCommand: Command = {
  name: 'reach',
  summary: 'Tells which machine or hand method can treat which zone, and why the others cannot.',
  details: [
    'Tests are put in this order: gate, slope, hose, carried by the rig, trailer, agitation, wet ground, head, vessel. The first that fails is the reason. A cell with minutes fits; less than 2 in to spare at a gate is told as tight.',
    'Where the book says how a machine is driven, minutes are those of its passes and of the hand trim of what they do not reach, as a plan would have it.',
    'Without --rig the question is put for the method alone, whoever carries it.',
  ],
  operands: [{ name: 'BOOK', words: 'book file or its JSON form' }],
  options: [
    { name: 'round', value: 'ID', words: 'round of the book (the first one unless told)' },
    { name: 'rig', value: 'ID', words: 'only what this rig carries' },
  ],
  schema: 'reach',
  example: 'npx swardway reach sample-routes/residential-day.json --rig rig-north',
  run: async (typed) => {
    const read = await readBookFile(fileOf(typed, 'BOOK'));
    if (!read.ok) return read;
    const round = roundOf(read.value.book, read.value.where, typed.options.round);
    if (!round.ok) return round;
    const rig = rigOf(read.value.book, read.value.where, typed.options.rig);
    return rig.ok ? ok(answerOf(read.value, round.value, rig.value)) : rig;
  },
};

type Fit = { readonly treatment: Treatment; readonly table: FitTable };

function answerOf({ book, issues }: BookInput, round: Round, rig: Rig | null): Answer {
  const measures = measureBook(book);
  const properties = propertiesOf(book, round);
  const fits = treatmentsOf(book, round).map((treatment): Fit => {
    const site = {
      farthestFt,
      stands: standsFor,
      passes: zonePassesWith(treatableGround),
      wetGround: round.wetGround,
      ...(treatment.coverage.kind === 'band' ? { treatedSqFt: bandOf(treatment.coverage) } : {}),
    };
    const treated = properties.map((each) => withZonesOf(each, round, treatment.id));
    return { treatment, table: fitTable({ ...book, properties: treated }, measures, treatment, rig, site) };
  });
  const inRound = new Set(properties.map((each) => each.id));
  const found = measures.filter((each) => inRound.has(each.propertyId)).flatMap((each) => each.issues);
  const json = outputOf(book, round, rig, fits, [...issues, ...found]);
  return { json, text: () => textOf(json, rig), remarks: issueLines(json.issues) };
}

type Band = Extract<Treatment['coverage'], { readonly kind: 'band' }>;
const bandOf =
  ({ widthFt, along }: Band) =>
  (property: Parameters<typeof bandAreaSqFt>[0], zone: Parameters<typeof bandAreaSqFt>[1]): number =>
    bandAreaSqFt(property, zone, widthFt, along);

function outputOf(
  book: Book,
  round: Round,
  rig: Rig | null,
  fits: readonly Fit[],
  issues: ReachOutput['issues'],
): ReachOutput {
  const names = new Map(book.properties.map((each) => [each.id, each]));
  const treatments = fits.map(({ treatment, table }) => ({
    treatmentId: treatment.id,
    name: treatment.name,
    zones: table.rows.map((row) => ({
      propertyId: row.propertyId,
      propertyName: names.get(row.propertyId)?.name ?? row.propertyId,
      zoneId: row.zoneId,
      zoneName: names.get(row.propertyId)?.zones.find((each) => each.id === row.zoneId)?.name ?? row.zoneId,
      treatedSqFt: row.treatedSqFt,
      reachable: row.cells.some((each) => each.answer.can),
      answers: row.cells.map(({ answer, minutes, trim, notReachedSqFt }, index) => ({
        method: answer.method,
        name: table.columns[index]?.name ?? '',
        can: answer.can,
        reason: answer.reason,
        tight: answer.tight,
        words: answer.words,
        minutes,
        handTrim: trim,
        notReachedSqFt,
      })),
    })),
  }));
  const unreachable = treatments.flatMap((each) => each.zones).filter((each) => !each.reachable).length;
  return {
    format: 'swardway-reach',
    version: 1,
    bookId: book.id,
    roundId: round.id,
    rigId: rig?.id ?? null,
    wetGround: round.wetGround,
    treatments,
    unreachable,
    issues,
  };
}

type ZoneRow = ReachOutput['treatments'][number]['zones'][number];

function textOf(output: ReachOutput, rig: Rig | null): string {
  const lines = output.treatments.flatMap(({ name, zones }) => {
    const columns = (zones[0]?.answers ?? []).map((each, index) => ({
      title: each.name,
      cell: (row: ZoneRow) => cellOf(row.answers[index]),
    }));
    return [
      `${name}, ${rig === null ? 'whoever carries the method' : rig.name}`,
      ...tableLines<ZoneRow>(
        [
          { title: 'property', cell: (row) => row.propertyName },
          { title: 'zone', cell: (row) => row.zoneName },
          { title: 'to treat', cell: (row) => formatArea(row.treatedSqFt), right: true },
          ...columns,
        ],
        zones,
      ),
      '',
    ];
  });
  const count = output.treatments.reduce((sum, each) => sum + each.zones.length, 0);
  return [...lines, `${count - output.unreachable} of ${count} can be done, ${output.unreachable} cannot`].join('\n');
}

function cellOf(answer: ZoneRow['answers'][number] | undefined): string {
  if (answer === undefined) return '';
  if (!answer.can) return `no: ${answer.words}`;
  const minutes = answer.minutes === null ? 'yes' : `${formatNumber(answer.minutes, 1)} min`;
  const remarks = [
    ...(answer.tight ? [`tight: ${answer.words}`] : []),
    ...(answer.handTrim === null ? [] : [trimWords(answer.handTrim)]),
    ...(answer.notReachedSqFt > 0 ? [`${formatArea(answer.notReachedSqFt)} not reached`] : []),
  ];
  return remarks.length === 0 ? minutes : `${minutes} (${remarks.join('; ')})`;
}

function trimWords({ minutes, areaSqFt, name }: FitTrim): string {
  return `${formatNumber(minutes, 1)} of it hand trim of ${formatArea(areaSqFt)}, ${name}`;
}
