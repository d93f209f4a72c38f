import type { ApplicationRecord, Book } from '../../book/index.ts';
import { type Draft, elementWords, type Filled, type Missing, missingOf, productName } from '../../records/index.ts';
import type { Block, Fact } from '../blocks.ts';
import { RECORDS } from '../texts/index.ts';
import { dateWord } from '../words.ts';

/** "Kept in the book: version 2, written ...". */
export function keptWords(book: Book, { version, writtenAt, writtenBy, why, withdrawn }: ApplicationRecord): string {
  if (withdrawn === true) return RECORDS.withdrawn(why);
  const [date = '', time = ''] = writtenAt.split('T');
  return `${RECORDS.kept(version, dateWord(book, date), time, writtenBy)}${why === '' ? '' : RECORDS.because(why)}`;
}

/** What a version says, in its own words. */
export function keptBlocks({ elements, products }: ApplicationRecord): readonly Block[] {
  return recordBlocks(
    elements.map(keptFact),
    products.map((product) => ({
      title: productName(product),
      facts: product.elements.map(keptFact),
    })),
  );
}

function keptFact({ id, text, from }: ApplicationRecord['elements'][number]): Fact {
  const label = elementWords(id);
  if (from === 'missing') return { label, value: RECORDS.missingValue };
  if (from === 'planned') return { label, value: RECORDS.asPlanned(text) };
  return { label, value: from === 'hand' ? RECORDS.byHand(text) : text };
}

/** What a draft says. */
export function draftBlocks({ elements, products, isWritten }: Draft): readonly Block[] {
  return recordBlocks(
    elements.flatMap((each) => (isOnSite(each, isWritten) ? onSiteFact(each) : draftFact(each))),
    products.map(({ name, treatmentName, elements: own }) => ({
      title: RECORDS.product(name, treatmentName),
      facts: own.flatMap(draftFact),
    })),
  );
}

function draftFact({ words: label, answer }: Filled): readonly Fact[] {
  switch (answer.kind) {
    case 'known':
      return [{ label, value: answer.text }];
    case 'hand':
      return [{ label, value: RECORDS.byHand(answer.text) }];
    case 'planned':
      return [{ label, value: RECORDS.asPlanned(answer.text) }];
    case 'missing':
      return [{ label, value: RECORDS.missingValue }];
    case 'not-asked':
      return [];
  }
}

function recordBlocks(
  facts: readonly Fact[],
  products: readonly { readonly title: string; readonly facts: readonly Fact[] }[],
): readonly Block[] {
  return [
    { kind: 'facts', facts },
    ...products.map(
      (each): Block => ({
        kind: 'group',
        blocks: [
          { kind: 'heading', text: each.title },
          { kind: 'facts', facts: each.facts },
        ],
      }),
    ),
    ...(products.length === 0 ? [{ kind: 'note' as const, text: RECORDS.noProduct }] : []),
  ];
}

/** Found out on site alone: on a record that is still to be filled in there is room to write instead. */
const ON_SITE: readonly string[] = ['helpers', 'wind-speed', 'wind-from', 'temperature', 'sky'];

function isOnSite({ id, answer }: Pick<Filled, 'id' | 'answer'>, isWritten: boolean): boolean {
  return !isWritten && answer.kind === 'missing' && ON_SITE.includes(id);
}

function onSiteFact({ words }: Filled): readonly Fact[] {
  return [{ label: words, value: RECORDS.onSite }];
}

/** What a record that is still to be filled in lacks in the book: what is planned or found out on site is not yet missing. */
export function missingInBook(draft: Draft): readonly Missing[] {
  const isStillToCome = ({ id, answer }: Filled): boolean =>
    answer.kind === 'planned' || isOnSite({ id, answer }, draft.isWritten);
  const keep = (elements: readonly Filled[]): readonly Filled[] => elements.filter((each) => !isStillToCome(each));
  return missingOf({
    ...draft,
    elements: keep(draft.elements),
    products: draft.products.map((each) => ({ ...each, elements: keep(each.elements) })),
  });
}

/** One line for each element, with all the products that lack it alike. */
export function missingBlocks(missing: readonly Missing[]): readonly Block[] {
  if (missing.length === 0) return [];
  const lines = new Map<string, { readonly first: Missing; readonly products: string[] }>();
  for (const each of missing) {
    const key = JSON.stringify([each.elementId, each.lacks]);
    const line = lines.get(key) ?? { first: each, products: [] };
    if (each.product !== '') line.products.push(each.product);
    lines.set(key, line);
  }
  const items = [...lines.values()].map(({ first: { words, lacks, askedBy }, products }) => {
    const asked = askedBy === '' ? '' : RECORDS.missing.askedBy(askedBy);
    return `${RECORDS.missing.item(RECORDS.ofProduct(words, [...new Set(products)].join(', ')), lacks)}${asked}`;
  });
  return [{ kind: 'cautions', title: RECORDS.missing.title, items }];
}
