import { describe, expect, test } from 'vitest';
import type { Book, Property, Round } from '../../../../core/book/index.ts';
import { lawnsOf, zonesOf } from '../../../../core/round/programme/index.ts';
import { sampleBook } from '../../../support/samples.ts';

const sample = sampleBook('four-day-round');
const [round] = sample.rounds as readonly [Round];
const [template] = sample.properties as readonly [Property];

const AREAS: Readonly<Record<string, number>> = { a: 2000, b: 5000, c: 12_000 };
const areaOf = ({ id }: Property): number | null => AREAS[id] ?? null;
const lawn = (id: string, changes: Partial<Property>): Property => ({ ...template, id, name: id, ...changes });
const book: Book = {
  ...sample,
  properties: [
    lawn('a', { address: '12 Elm Court', tags: ['premium', 'Corner'] }),
    lawn('b', { address: '9 Oak Street', tags: ['basic'] }),
    lawn('c', { address: '14 elm court' }),
    lawn('d', { address: '1 Main Street', hold: { why: 'on-hold' } }),
  ],
};
const wish = (changes: Partial<Round>): Round => ({ ...round, propertyIds: 'all', skipped: [], ...changes });
const taken = (changes: Partial<Round>): string[] => lawnsOf(book, wish(changes), areaOf).taken.map((each) => each.id);
const why = (changes: Partial<Round>, id: string): string | undefined =>
  lawnsOf(book, wish(changes), areaOf).left.find((each) => each.property.id === id)?.words;

describe('the lawns of a round', () => {
  test('are all but those on hold where nothing is chosen; each lawn is in one list', () => {
    const { taken: own, left } = lawnsOf(book, wish({}), areaOf);
    expect(own.map((each) => each.id)).toEqual(['a', 'b', 'c']);
    expect(left).toMatchObject([{ code: 'on-hold', words: 'on hold' }]);
    expect(own.length + left.length).toBe(book.properties.length);
  });

  test('are chosen by tags, capitals or not', () => {
    expect(taken({ choice: { tags: ['corner', 'basic'] } })).toEqual(['a', 'b']);
    expect(taken({ choice: { withoutTags: ['PREMIUM'] } })).toEqual(['b', 'c']);
    expect(why({ choice: { tags: ['premium'] } }, 'c')).toBe('not tagged premium');
    expect(why({ choice: { tags: ['premium', 'basic'] } }, 'c')).toBe('tagged neither premium nor basic');
    expect(why({ choice: { withoutTags: ['basic'] } }, 'b')).toBe('tagged basic');
  });

  test('are chosen by a part of the address', () => {
    expect(taken({ choice: { address: 'Elm c' } })).toEqual(['a', 'c']);
    expect(why({ choice: { address: 'Elm' } }, 'b')).toBe('its address has no “Elm”');
    expect(taken({ choice: { address: '' } })).toEqual(['a', 'b', 'c']);
  });

  test('are chosen by size, at the limits too; an unknown size fits no limit', () => {
    expect(taken({ choice: { leastSqFt: 5000 } })).toEqual(['b', 'c']);
    expect(taken({ choice: { mostSqFt: 5000 } })).toEqual(['a', 'b']);
    expect(why({ choice: { leastSqFt: 5001 } }, 'b')).toBe('5,000 ft² to treat, less than 5,001 ft²');
    const unknown = lawnsOf(book, wish({ choice: { mostSqFt: 9e9 } }), () => null);
    expect(unknown.taken).toEqual([]);
    expect(unknown.left[0]?.words).toBe('its area is not known');
  });

  test('keep to every member of a choice at once', () => {
    expect(taken({ choice: { address: 'elm', leastSqFt: 3000 } })).toEqual(['c']);
  });

  test('are left out by the list, by hand, and by a hold to the last day', () => {
    expect(taken({ propertyIds: ['b', 'd'] })).toEqual(['b']);
    expect(why({ propertyIds: ['b'] }, 'a')).toBe('not among the lawns of the round');
    expect(why({ skipped: [{ propertyId: 'a', reason: 'sold' }] }, 'a')).toBe('sold');
    const dates = ['2027-04-05', '2027-04-06'];
    const until = (date: string): number =>
      lawnsOf({ ...book, properties: [lawn('h', { hold: { why: 'new', until: date } })] }, wish({ dates }), areaOf)
        .taken.length;
    expect([until('2027-04-05'), until('2027-04-06')]).toEqual([1, 0]);
  });
});

describe('the zones of a treatment', () => {
  const zones = template.zones.slice(0, 1).flatMap((zone) => [
    { ...zone, id: 'front', tags: ['Front'] },
    { ...zone, id: 'back', tags: ['shade'] },
    { ...zone, id: 'side' },
  ]);
  const property = lawn('a', { address: '12 Elm Court', zones });
  const ids = (only: Round['only'], treatmentId = 't'): string[] =>
    zonesOf(only === undefined ? {} : { only }, treatmentId, property, areaOf).map((each) => each.id);

  test('are all of them unless the round says otherwise of that treatment', () => {
    expect(ids(undefined)).toEqual(['front', 'back', 'side']);
    expect(ids([{ treatmentId: 'other', choice: { tags: ['front'] } }])).toEqual(['front', 'back', 'side']);
  });

  test('are chosen by their own tags, and the lawn by address and size', () => {
    expect(ids([{ treatmentId: 't', choice: { tags: ['front'] } }])).toEqual(['front']);
    expect(ids([{ treatmentId: 't', choice: { withoutTags: ['shade'] } }])).toEqual(['front', 'side']);
    expect(ids([{ treatmentId: 't', choice: { address: 'oak' } }])).toEqual([]);
    expect(ids([{ treatmentId: 't', choice: { leastSqFt: 2001 } }])).toEqual([]);
  });

  test('may fit one choice or another', () => {
    const only = [{ tags: ['front'] }, { tags: ['shade'] }].map((choice) => ({ treatmentId: 't', choice }));
    expect(ids(only)).toEqual(['front', 'back']);
  });
});
