import type { Book, Choice, Property, Round, Zone } from '../../book/index.ts';
import { holdWords } from '../calendar/index.ts';
import { type AreaOf, placeWhy, tagsWhy } from './choice.ts';

/** Why a lawn is in no visit of a round. */
export type LeftOut = {
  readonly property: Property;
  readonly code: 'not-listed' | 'skipped' | 'on-hold' | 'not-chosen';
  readonly words: string;
};

/** The lawns of a book as a round has them: each is in one of the two lists, in the order of the book. */
export type RoundLawns = { readonly taken: readonly Property[]; readonly left: readonly LeftOut[] };

/** What decides which lawns are in a round. */
export type LawnsWish = Pick<Round, 'propertyIds' | 'skipped' | 'choice' | 'dates'>;

/**
 * Which lawns a round is for, and why the others are left out: lawns that its list does not have, that were skipped by hand, that are on
 * hold to its last day, or that its choice does not fit. A hold that ends before the last day closes days, not the lawn.
 */
export function lawnsOf(book: Book, round: LawnsWish, areaOf: AreaOf): RoundLawns {
  const wanted = round.propertyIds === 'all' ? null : new Set(round.propertyIds);
  const skipped = new Map(round.skipped.map((each) => [each.propertyId, each.reason]));
  const last = round.dates.toSorted().at(-1) ?? '';
  const taken: Property[] = [];
  const left: LeftOut[] = [];
  for (const property of book.properties) {
    const why = whyLeft(property, { wanted, skipped, last, choice: round.choice, areaOf });
    if (why === null) taken.push(property);
    else left.push({ property, ...why });
  }
  return { taken, left };
}

type Question = {
  readonly wanted: ReadonlySet<string> | null;
  readonly skipped: ReadonlyMap<string, string>;
  readonly last: string;
  readonly choice: Choice | undefined;
  readonly areaOf: AreaOf;
};

function whyLeft(property: Property, question: Question): Omit<LeftOut, 'property'> | null {
  const { wanted, skipped, last, choice, areaOf } = question;
  if (wanted !== null && !wanted.has(property.id))
    return { code: 'not-listed', words: 'not among the lawns of the round' };
  const reason = skipped.get(property.id);
  if (reason !== undefined) return { code: 'skipped', words: reason === '' ? 'taken out by hand' : reason };
  const { hold } = property;
  if (hold !== undefined && (hold.until === undefined || hold.until >= last))
    return { code: 'on-hold', words: holdWords(hold) };
  if (choice === undefined) return null;
  const words = tagsWhy(choice, property.tags ?? []) || placeWhy(choice, property, areaOf);
  return words === '' ? null : { code: 'not-chosen', words };
}

/**
 * The zones of a property that get a treatment of a round: all of them, unless the round gives the treatment to some only. Of several
 * choices for one treatment one has to fit: zones by their own tags, the property by its address and size.
 */
export function zonesOf(
  { only }: Pick<Round, 'only'>,
  treatmentId: string,
  property: Property,
  areaOf: AreaOf,
): readonly Zone[] {
  const choices = only?.filter((each) => each.treatmentId === treatmentId) ?? [];
  if (choices.length === 0) return property.zones;
  const fitting = choices.filter(({ choice }) => placeWhy(choice, property, areaOf) === '');
  return property.zones.filter((zone) => fitting.some(({ choice }) => tagsWhy(choice, zone.tags ?? []) === ''));
}

/** What is known of the zones of a property, without those that a treatment of a round is not for. */
export function ofAskedZones<Known extends { readonly zones: readonly { readonly zoneId: string }[] }>(
  known: Known,
  round: Pick<Round, 'only'>,
  treatmentId: string,
  property: Property,
  areaOf: AreaOf,
): Known {
  const asked = new Set(zonesOf(round, treatmentId, property, areaOf).map((zone) => zone.id));
  return { ...known, zones: known.zones.filter((zone) => asked.has(zone.zoneId)) };
}
