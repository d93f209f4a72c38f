import { formatNumber, formatProductAmount, formatVolume, formatWeight } from '../../units/index.ts';
import { type Block, BOX, left, right, type Sheet } from '../blocks.ts';
import { USUAL_CAUTIONS } from '../cautions.ts';
import type { DayInput } from '../input.ts';
import { dateWord } from '../texts/index.ts';
import { amountWord, clockWord, compartmentWord, materialWord, placeWord, stockWord } from '../words.ts';

/** What the truck carries in the morning, with weights against the payload, and where it fills up on the way. */
export function truckList(input: DayInput): Sheet {
  const { book, plan, day } = input;
  return {
    id: `truck-list ${day.date} ${day.rigId}`,
    title: `Truck list: ${day.rigName}`,
    subtitle: dateWord(day.date),
    invented: book.invented || plan.invented,
    blocks: [
      carried(input),
      weights(input),
      ...tooHeavy(input),
      {
        kind: 'note',
        text: 'The plates on truck, trailer and hitch stand above this sum. Crew, tools and fuel are not in it.',
      },
      { kind: 'heading', text: 'Always aboard' },
      { kind: 'checklist', items: ALWAYS_ABOARD },
      { kind: 'heading', text: 'Fill points on the way' },
      fillPoints(input),
      USUAL_CAUTIONS,
    ],
  };
}

/** Common practice, no source; labels and local rules may ask for more. */
const ALWAYS_ABOARD: readonly string[] = [
  'Label and safety data sheet of every product',
  'What the labels ask to wear, clean water and soap to wash, eyewash',
  'Spill kit, measures, funnel, shovel and broom',
  'Notices to post, run sheet, load tickets, license',
];

function carried({ book, day }: DayInput): Block {
  return {
    kind: 'table',
    columns: [left('On'), left('What'), right('Amount'), right('Weight')],
    rows: [
      ...day.carry.map((each) => [
        BOX,
        each.label,
        amountOf(each, book.units),
        formatWeight(each.weightLb, book.units),
      ]),
      { look: 'sum', lead: ['', 'Together'], text: '', tail: [formatWeight(day.carryWeightLb, book.units)] },
    ],
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
      { label: 'Payload', value: formatWeight(day.payloadLb, book.units) },
      { label: spare >= 0 ? 'To spare' : 'OVER by', value: formatWeight(Math.abs(spare), book.units) },
    ],
  };
}

/** The search counts the exact pounds that it needs out of the bags; whole bags may weigh more than the truck may carry. */
function tooHeavy({ book, day }: DayInput): readonly Block[] {
  const overLb = day.carryWeightLb - day.payloadLb;
  if (overLb <= 0) return [];
  const bags = day.carry.some((each) => each.what === 'bags')
    ? [
        'The plan counts the pounds that it needs, this list whole bags. Take only the needed part of the last bag of each product, in its own bag and closed, or leave something else behind.',
      ]
    : [];
  const items = [`Do not drive off like this: ${formatWeight(overLb, book.units)} above the payload.`, ...bags];
  return [{ kind: 'cautions', title: 'Too heavy', items }];
}

function fillPoints({ book, day }: DayInput): Block {
  const visits = day.activities.flatMap((each) => (each.kind === 'refill' && each.fillPointId !== '' ? [each] : []));
  if (visits.length === 0) return { kind: 'note', text: 'None: what the truck leaves with lasts for the day.' };
  return {
    kind: 'table',
    columns: [left(''), right('Time'), left('Fill point'), left('Take on'), left('Then on to')],
    rows: visits.map((each) => [
      BOX,
      clockWord(book, each.startSec),
      placeWord(book, each.fillPointId),
      [
        ...each.stock.map((fill) => stockWord(book, fill)),
        ...each.fills.map(
          (fill) =>
            `${amountWord(fill, book.units)} ${materialWord(book, fill.materialId)} into ${compartmentWord(book, fill.compartmentId)}`,
        ),
      ].join('; '),
      placeWord(book, each.propertyId),
    ]),
  };
}
