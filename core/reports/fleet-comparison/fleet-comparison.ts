import type { Book } from '../../book/index.ts';
import { compareFleets, type Difference, type FleetResult, fleetResult, TIME_KINDS } from '../../compare/index.ts';
import { formatDistance, formatDuration, formatMoney, formatNumber, type UnitSystem } from '../../units/index.ts';
import { type Block, left, right, type Sheet, type TableRow } from '../blocks.ts';
import type { RoundInput } from '../input.ts';
import { FLEETS } from '../texts/index.ts';
import { saidWord, shortDateWord } from '../words.ts';

/** The first fleet of the book that has a plan of the round, held against each of the others that have one. */
export function fleetComparison({ book, round, fleetPlans }: RoundInput): Sheet {
  const results = book.fleets.flatMap((fleet) => {
    const plan = fleetPlans.find((each) => each.fleetId === fleet.id)?.plan;
    return plan === undefined ? [] : [fleetResult(fleet, plan)];
  });
  const [first, ...others] = results;
  return {
    id: `fleet-comparison ${round.id}`,
    title: FLEETS.title(round.name),
    subtitle: results.map((each) => each.name).join(', '),
    invented: book.invented,
    blocks:
      first === undefined || others.length === 0
        ? [{ kind: 'note', text: FLEETS.none }]
        : [
            ...others.flatMap((other) => comparedBlocks(book, first, other)),
            ...results.flatMap((each) => leftOutBlocks(book, each)),
            { kind: 'note', text: FLEETS.rule },
          ],
  };
}

function comparedBlocks(book: Book, first: FleetResult, second: FleetResult): readonly Block[] {
  const { differences, workDiffers } = compareFleets(first, second, 1);
  return [
    { kind: 'heading', text: FLEETS.heading(first.name, second.name) },
    ...(workDiffers
      ? [
          {
            kind: 'note' as const,
            text: FLEETS.differs(first.name, first.left.length, second.name, second.left.length),
          },
        ]
      : []),
    {
      kind: 'table',
      columns: [left(FLEETS.forRound), right(first.name), right(second.name), right(FLEETS.difference)],
      rows: [
        ...differences.map((each) => differenceRow(each, book.units)),
        [FLEETS.lastDate, lastDate(book, first), lastDate(book, second), ''],
        ...TIME_KINDS.map((kind) => row(FLEETS.times[kind], first.timeSec[kind], second.timeSec[kind], formatDuration)),
        row(FLEETS.fixed, first.fixedUsd, second.fixedUsd, formatMoney),
      ],
    },
  ];
}

function lastDate(book: Book, { lastDate: date }: FleetResult): string {
  return date === '' ? '' : shortDateWord(book, date);
}

function differenceRow({ what, first, second }: Difference, units: UnitSystem): TableRow {
  const words = (value: number): string => {
    if (what === 'paid' || what === 'overtime') return formatDuration(value);
    if (what === 'driven') return formatDistance(value, units);
    return what === 'cost' ? formatMoney(value) : formatNumber(value);
  };
  return row(FLEETS.rows[what], first, second, words);
}

function row(name: string, first: number, second: number, words: (value: number) => string): TableRow {
  const more = second - first;
  const size = words(Math.abs(more));
  const difference = more === 0 ? FLEETS.same : more < 0 ? FLEETS.less(size) : FLEETS.more(size);
  return [name, words(first), words(second), difference];
}

function leftOutBlocks(book: Book, { name, left: out }: FleetResult): readonly Block[] {
  if (out.length === 0) return [];
  const items = out.map((each) => FLEETS.item(each.name, saidWord(book, each.why.join('; '))));
  return [{ kind: 'cautions', title: FLEETS.leftOut(name), items }];
}
