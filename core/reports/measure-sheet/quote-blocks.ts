import type { LawnQuote, MethodFit, MoneyLine, SeasonQuote, VisitQuote } from '../../quote/index.ts';
import {
  formatArea,
  formatMoney,
  formatNumber,
  formatProductAmount,
  formatShare,
  formatVolume,
  type UnitSystem,
} from '../../units/index.ts';
import { type Block, left, right, type TableRow } from '../blocks.ts';

/** Which machine or hand method fits which zone, with the reason, for every treatment. */
export function fitBlocks({ visits }: LawnQuote, units: UnitSystem): readonly Block[] {
  return visits.map(({ work }): Block => {
    const rows = work.zones.flatMap((zone): readonly TableRow[] =>
      zone.fits.map((fit, index) => [
        index === 0 ? zone.zoneName : '',
        fit.name,
        fit.answer.can ? (fit === zone.chosen ? 'yes, quickest' : 'yes') : 'no',
        fit.minutes === null ? '' : `${formatNumber(fit.minutes, 1)} min`,
        fit.trim === null ? '' : `${formatNumber(fit.trim.minutes, 1)} min`,
        becauseOf(fit, units),
      ]),
    );
    const heading: Block = { kind: 'heading', text: `Who can do it: ${work.name}` };
    if (rows.length === 0) {
      return { kind: 'group', blocks: [heading, { kind: 'note', text: 'The shed has nothing made for this.' }] };
    }
    const columns = [
      left('Zone'),
      left('With'),
      left('Fits'),
      right('Minutes'),
      right('of it hand trim'),
      left('Because'),
    ];
    return { kind: 'group', blocks: [heading, { kind: 'table', columns, rows }] };
  });
}

function becauseOf({ answer, trim, notReachedSqFt }: MethodFit, units: UnitSystem): string {
  return [
    answer.words,
    ...(trim === null ? [] : [`${formatArea(trim.areaSqFt, units)} trimmed with ${trim.name}`]),
    ...(notReachedSqFt > 0 ? [`${formatArea(notReachedSqFt, units)} not reached`] : []),
  ].join('; ');
}

/** What each treatment takes: minutes, carrier, products. */
export function takesBlock({ visits }: LawnQuote, units: UnitSystem): Block {
  return {
    kind: 'table',
    columns: [
      left('Treatment'),
      left('Rig'),
      right('Minutes'),
      right('of it hand trim'),
      right('Carrier'),
      left('Product'),
    ],
    rows: visits.map(({ work, minutes }) => [
      work.name,
      work.rigName,
      formatNumber(minutes),
      work.handTrimMin > 0 ? formatNumber(work.handTrimMin, 1) : '',
      work.volumeGal > 0 ? formatVolume(work.volumeGal, units) : '',
      work.products.map((each) => `${formatProductAmount(each.amount, each.unit, units)} ${each.name}`).join(', '),
    ]),
  };
}

/** Cost of each visit line by line, the price by the owner's steps, and what is left. */
export function costBlocks(quote: LawnQuote): readonly Block[] {
  const isBare = quote.price === null && quote.visits.every((each) => each.costDollars === 0);
  if (isBare) return [{ kind: 'note', text: NO_FIGURES }];
  return [
    { kind: 'heading', text: 'Cost and price' },
    {
      kind: 'table',
      columns: [left('Visit'), left('How it is reckoned'), right('Dollars')],
      rows: [...quote.visits.flatMap(visitRows), ...(quote.season === null ? [] : seasonRows(quote.season))],
    },
    ...priceBlock(quote),
    { kind: 'note', text: COST_RULE },
  ];
}

const NO_FIGURES = 'Neither wage nor miles nor prices are entered, so there is no cost and no price.';

const COST_RULE =
  "Wage, miles, product prices, price steps and overhead are the owner's own figures; what was not entered counts as nothing. A treatment is a visit of its own. Dollars are rounded for reading only.";

function visitRows(visit: VisitQuote): readonly TableRow[] {
  return [
    { look: 'stop', lead: [visit.work.name], text: '', tail: [formatMoney(visit.costDollars)] },
    ...visit.lines.map(moneyRow),
    ...marginRows(visit.marginDollars, visit.marginShare, 'of the price of a visit'),
    ...visit.work.remarks.map((each): TableRow => ({ look: 'detail', lead: [''], text: `Mind: ${each}` })),
  ];
}

function moneyRow({ what, arithmetic, dollars }: MoneyLine): TableRow {
  return { look: 'detail', lead: [what], text: arithmetic, tail: [formatMoney(dollars)] };
}

function marginRows(dollars: number | null, share: number | null, of: string): readonly TableRow[] {
  if (dollars === null) return [];
  const text = share === null ? '' : `${formatShare(share)} ${of}`;
  return [{ look: 'detail', lead: ['Margin'], text, tail: [formatMoney(dollars)] }];
}

function seasonRows(season: SeasonQuote): readonly TableRow[] {
  const visits = season.visits === 1 ? '1 visit' : `${season.visits} visits`;
  return [
    { look: 'stop', lead: [`Season, ${visits}`], text: '', tail: [formatMoney(season.cost.dollars)] },
    moneyRow(season.cost),
    ...(season.price === null ? [] : [moneyRow(season.price)]),
    ...marginRows(season.marginDollars, season.marginShare, 'of the price of a season'),
  ];
}

/** Price alone, for the customer as well. */
export function priceBlock({ price, season }: LawnQuote): readonly Block[] {
  if (price === null) return [];
  const facts = [{ label: 'Price per visit', value: formatMoney(price.dollars) }];
  if (season?.price) {
    facts.push({ label: 'Season', value: `${formatMoney(season.price.dollars)} (${season.visits} visits)` });
  }
  return [
    { kind: 'facts', facts },
    { kind: 'note', text: `Price per visit: ${price.lines.join('; ')}.` },
  ];
}

/** Treatments by name, for the customer. */
export function namesBlock({ visits }: LawnQuote): Block {
  return { kind: 'facts', facts: [{ label: 'Treatments', value: visits.map((each) => each.work.name).join(', ') }] };
}
