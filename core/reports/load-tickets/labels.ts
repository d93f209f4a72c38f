import type { Book, Product } from '../../book/index.ts';
import { formatNumber, formatProductRate, formatRate, formatSpeed, formatTemperature } from '../../units/index.ts';
import type { Block } from '../blocks.ts';
import { LABEL } from '../texts/index.ts';

/** What the book has of the labels of some products; what is missing is said. */
export function labels(book: Book, productIds: readonly string[]): readonly Block[] {
  if (productIds.length === 0) return [];
  const facts = productIds.map((id) => {
    const product = book.products.find((each) => each.id === id);
    return { label: product?.name ?? id, value: product === undefined ? LABEL.missing : labelWords(product, book) };
  });
  return [
    { kind: 'subheading', text: LABEL.title },
    { kind: 'facts', facts, wide: true },
  ];
}

function labelWords({ label, unit }: Product, { units }: Book): string {
  const registration = label.registration === '' ? LABEL.noRegistration : LABEL.registration(label.registration);
  const rate = (galPer1000SqFt: number): string => formatRate(galPer1000SqFt, units);
  const warmth = (temperatureF: number): string => formatTemperature(temperatureF, units);
  const limits = [
    label.mostPerApplication === undefined ? '' : LABEL.most(formatProductRate(label.mostPerApplication, unit, units)),
    between(label.leastCarrierGalPer1000SqFt, label.mostCarrierGalPer1000SqFt, rate, {
      both: LABEL.carrier,
      least: LABEL.carrierLeast,
      most: LABEL.carrierMost,
    }),
    label.mostWindMph === undefined ? '' : LABEL.wind(formatSpeed(label.mostWindMph, units)),
    between(label.leastAirF, label.mostAirF, warmth, { both: LABEL.air, least: LABEL.airLeast, most: LABEL.airMost }),
    label.dryHours === undefined ? '' : LABEL.dry(formatNumber(label.dryHours)),
  ].filter((each) => each !== '');
  return [registration, ...(limits.length === 0 ? [LABEL.noLimits] : limits), label.note]
    .filter((each) => each !== '')
    .join('; ');
}

type Words = {
  readonly both: (least: string, most: string) => string;
  readonly least: (least: string) => string;
  readonly most: (most: string) => string;
};

function between(
  least: number | undefined,
  most: number | undefined,
  format: (value: number) => string,
  words: Words,
): string {
  if (least !== undefined && most !== undefined) return words.both(format(least), format(most));
  if (least !== undefined) return words.least(format(least));
  return most === undefined ? '' : words.most(format(most));
}
