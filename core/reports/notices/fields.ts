import type { Book } from '../../book/index.ts';
import type { PlanStop } from '../../plan/result/index.ts';
import type { Draft } from '../../records/index.ts';
import { formatArea } from '../../units/index.ts';
import { clockWord, dateWord } from '../words.ts';

/** What fields are filled from. */
export type NoticeFacts = { readonly book: Book; readonly draft: Draft; readonly stop: PlanStop };

/** What a field becomes; '' where it is not known. */
type Field = (facts: NoticeFacts) => string;

const ofVisit =
  (id: string): Field =>
  ({ draft }) => {
    const answer = draft.elements.find((each) => each.id === id)?.answer;
    return answer !== undefined && 'text' in answer ? answer.text : '';
  };

/** Of all products of the visit, each once; '' where one of them is not known. */
const ofProducts =
  (id: string): Field =>
  ({ draft }) => {
    const answers = draft.products.map((each) => each.elements.find((element) => element.id === id)?.answer);
    if (answers.some((each) => each?.kind === 'missing')) return '';
    return joined(answers.map((answer) => (answer !== undefined && 'text' in answer ? answer.text : '')));
  };

/** The fields that a text may have. A new one is a line here. */
const FIELDS: Readonly<Record<string, Field>> = {
  customer: ofVisit('customer'),
  'customer-address': ofVisit('customer-address'),
  address: ofVisit('address'),
  date: ({ book, draft }) => dateWord(book, draft.subject.on),
  time: ({ book, stop }) => clockWord(book, stop.arriveSec),
  treatments: ({ draft }) => joined(draft.products.map((product) => product.treatmentName)),
  products: ({ draft }) => joined(draft.products.map((product) => product.name)),
  types: ({ book, draft }) => {
    const types = draft.products.map(({ productId }) => book.products.find(({ id }) => id === productId)?.type ?? '');
    return types.some((type) => type.trim() === '') ? '' : joined(types);
  },
  registration: ofProducts('registration'),
  target: ofProducts('target'),
  reentry: ofProducts('reentry'),
  area: ({ book, stop }) => (stop.tasks.length === 0 ? '' : formatArea(groundOf(stop), book.units)),
  applicator: ofVisit('applicator'),
  certification: ofVisit('certification'),
  firm: ({ book }) => book.firm?.name ?? '',
  'firm-address': ({ book }) => book.firm?.address ?? '',
  phone: ({ book }) => book.firm?.phone ?? '',
  licence: ({ book }) => book.firm?.licence ?? '',
};

/** The names of all fields that the words of a notice may hold. */
export const FIELD_NAMES: readonly string[] = Object.keys(FIELDS);

/** The value of a field; null where there is no such field. */
export function fieldValue(name: string, facts: NoticeFacts): string | null {
  const field = Object.hasOwn(FIELDS, name) ? FIELDS[name] : undefined;
  return field === undefined ? null : field(facts).trim();
}

function joined(texts: readonly string[]): string {
  return [...new Set(texts.filter((text) => text.trim() !== ''))].join(', ');
}

/** Ground that is treated, every zone once: by the treatment that has most of it. ft2 */
function groundOf({ tasks }: PlanStop): number {
  const sums = new Map<string, Map<string, number>>();
  for (const { zoneId, treatmentId, step, areaSqFt } of tasks) {
    const zone = sums.get(zoneId) ?? new Map<string, number>();
    const key = `${treatmentId} ${step}`;
    zone.set(key, (zone.get(key) ?? 0) + areaSqFt);
    sums.set(zoneId, zone);
  }
  return [...sums.values()].reduce((sum, zone) => sum + Math.max(...zone.values()), 0);
}
