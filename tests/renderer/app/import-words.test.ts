import { describe, expect, test } from 'vitest';
import { nothingToTake, takeWords } from '../../../renderer/app/import/words.ts';
import { boxShape, emptyOne, layerOf, look, sourceOf, taken } from '../../core/intake/sources.ts';

const lawn = (id: string, west: number, size = 50) => ({ id, geometry: boxShape(west, 0, west + size, 50) });

describe('the button that imports', () => {
  const first = look(sourceOf(layerOf([lawn('a', 0), lawn('b', 100)])));
  const book = taken(emptyOne(), first);

  test('says what it does', () => {
    expect(takeWords(first)).toBe('Add 2 lawns');
    expect(takeWords(look(sourceOf(layerOf([lawn('a', 0, 60)])), book))).toBe('Change 1 lawn');
    expect(takeWords(look(sourceOf(layerOf([lawn('a', 0, 60), lawn('c', 200)])), book))).toBe('Add 1, change 1');
  });

  test('says why it does nothing', () => {
    expect(nothingToTake(null)).toContain('not been looked at');
    expect(nothingToTake(first)).toBeNull();
    expect(nothingToTake(look(sourceOf(layerOf([lawn('a', 0)])), book))).toContain('changes nothing');
    expect(nothingToTake(look(sourceOf(layerOf([{ geometry: null }]))))).toContain('rejected');
  });
});
