import type { Book, Mix, Product } from '../../book/index.ts';
import type { PlanLoad } from '../../plan/result/index.ts';
import { formatMeasured, formatVolume, formatWithSmaller } from '../../units/index.ts';
import type { Block } from '../blocks.ts';
import { AGITATION, MIXING } from '../texts/index.ts';
import { materialWord } from '../words.ts';
import { mixAmounts } from './amounts.ts';

/** Dry products before liquid ones; whatever a label says about it goes first. Source: as the title of the list says. */
const RANK: Readonly<Record<Product['form'], number>> = { dry: 0, granular: 0, seed: 0, liquid: 1 };

/** The order of mixing as a list to tick off, with amounts. It begins with the labels, since they decide. */
export function mixingOrder(book: Book, load: PlanLoad, mix: Mix): Block {
  const { waterGal, products } = mixAmounts(load);
  const agitated = needsAgitation(book, mix);
  const rankOf = (id: string): number => RANK[book.products.find((each) => each.id === id)?.form ?? 'liquid'];
  const inOrder = products.toSorted((one, other) => rankOf(one.productId) - rankOf(other.productId));
  const added = inOrder.map(({ productId, amount, unit }) => {
    const smaller = formatWithSmaller(amount, unit, book.units);
    return MIXING.product(materialWord(book, productId), smaller || formatMeasured(amount, unit, book.units));
  });
  const items = [
    MIXING.labels,
    MIXING.half(formatVolume(waterGal / 2, book.units), agitated),
    ...(added.length === 0 ? [MIXING.noProducts] : added),
    MIXING.rest(agitated),
  ];
  return { kind: 'checklist', items };
}

/** Whether mix or labels ask for it, and whether the tank has it. */
export function agitationWord(book: Book, load: PlanLoad, mix: Mix): string {
  if (!needsAgitation(book, mix)) return AGITATION.notAsked;
  return isAgitated(book, load.compartmentId) ? AGITATION.on : AGITATION.missing;
}

function needsAgitation(book: Book, mix: Mix): boolean {
  const ids = new Set(mix.parts.map((part) => part.productId));
  return mix.needsAgitation || book.products.some((each) => ids.has(each.id) && each.label.needsAgitation);
}

function isAgitated(book: Book, compartmentId: string): boolean {
  const [ownerId, parts = ''] = compartmentId.split('/');
  const tanks = book.machines.find((each) => each.id === ownerId)?.compartments ?? [];
  const own = tanks.filter((each) => parts.split('+').includes(each.id));
  const from = book.handMethods.find((each) => each.id === compartmentId)?.drawsFrom;
  if (own.length === 0) return from !== undefined && 'agitated' in from && from.agitated;
  return own.every((each) => each.kind === 'tank' && each.agitated);
}
