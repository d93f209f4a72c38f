import { expect, test } from 'vitest';
import type { Book } from '../../../../core/book/index.ts';
import { whoCanGo } from '../../../../core/plan/board/index.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';

const drawn = sampleBook('mixed-day');
// Stated areas need no passes, which take a while to reckon.
const sample: Book = {
  ...drawn,
  properties: drawn.properties.map((property) => ({
    ...property,
    zones: property.zones.map((zone, at) => ({ ...zone, shape: { kind: 'stated', areaSqFt: 4000 + at, method: '' } })),
  })),
};
const [round] = sample.rounds;
const [first = '', second = ''] = round?.treatmentIds ?? [];

/** The sample with the first treatment on zones tagged "shade" alone: the first zone of every second lawn. */
function onlyInShade(): Book {
  if (round === undefined) throw new Error('the sample has no round');
  return {
    ...sample,
    properties: sample.properties.map((property, at) => ({
      ...property,
      zones: property.zones.map((zone, index) => (at % 2 === 0 && index === 0 ? { ...zone, tags: ['shade'] } : zone)),
    })),
    rounds: [{ ...round, only: [{ treatmentId: first, choice: { tags: ['shade'] } }] }],
  };
}

/** Zones that the problem of a round has work for, by lawn: found by other code than the table. */
function workedZones(book: Book, treatmentId: string): ReadonlyMap<string, number> {
  const zones = new Map<string, Set<string>>();
  for (const task of problemOf(book).tasks) {
    if (task.treatmentId !== treatmentId) continue;
    zones.set(task.propertyId, (zones.get(task.propertyId) ?? new Set()).add(task.zoneId));
  }
  return new Map([...zones].map(([id, found]) => [id, found.size]));
}

test('has only the lawns and zones that the round gives the treatment to', () => {
  const book = onlyInShade();
  const table = whoCanGo(book, book.rounds[0]?.id ?? '', first);
  const everywhere = whoCanGo(sample, round?.id ?? '', first);
  const worked = workedZones(book, first);
  expect(worked.size).toBe(8);
  expect(table?.rows.map((row) => row.propertyId)).toEqual([...worked.keys()]);
  for (const row of table?.rows ?? []) {
    const all = everywhere?.rows.find((each) => each.propertyId === row.propertyId);
    const zones = sample.properties.find((each) => each.id === row.propertyId)?.zones.length ?? 0;
    expect(worked.get(row.propertyId)).toBe(1);
    if (zones > 1) expect(row.treatedSqFt).toBeLessThan(all?.treatedSqFt ?? 0);
    else expect(row.treatedSqFt).toBe(all?.treatedSqFt);
  }
});

test('has every lawn and zone for a treatment that the round does not narrow', () => {
  const book = onlyInShade();
  expect(whoCanGo(book, book.rounds[0]?.id ?? '', second)).toEqual(whoCanGo(sample, round?.id ?? '', second));
});
