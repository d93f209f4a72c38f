import { expect, test } from 'vitest';
import { joinBytes } from '../../../core/base/index.ts';

test('pieces are joined in order, empty ones and none at all included', () => {
  expect(joinBytes([])).toEqual(new Uint8Array());
  expect(joinBytes([Uint8Array.of(1, 2), new Uint8Array(), Uint8Array.of(3)])).toEqual(Uint8Array.of(1, 2, 3));
});
