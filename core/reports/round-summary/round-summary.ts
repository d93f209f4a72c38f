import type { Plan } from '../../plan/result/index.ts';
import { roundCost } from '../../round/buying/index.ts';
import {
  formatArea,
  formatDistance,
  formatDuration,
  formatMoney,
  formatNumber,
  formatVolume,
} from '../../units/index.ts';
import { type Block, left, right, type Sheet } from '../blocks.ts';
import type { RoundInput } from '../input.ts';
import { ROUND_SUMMARY } from '../texts/index.ts';
import { dateWord, saidWord, shortDateWord } from '../words.ts';
import { orderBlocks, waterBlocks } from './order-blocks.ts';

const CENTS_PER_DOLLAR = 100;

/** A round from its plan: what it comes to, day by day, what to order by when, water, cost, and what was left out. */
export function roundSummary({ book, round, plan }: RoundInput): Sheet {
  return {
    id: `round-summary ${round.id}`,
    title: ROUND_SUMMARY.title(round.name),
    subtitle: [...new Set([round.dates[0], round.dates.at(-1)])]
      .flatMap((each) => each ?? [])
      .map((date) => dateWord(book, date))
      .join(' – '),
    invented: book.invented,
    blocks:
      plan === null
        ? [{ kind: 'note', text: ROUND_SUMMARY.noPlan }]
        : [
            totalsBlock(book, plan),
            ...daysBlocks(book, plan),
            ...orderBlocks(book, plan),
            ...waterBlocks(book, plan),
            ...costBlocks(book, plan),
            ...unplacedBlocks(book, plan),
          ],
  };
}

type Book = RoundInput['book'];

function totalsBlock(book: Book, { totals, days, unplaced, ...plan }: Plan): Block {
  const { facts } = ROUND_SUMMARY;
  const lawns = new Set(days.flatMap((day) => day.stops.map((stop) => stop.propertyId)));
  const left = new Set(unplaced.map((each) => each.propertyId));
  const cost = roundCost(book, { totals, days, unplaced, ...plan });
  return {
    kind: 'facts',
    facts: [
      { label: facts.lawns, value: formatNumber(lawns.size) },
      { label: facts.left, value: formatNumber(left.size) },
      { label: facts.days, value: formatNumber(totals.days) },
      { label: facts.ground, value: formatArea(totals.treatedSqFt, book.units) },
      { label: facts.paid, value: formatDuration(totals.paidSec) },
      { label: facts.overtime, value: formatDuration(totals.overtimeSec) },
      { label: facts.driven, value: formatDistance(totals.distanceM, book.units) },
      { label: facts.refills, value: formatNumber(totals.refills) },
      { label: facts.loads, value: formatNumber(totals.loads) },
      { label: facts.water, value: formatVolume(totals.waterGal, book.units) },
      { label: facts.cost, value: formatMoney(cost.totalCents / CENTS_PER_DOLLAR) },
    ],
  };
}

function daysBlocks(book: Book, { days, totals }: Plan): readonly Block[] {
  const words = ROUND_SUMMARY.days;
  return [
    { kind: 'heading', text: words.title },
    {
      kind: 'table',
      columns: [
        left(words.date),
        left(words.rig),
        right(words.stops),
        right(words.ground),
        right(words.loads),
        right(words.paid),
        right(words.driven),
      ],
      rows: [
        ...days.map((day) => [
          shortDateWord(book, day.date),
          day.rigName,
          formatNumber(day.stops.length),
          formatArea(day.treatedSqFt, book.units),
          formatNumber(day.loads.length),
          formatDuration(day.paidSec),
          formatDistance(day.distanceM, book.units),
        ]),
        {
          look: 'sum',
          lead: [words.all],
          text: '',
          tail: [
            formatNumber(totals.stops),
            formatArea(totals.treatedSqFt, book.units),
            formatNumber(totals.loads),
            formatDuration(totals.paidSec),
            formatDistance(totals.distanceM, book.units),
          ],
        },
      ],
    },
  ];
}

function costBlocks(book: Book, plan: Plan): readonly Block[] {
  const words = ROUND_SUMMARY.cost;
  const cost = roundCost(book, plan);
  const parts = (Object.keys(words.parts) as (keyof typeof words.parts)[]).filter((part) => cost.cents[part] > 0);
  const usd = (cents: number): string => formatMoney(cents / CENTS_PER_DOLLAR);
  return [
    {
      kind: 'group',
      blocks: [
        { kind: 'heading', text: words.title },
        {
          kind: 'table',
          columns: [left(words.what), right(words.dollars)],
          rows: [
            ...parts.map((part) => [words.parts[part], usd(cost.cents[part])]),
            { look: 'sum', lead: [], text: words.all, tail: [usd(cost.totalCents)] },
          ],
        },
        { kind: 'note', text: words.own },
      ],
    },
  ];
}

function unplacedBlocks(book: Book, { unplaced }: Plan): readonly Block[] {
  const words = ROUND_SUMMARY.unplaced;
  if (unplaced.length === 0) return [];
  const items = unplaced.map(({ propertyName, zoneName, reasons }) =>
    words.item(propertyName, zoneName, saidWord(book, [...new Set(reasons.map((each) => each.words))].join('; '))),
  );
  return [{ kind: 'cautions', title: words.title, items: [...new Set(items)] }];
}
