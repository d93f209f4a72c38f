import type { Book, Head, HeadPasses, Property } from '../../../../core/book/index.ts';
import { sampleBook } from '../../../support/samples.ts';
import { ringAt } from '../../geometry/shapes.ts';

export const FEET = 0.3048;
export const PASSES: HeadPasses = { overlapFt: 0.5, trimPasses: 1, turnSec: 4 };

export function withHeads(book: Book, change: (head: Head) => Partial<Head>): Book {
  const machines = book.machines.map((machine) => ({
    ...machine,
    heads: machine.heads.map((head) => ({ ...head, ...change(head) })),
  }));
  return { ...book, machines };
}

const UNDRIVEN: Book = {
  ...sampleBook('residential-day'),
  machines: sampleBook('residential-day').machines.map((machine) => ({
    ...machine,
    heads: machine.heads.map(({ passes: _, ...head }) => head),
  })),
};

/** The first property of the residential day as the only one, its one zone a rectangle of so many feet. */
export function oneLawn(wideFt: number, highFt: number, change: Partial<Property['zones'][number]> = {}): Book {
  const book = UNDRIVEN;
  const [property] = book.properties;
  const [zone] = property!.zones;
  const [w, h] = [wideFt * FEET, highFt * FEET];
  const ring = ringAt(property!.parking, [
    [5, 5],
    [5 + w, 5],
    [5 + w, 5 + h],
    [5, 5 + h],
  ]);
  const lawn = { ...zone!, gateIds: [], shape: { kind: 'drawn', geometry: { type: 'Polygon', coordinates: [ring] } } };
  const { hosePathFt: _, hoseStand: __, ...plain } = lawn;
  const zones = [{ ...plain, ...change } as Property['zones'][number]];
  const rounds = book.rounds.map((round) => ({ ...round, propertyIds: 'all' as const, skipped: [] }));
  return { ...book, properties: [{ ...property!, exclusions: [], zones }], rounds };
}

export const DRIVEN = (book: Book, passes: HeadPasses = PASSES): Book => withHeads(book, () => ({ passes }));
export const withoutTools = (book: Book): Book => ({
  ...book,
  rigs: book.rigs.map((rig) => ({ ...rig, handMethodIds: [] })),
});
