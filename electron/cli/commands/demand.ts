import { err, type Issue, ok, type Result } from '../../../core/base/index.ts';
import type { Book, Round } from '../../../core/book/index.ts';
import {
  bagsNeeded,
  demandFor,
  intervalIssues,
  totalDemand,
  yearLimitIssues,
  type ZoneDemand,
} from '../../../core/demand/index.ts';
import { bandAreaSqFt, measureProperty } from '../../../core/measure/index.ts';
import {
  formatArea,
  formatLargeArea,
  formatMoney,
  formatProductAmount,
  formatVolume,
  formatWeight,
} from '../../../core/units/index.ts';
import { type Answer, type Command, fileOf } from '../command.ts';
import { type BookInput, propertiesOf, readBookFile, roundOf, treatmentsOf, withZonesOf } from '../input/index.ts';
import type { DemandOutput } from '../output/index.ts';
import { type Column, issueLines, tableLines } from '../text/index.ts';

export const demandCommand: Command = {
  name: 'demand',
  summary: 'Works out water, product and pounds for every zone of a round, and what to buy.',
  details: [
    'Rates come from the mixes and treatments of the book; the program never supplies one. A rate that breaks a limit of a label as entered gives an error in the issues and no demand.',
  ],
  operands: [{ name: 'BOOK', words: 'book file or its JSON form' }],
  options: [{ name: 'round', value: 'ID', words: 'round of the book (the first one unless told)' }],
  schema: 'demand',
  example: 'npx swardway demand sample-routes/mixed-day.json',
  run: async (typed) => {
    const read = await readBookFile(fileOf(typed, 'BOOK'));
    if (!read.ok) return read;
    const round = roundOf(read.value.book, read.value.where, typed.options.round);
    return round.ok ? answerOf(read.value, round.value) : round;
  },
};

function answerOf({ book, where, issues }: BookInput, round: Round): Result<Answer> {
  const gathered = gather(book, round);
  if (gathered.demands.length === 0) return nothing(where, round, gathered.issues);
  const json = outputOf(book, round, gathered.demands, [...issues, ...gathered.issues]);
  return ok({ json, text: () => textOf(book, json), remarks: issueLines(json.issues) });
}

function nothing(where: string, round: Round, issues: readonly Issue[]): Result<never> {
  const broken = issues.find((each) => each.severity === 'error');
  const place = `${where}, round ${round.name === '' ? round.id : round.name}`;
  if (broken?.code === 'label-limit-broken') {
    return err(
      'label-limit-broken',
      `${where}, ${broken.where}`,
      broken.message,
      'Lower the rate, or correct the limit.',
    );
  }
  return err(
    'nothing-to-do',
    place,
    `The round takes nothing${broken === undefined ? '' : `: ${broken.where}: ${broken.message}`}.`.replace('..', '.'),
    'Add properties with zones to the round, or take fewer of them out of it.',
  );
}

type Gathered = { readonly demands: readonly ZoneDemand[]; readonly issues: readonly Issue[] };

function gather(book: Book, round: Round): Gathered {
  const demands: ZoneDemand[] = [];
  const issues: Issue[] = [];
  for (const property of propertiesOf(book, round)) {
    const measure = measureProperty(property);
    issues.push(...measure.issues);
    for (const zoneMeasure of measure.zones) {
      const zone = property.zones.find((each) => each.id === zoneMeasure.zoneId);
      if (zone === undefined) continue;
      for (const treatment of treatmentsOf(book, round)) {
        if (!withZonesOf(property, round, treatment.id).zones.includes(zone)) continue;
        const { coverage } = treatment;
        const bandSqFt =
          coverage.kind === 'band' ? bandAreaSqFt(property, zone, coverage.widthFt, coverage.along) : null;
        const result = demandFor({ book, property, zone, zoneMeasure, treatment, bandSqFt });
        demands.push(...result.demands);
        issues.push(...result.issues);
      }
    }
  }
  issues.push(...yearLimitIssues(book.products, demands), ...intervalIssues(book.products, demands));
  const unlike = new Map(issues.map((each) => [`${each.code} ${each.where} ${each.message}`, each]));
  return { demands, issues: [...unlike.values()] };
}

function outputOf(
  book: Book,
  round: Round,
  demands: readonly ZoneDemand[],
  issues: DemandOutput['issues'],
): DemandOutput {
  const totals = totalDemand(demands);
  return {
    format: 'swardway-demand',
    version: 1,
    bookId: book.id,
    roundId: round.id,
    demands: demands.map((each) => {
      const property = book.properties.find(({ id }) => id === each.propertyId);
      return {
        propertyId: each.propertyId,
        propertyName: property?.name ?? each.propertyId,
        zoneId: each.zoneId,
        zoneName: property?.zones.find(({ id }) => id === each.zoneId)?.name ?? each.zoneId,
        treatmentId: each.treatmentId,
        treatmentName: book.treatments.find(({ id }) => id === each.treatmentId)?.name ?? each.treatmentId,
        step: each.step,
        what: each.what,
        materialId: each.materialId,
        treatedSqFt: each.treatedSqFt,
        volumeGal: each.volumeGal,
        weightLb: each.weightLb,
        products: each.products,
        passes: each.passes,
      };
    }),
    totals: {
      treatedSqFt: totals.treatedSqFt,
      volumeGal: totals.volumeGal,
      weightLb: totals.weightLb,
      products: totals.products.map(({ productId, amount, unit }) => {
        const product = book.products.find(({ id }) => id === productId);
        const pounds = unit === 'oz' ? amount / 16 : amount;
        const bags = product?.bagLb === undefined || unit === 'fl-oz' ? null : bagsNeeded(pounds, product.bagLb);
        const costUsd = amount * (product?.pricePerUnit ?? 0);
        return { productId, name: product?.name ?? productId, amount, unit, bags, costUsd };
      }),
    },
    issues,
  };
}

type Demand = DemandOutput['demands'][number];
type Total = DemandOutput['totals']['products'][number];

function textOf(book: Book, output: DemandOutput): string {
  const productName = (id: string): string => book.products.find((each) => each.id === id)?.name ?? id;
  const columns: readonly Column<Demand>[] = [
    { title: 'property', cell: (row) => row.propertyName },
    { title: 'zone', cell: (row) => row.zoneName },
    { title: 'treatment', cell: (row) => row.treatmentName },
    { title: 'to treat', cell: (row) => formatArea(row.treatedSqFt), right: true },
    { title: 'spray', cell: (row) => (row.volumeGal === 0 ? '' : formatVolume(row.volumeGal)), right: true },
    { title: 'dry', cell: (row) => (row.weightLb === 0 ? '' : formatWeight(row.weightLb)), right: true },
    {
      title: 'products',
      cell: (row) =>
        row.products
          .map((each) => `${productName(each.productId)} ${formatProductAmount(each.amount, each.unit)}`)
          .join('; '),
    },
  ];
  const buy: readonly Column<Total>[] = [
    { title: 'to buy', cell: (row) => row.name },
    { title: 'amount', cell: (row) => formatProductAmount(row.amount, row.unit), right: true },
    { title: 'bags', cell: (row) => (row.bags === null ? '' : String(row.bags)), right: true },
    { title: 'price', cell: (row) => (row.costUsd === 0 ? '' : formatMoney(row.costUsd)), right: true },
  ];
  const { treatedSqFt, volumeGal, weightLb, products } = output.totals;
  return [
    ...tableLines(columns, output.demands),
    '',
    ...(products.length === 0 ? [] : [...tableLines(buy, products), '']),
    `Together ${formatLargeArea(treatedSqFt)}, ${formatVolume(volumeGal)} of spray, ${formatWeight(weightLb)} dry`,
    ...(book.invented ? ['Invented data, not for use.'] : []),
  ].join('\n');
}
