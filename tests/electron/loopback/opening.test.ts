import { expect, test } from 'vitest';
import { createOpening } from '../../../electron/loopback/opening.ts';

test('the code is given for the token once', () => {
  const opening = createOpening('the token');
  expect(Buffer.from(opening.code, 'base64url')).toHaveLength(32);
  for (const wrong of ['', 'x', opening.code.slice(1), `${opening.code}=`]) expect(opening.redeem(wrong)).toBeNull();
  expect(opening.redeem(opening.code)).toBe('the token');
  expect(opening.redeem(opening.code)).toBeNull();
});

test('the code is of no use after a minute', () => {
  let now = 1000;
  const opening = createOpening('the token', () => now);
  now += 60_001;
  expect(opening.redeem(opening.code)).toBeNull();
});
