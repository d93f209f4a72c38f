import { describe, expect, it } from 'vitest';
import type { Compartment, Head, Machine } from '../../../core/book/index.ts';
import { drawnCompartment, joinedCompartments } from '../../../core/reach/index.ts';
import { byId, sampleBook } from './sample.ts';

const plain = byId(sampleBook().machines, 'heron');
const [ofTank, ofHopper] = plain.compartments;
if (ofTank?.kind !== 'tank' || ofHopper?.kind !== 'hopper') throw new Error('the sample has other compartments');
const tank = (id: string): Compartment => ({ ...ofTank, id });
const hopper = (id: string): Compartment => ({ ...ofHopper, id });
const seedBox = (id: string): Compartment => ({ ...ofHopper, kind: 'seed-box', id });
const head = (id: string, purpose: Head['purpose'], compartmentIds: readonly string[]): Head => ({
  ...byId(plain.heads, 'boom'),
  id,
  purpose,
  compartmentIds: [...compartmentIds],
});
const machine = (compartments: readonly Compartment[], heads: readonly Head[]): Machine => ({
  ...plain,
  compartments: [...compartments],
  heads: [...heads],
});

describe('the compartment that a head empties', () => {
  const rides = machine([tank('t'), seedBox('s'), hopper('h')], []);
  const drawn = (purpose: Head['purpose'], ids: readonly string[]) =>
    drawnCompartment(rides, head('one', purpose, ids))?.id;

  it('is of a kind that fits its work, the more fitting first', () => {
    const all = ['t', 's', 'h'];
    expect(drawn('spray', all)).toBe('t');
    expect(drawn('spread', all)).toBe('h');
    expect(drawn('seed', all)).toBe('s');
    expect(drawn('aerate', all)).toBeUndefined();
  });

  it('is the other kind for dry material where the first is not listed', () => {
    expect(drawn('spread', ['t', 's'])).toBe('s');
    expect(drawn('seed', ['t', 'h'])).toBe('h');
  });

  it('is one that the head lists, and none where it lists none of the kind', () => {
    expect(drawn('spray', ['s', 'h'])).toBeUndefined();
    expect(drawn('spread', ['t'])).toBeUndefined();
    expect(drawn('seed', [])).toBeUndefined();
  });
});

describe('compartments that run together', () => {
  const groups = (compartments: readonly Compartment[], heads: readonly Head[]) =>
    joinedCompartments(machine(compartments, heads)).map((group) => group.map(({ id }) => id));

  it('stand alone where no head draws on two', () => {
    expect(groups([tank('a'), tank('b')], [])).toEqual([['a'], ['b']]);
    expect(groups([tank('a'), tank('b')], [head('one', 'spray', ['a']), head('two', 'spray', ['b'])])).toEqual([
      ['a'],
      ['b'],
    ]);
    expect(groups([], [head('one', 'spray', ['a'])])).toEqual([]);
  });

  it('are those of one head, of one kind', () => {
    const all = [tank('a'), hopper('h'), tank('b'), tank('c')];
    expect(groups(all, [head('one', 'spray', ['a', 'b'])])).toEqual([['a', 'b'], ['h'], ['c']]);
    expect(groups(all, [head('one', 'spray', ['a', 'h'])])).toEqual([['a'], ['h'], ['b'], ['c']]);
    expect(groups(all, [head('one', 'aerate', [])])).toEqual([['a'], ['h'], ['b'], ['c']]);
  });

  it('are joined through a compartment that two heads share', () => {
    const heads = [head('one', 'spray', ['a', 'b']), head('two', 'spray', ['b', 'c'])];
    expect(groups([tank('a'), tank('b'), tank('c'), tank('d')], heads)).toEqual([['a', 'b', 'c'], ['d']]);
  });
});
