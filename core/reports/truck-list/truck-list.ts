import { formatNumber, formatProductAmount, formatVolume, formatWeight } from '../../units/index.ts';
import { type Block, BOX, left, right, type Sheet } from '../blocks.ts';
import { USUAL_CAUTIONS } from '../cautions.ts';
import type { DayInput } from '../input.ts';
import { TRUCK_LIST } from '../texts/index.ts';
import { dateWord } from '../words.ts';
import { fillPlan } from './fill-plan.ts';

/** What the truck carries in the morning, with weights against the payload, and where, when and how much it fills up. */
export function truckList(input: DayInput): Sheet {
  const { book, plan, day } = input;
  return {
    id: `truck-list ${day.date} ${day.rigId}`,
    title: TRUCK_LIST.title(day.rigName),
    subtitle: dateWord(book, day.date),
    invented: book.invented || plan.invented,
    blocks: [
      ...carried(input),
      weights(input),
      ...tooHeavy(input),
      { kind: 'note', text: TRUCK_LIST.plates },
      ...fillPlan(input),
      {
        kind: 'group',
        blocks: [
          { kind: 'heading', text: TRUCK_LIST.aboard.title },
          { kind: 'checklist', items: TRUCK_LIST.aboard.items },
          USUAL_CAUTIONS,
        ],
      },
    ],
  };
}

function carried({ book, day }: DayInput): readonly Block[] {
  const words = TRUCK_LIST.carried;
  if (day.carry.length === 0) return [{ kind: 'note', text: TRUCK_LIST.nothing }];
  return [
    {
      kind: 'table',
      columns: [left(words.on), left(words.what), right(words.amount), right(words.weight)],
      rows: [
        ...day.carry.map((each) => [
          BOX,
          each.label,
          amountOf(each, book.units),
          formatWeight(each.weightLb, book.units),
        ]),
        { look: 'sum', lead: ['', words.together], text: '', tail: [formatWeight(day.carryWeightLb, book.units)] },
      ],
    },
  ];
}

function amountOf(each: DayInput['day']['carry'][number], units: DayInput['book']['units']): string {
  if (each.unit === 'gal') return formatVolume(each.amount, units);
  if (each.unit === 'lb' || each.unit === 'oz' || each.unit === 'fl-oz')
    return formatProductAmount(each.amount, each.unit, units);
  return each.what === 'machine' ? '' : TRUCK_LIST.count(formatNumber(each.amount), each.unit);
}

function weights({ book, day }: DayInput): Block {
  const spare = day.payloadLb - day.carryWeightLb;
  return {
    kind: 'facts',
    facts: [
      { label: TRUCK_LIST.payload, value: formatWeight(day.payloadLb, book.units) },
      {
        label: spare >= 0 ? TRUCK_LIST.spare : TRUCK_LIST.over,
        value: formatWeight(Math.abs(spare), book.units),
      },
    ],
  };
}

/** The search counts the exact pounds that it needs out of the bags; whole bags may weigh more than the truck may carry. */
function tooHeavy({ book, day }: DayInput): readonly Block[] {
  const overLb = day.carryWeightLb - day.payloadLb;
  if (overLb <= 0) return [];
  const words = TRUCK_LIST.heavy;
  const bags = day.carry.some((each) => each.what === 'bags') ? [words.bags] : [];
  return [{ kind: 'cautions', title: words.title, items: [words.stop(formatWeight(overLb, book.units)), ...bags] }];
}
