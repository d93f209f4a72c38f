import type { Book, Mix, Product } from '../../book/index.ts';
import type { Block } from '../blocks.ts';

/** Dry products before liquid ones: common practice, no source. Whatever a label says about it goes first. */
const RANK: Readonly<Record<Product['form'], number>> = { dry: 0, granular: 0, seed: 0, liquid: 1 };

/** The order of mixing as a list to tick off. It begins with the labels, since they decide. */
export function mixingOrder(book: Book, mix: Mix): Block {
  const products = mix.parts.flatMap((part) => book.products.filter((each) => each.id === part.productId));
  const inOrder = [...products].sort((one, other) => RANK[one.form] - RANK[other.form]);
  const agitated = mix.needsAgitation || products.some((each) => each.label.needsAgitation);
  const added = inOrder.map((each) => each.name).join(', then ');
  return {
    kind: 'checklist',
    items: [
      'Labels first: an order or a wait that a label asks for stands above this list.',
      `Half the water${agitated ? ', agitation on' : ''}.`,
      `${added === '' ? 'The products' : added}; let each one disperse before the next (usual order, no source).`,
      `The rest of the water${agitated ? '; keep agitating until the tank is empty' : ''}. Rinse measures into the tank.`,
    ],
  };
}
