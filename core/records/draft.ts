import type { Applicator, Book, Visit } from '../book/index.ts';
import { visitAsPlanned } from '../plan/live/index.ts';
import type { PlanDay } from '../plan/result/index.ts';
import { appliedOf } from './applied.ts';
import { PRODUCT_ELEMENTS } from './product-elements.ts';
import type { Applied, Draft, Filled, FilledProduct, RecordElement, RecordSubject, VisitFacts } from './types.ts';
import { VISIT_ELEMENTS } from './visit-elements.ts';

/**
 * The record of one visit as it would be written now: filled from the book and from what was written down, and from the plan where
 * nothing was. What is missing is named, never made up.
 *
 * @param of a subject, or a visit
 * @param day the planned day of the rig; null where no plan is at hand
 * @returns null where the lawn was left out, or where there is neither a visit nor a planned stop
 */
export function draftRecord(book: Book, of: RecordSubject, day: PlanDay | null): Draft | null {
  const subject = { propertyId: of.propertyId, on: of.on, roundId: of.roundId, rigId: of.rigId };
  const isOfDay = day !== null && day.date === subject.on && day.rigId === subject.rigId;
  const stop = isOfDay ? day.stops.find((each) => each.propertyId === subject.propertyId) : undefined;
  const written = visitOf(book, subject);
  if (written?.outcome.kind === 'skipped') return null;
  const visit = written ?? (stop && isOfDay ? visitAsPlanned(book, 'planned', subject.roundId, day, stop) : null);
  if (visit === null) return null;
  const applicator = applicatorOf(book, visit);
  const facts: VisitFacts = {
    book,
    subject,
    property: book.properties.find((each) => each.id === subject.propertyId),
    visit,
    isWritten: written !== undefined,
    stop,
    applicator,
    certified: certifiedOf(book, visit, applicator),
  };
  return {
    subject,
    isWritten: facts.isWritten,
    elements: VISIT_ELEMENTS.map((each) => filled(each, facts)),
    products: appliedOf(book, visit, facts.isWritten).map((each) => filledProduct(facts, each)),
  };
}

/** What was written down of this work. */
export function visitOf(book: Book, { propertyId, on, roundId, rigId }: RecordSubject): Visit | undefined {
  return book.visits.find(
    (each) => each.propertyId === propertyId && each.on === on && each.roundId === roundId && each.rigId === rigId,
  );
}

/** The one of the visit; else the only one that the rig has. */
function applicatorOf(book: Book, { applicatorId, rigId }: Visit): Applicator | null {
  if (applicatorId !== undefined) return book.applicators.find((each) => each.id === applicatorId) ?? null;
  const own = book.applicators.filter((each) => each.rigIds?.includes(rigId) === true);
  return own.length === 1 ? (own[0] ?? null) : null;
}

/** Who applied, unless it is said that this person is not certified; then who supervised. */
function certifiedOf(book: Book, { supervisorId }: Visit, applicator: Applicator | null): Applicator | null {
  const supervisor = book.applicators.find((each) => each.id === supervisorId);
  return supervisor ?? (applicator?.certified === false ? null : applicator);
}

function filled<Facts>({ fill, ...element }: RecordElement<Facts>, facts: Facts): Filled {
  return { ...element, answer: fill(facts) };
}

function filledProduct(facts: VisitFacts, applied: Applied): FilledProduct {
  const { treatmentId, productId, zoneIds, amount, areaSqFt } = applied;
  const product = facts.book.products.find((each) => each.id === productId);
  const treatment = facts.book.treatments.find((each) => each.id === treatmentId);
  return {
    treatmentId,
    productId,
    zoneIds,
    amount,
    areaSqFt,
    name: product?.name ?? productId,
    treatmentName: treatment?.name ?? treatmentId,
    ...(product === undefined ? {} : { unit: product.unit }),
    elements: PRODUCT_ELEMENTS.map((each) => filled(each, { facts, applied, product, treatment })),
  };
}
