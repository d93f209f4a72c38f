import { formatClock, formatNumber, formatProductAmount, formatVolume, formatWeight } from '../../units/index.ts';
import { type Block, left, right, type Sheet } from '../blocks.ts';
import { USUAL_CAUTIONS } from '../cautions.ts';
import type { DayInput } from '../input.ts';
import { materialWord, placeWord } from '../words.ts';

/** What the truck carries in the morning, with weights against the payload, and where it fills up on the way. */
export function truckList(input: DayInput): Sheet {
  const { book, day } = input;
  return {
    id: 'truck-list',
    title: `Truck list: ${day.rigName}`,
    subtitle: day.date,
    invented: book.invented,
    blocks: [
      carried(input),
      weights(input),
      { kind: 'heading', text: 'Fill points on the way' },
      fillPoints(input),
      USUAL_CAUTIONS,
    ],
  };
}

function carried({ book, day }: DayInput): Block {
  return {
    kind: 'table',
    columns: [left('On'), left('What'), right('Amount'), right('Weight')],
    rows: day.carry.map((each) => [
      '[  ]',
      each.label,
      amountOf(each, book.units),
      formatWeight(each.weightLb, book.units),
    ]),
  };
}

function amountOf(each: DayInput['day']['carry'][number], units: DayInput['book']['units']): string {
  if (each.unit === 'gal') return formatVolume(each.amount, units);
  if (each.unit === 'lb' || each.unit === 'oz' || each.unit === 'fl-oz')
    return formatProductAmount(each.amount, each.unit, units);
  return each.what === 'machine' ? '' : `${formatNumber(each.amount)} ${each.unit}`;
}

function weights({ book, day }: DayInput): Block {
  const spare = day.payloadLb - day.carryWeightLb;
  return {
    kind: 'facts',
    facts: [
      { label: 'Together', value: formatWeight(day.carryWeightLb, book.units) },
      { label: 'Payload entered for this rig', value: formatWeight(day.payloadLb, book.units) },
      { label: spare >= 0 ? 'To spare' : 'OVER by', value: formatWeight(Math.abs(spare), book.units) },
      {
        label: 'Mind',
        value: 'The plates on truck, trailer and hitch stand above this sum. Crew, tools and fuel are not in it.',
      },
    ],
  };
}

function fillPoints({ book, day }: DayInput): Block {
  const visits = day.activities.flatMap((each) => (each.kind === 'refill' && each.fillPointId !== '' ? [each] : []));
  if (visits.length === 0) return { kind: 'note', text: 'None: what the truck leaves with lasts for the day.' };
  return {
    kind: 'table',
    columns: [right('Time'), left('Fill point'), left('Take on')],
    rows: visits.map((each) => [
      formatClock(each.startSec),
      placeWord(book, each.fillPointId),
      each.stock
        .map((fill) =>
          fill.stock === 'water'
            ? `${formatVolume(fill.volumeGal, book.units)} water`
            : `${fill.bags} bags ${materialWord(book, fill.productId)}`,
        )
        .join('; ') || 'into the machine only',
    ]),
  };
}
