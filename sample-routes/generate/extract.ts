import type { Book } from '../../core/book/index.ts';
import { readRoads } from '../../core/roads/index.ts';

type Extract = NonNullable<NonNullable<Book['roads']>['extract']>;

/** What a book keeps of an extract: the same as the program writes down when it imports it. */
export async function extractOf(name: string, text: string): Promise<Extract> {
  const read = await readRoads(new TextEncoder().encode(text), { where: name });
  if (!read.ok) throw new Error(`${read.error.where}: ${read.error.detail}`);
  const { about, fingerprint } = read.value;
  return {
    name,
    attribution: about.attribution,
    licence: about.licence,
    hash: fingerprint,
    importedOn: '2026-11-27',
    roads: about.counts.roads,
    bounds: [...about.bounds] as [number, number, number, number],
  };
}
