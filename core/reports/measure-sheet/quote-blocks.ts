import type { Book } from '../../book/index.ts';
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
import { type Block, type Fact, left, right, type TableRow } from '../blocks.ts';
import { QUOTE } from '../texts/index.ts';
import { saidWord } from '../words.ts';

/** Which machine or hand method fits which zone, with the reason, for every treatment. */
export function fitBlocks({ visits }: LawnQuote, book: Book): readonly Block[] {
  const words = QUOTE.fit;
  return visits.map(({ work }): Block => {
    const rows = work.zones.flatMap((zone): readonly TableRow[] =>
      zone.fits.map((fit, index) => [
        index === 0 ? zone.zoneName : '',
        fit.name,
        fit.answer.can ? (fit === zone.chosen ? words.quickest : words.yes) : words.no,
        fit.minutes === null ? '' : words.min(formatNumber(fit.minutes, 1)),
        fit.trim === null ? '' : words.min(formatNumber(fit.trim.minutes, 1)),
        becauseOf(fit, book),
      ]),
    );
    const heading: Block = { kind: 'heading', text: words.title(work.name) };
    if (rows.length === 0) {
      return { kind: 'group', blocks: [heading, { kind: 'note', text: words.nothing }] };
    }
    const columns = [
      left(words.zone),
      left(words.with),
      left(words.fits),
      right(words.minutes),
      right(words.trim),
      left(words.because),
    ];
    return { kind: 'group', blocks: [heading, { kind: 'table', columns, rows }] };
  });
}

function becauseOf({ answer, trim, notReachedSqFt }: MethodFit, book: Book): string {
  const { units } = book;
  return [
    saidWord(book, answer.words),
    ...(trim === null ? [] : [QUOTE.fit.trimmed(formatArea(trim.areaSqFt, units), trim.name)]),
    ...(notReachedSqFt > 0 ? [QUOTE.fit.notReached(formatArea(notReachedSqFt, units))] : []),
  ].join('; ');
}

/** What each treatment takes: minutes, carrier, products. */
export function takesBlock({ visits }: LawnQuote, units: UnitSystem): Block {
  const words = QUOTE.takes;
  return {
    kind: 'table',
    columns: [
      left(words.treatment),
      left(words.rig),
      right(words.minutes),
      right(words.trim),
      right(words.carrier),
      left(words.product),
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
  if (isBare) return [{ kind: 'note', text: QUOTE.costs.noFigures }];
  return [
    { kind: 'heading', text: QUOTE.costs.title },
    {
      kind: 'table',
      columns: [left(QUOTE.costs.visit), left(QUOTE.costs.how), right(QUOTE.costs.dollars)],
      rows: [...quote.visits.flatMap(visitRows), ...(quote.season === null ? [] : seasonRows(quote.season))],
    },
    ...priceBlock(quote),
    { kind: 'note', text: QUOTE.costs.rule },
  ];
}

function visitRows(visit: VisitQuote): readonly TableRow[] {
  return [
    { look: 'stop', lead: [visit.work.name], text: '', tail: [formatMoney(visit.costDollars)] },
    ...visit.lines.map(moneyRow),
    ...marginRows(visit.marginDollars, visit.marginShare, QUOTE.costs.ofVisit),
    ...visit.work.remarks.map((each): TableRow => ({ look: 'detail', lead: [''], text: QUOTE.costs.mind(each) })),
  ];
}

function moneyRow({ what, arithmetic, dollars }: MoneyLine): TableRow {
  return { look: 'detail', lead: [what], text: arithmetic, tail: [formatMoney(dollars)] };
}

function marginRows(dollars: number | null, share: number | null, of: string): readonly TableRow[] {
  if (dollars === null) return [];
  const text = share === null ? '' : `${formatShare(share)} ${of}`;
  return [{ look: 'detail', lead: [QUOTE.costs.margin], text, tail: [formatMoney(dollars)] }];
}

function seasonRows(season: SeasonQuote): readonly TableRow[] {
  const visits = QUOTE.costs.visits(season.visits);
  return [
    { look: 'stop', lead: [QUOTE.costs.season(visits)], text: '', tail: [formatMoney(season.cost.dollars)] },
    moneyRow(season.cost),
    ...(season.price === null ? [] : [moneyRow(season.price)]),
    ...marginRows(season.marginDollars, season.marginShare, QUOTE.costs.ofSeason),
  ];
}

/** Price alone, for the customer as well. */
export function priceBlock({ price, season }: LawnQuote): readonly Block[] {
  if (price === null) return [];
  const facts: Fact[] = [{ label: QUOTE.price.perVisit, value: formatMoney(price.dollars) }];
  if (season?.price) {
    facts.push({
      label: QUOTE.price.season,
      value: QUOTE.price.seasonPrice(formatMoney(season.price.dollars), season.visits),
    });
  }
  return [
    { kind: 'facts', facts },
    { kind: 'note', text: QUOTE.price.steps(price.lines.join('; ')) },
  ];
}

/** Treatments by name, for the customer. */
export function namesBlock({ visits }: LawnQuote): Block {
  return {
    kind: 'facts',
    facts: [{ label: QUOTE.treatments, value: visits.map((each) => each.work.name).join(', ') }],
  };
}
