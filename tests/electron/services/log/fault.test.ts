import { expect, test } from 'vitest';
import { faultDetail } from '../../../../electron/services/log/index.ts';

test('of an exception its kind, code and places are kept; its words and the folders are not', () => {
  const read = (): unknown => JSON.parse('Secret Lane');
  let thrown: unknown;
  try {
    read();
  } catch (error) {
    thrown = error;
  }
  // Node quotes the text in the words of this error.
  expect(String(thrown)).toContain('Secret');
  const detail = faultDetail(thrown);
  expect(detail.fault).toBe('SyntaxError');
  expect(detail.at).toContain('fault.test.ts:');
  expect(JSON.stringify(detail)).not.toContain('Secret');
  expect(JSON.stringify(detail)).not.toMatch(/[\\/]log[\\/]/);
});

test('a code is kept, and what is no error is told by its type', () => {
  expect(faultDetail(Object.assign(new Error('x'), { code: 'EIO', stack: '' }))).toEqual({
    fault: 'Error',
    code: 'EIO',
    at: '',
  });
  expect(faultDetail('12 Secret Lane')).toEqual({ fault: 'string' });
});

test('places of Windows and of nameless functions are read', () => {
  const stack = 'Error: x\n    at Object.run (C:\\Users\\bob\\app\\cli.cjs:10:5)\n    at /home/bob/app/main.cjs:3:1';
  expect(faultDetail(Object.assign(new Error('x'), { stack })).at).toBe('Object.run cli.cjs:10:5 < main.cjs:3:1');
});
