import type { Block } from './types.ts';

/** Engines of both kinds refuse tables of more than 100 places unless they are set up for more. */
const MOST_PLACES = 100;
const SIDE = MOST_PLACES / 2;

/**
 * The parts of a table that are to be asked for, each with at most 100 places: all of it, less the pairs among the first `known`
 * places, whose ways are known already.
 */
export function blocksFor(count: number, known = 0): readonly Block[] {
  const all = numbers(0, count);
  const fresh = numbers(known, count);
  return [...blocks(fresh, all), ...blocks(numbers(0, known), fresh)];
}

function blocks(sources: readonly number[], targets: readonly number[]): readonly Block[] {
  return pieces(sources).flatMap((rows) => pieces(targets).map((columns) => ({ sources: rows, targets: columns })));
}

function pieces(list: readonly number[]): readonly (readonly number[])[] {
  const count = Math.ceil(list.length / SIDE);
  return numbers(0, count).map((piece) => list.slice(piece * SIDE, (piece + 1) * SIDE));
}

function numbers(from: number, to: number): readonly number[] {
  return Array.from({ length: Math.max(0, to - from) }, (_, index) => from + index);
}
