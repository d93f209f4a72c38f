import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { bookSchema, emptyBook } from '../../../core/book/index.ts';
import { previewMatrix } from '../../../core/formats/index.ts';

function preview(text: string) {
  const read = previewMatrix(text, 'times.csv');
  if (!read.ok) throw new Error(read.error.detail);
  expect(read.value.accepted + read.value.rejected).toBe(read.value.found);
  const book = { ...emptyBook('b', 'Book'), matrix: read.value.matrix };
  expect(v.safeParse(bookSchema, JSON.parse(JSON.stringify(book))).issues).toBeUndefined();
  return read.value;
}

describe('previewMatrix', () => {
  it('reads rows into a square table; what is not there is unknown', () => {
    const { matrix, issues } = preview('from,to,seconds,metres\nshop,p1,310,4200\np1,shop,330,4300\np1,p2,60.5,\n');
    expect(issues).toEqual([]);
    expect(matrix).toEqual({
      source: 'times.csv',
      placeIds: ['shop', 'p1', 'p2'],
      durationSec: [
        [0, 310, null],
        [330, 0, 60.5],
        [null, null, 0],
      ],
      distanceM: [
        [0, 4200, null],
        [4300, 0, null],
        [null, null, 0],
      ],
    });
  });

  it('takes other names of the columns, and does without distances', () => {
    const { matrix } = preview('Destination;Origin;Duration (sec)\np2;p1;45\n');
    expect(matrix.placeIds).toEqual(['p1', 'p2']);
    expect(matrix.durationSec[0]).toEqual([0, 45]);
    expect(matrix.distanceM[0]).toEqual([0, null]);
  });

  it.each([
    ['p1,p2,-5,10', 'row-malformed', '"-5"'],
    ['p1,p2,soon,10', 'row-malformed', '"soon"'],
    ['p1,p2,99999999,10', 'row-malformed', '345600'],
    ['p1,p2,5,far', 'row-malformed', '"far"'],
    [',p2,5,10', 'row-malformed', 'place is missing'],
    ['p1,p2,5,10,20', 'row-malformed', 'cells'],
    ['a,b,7,8', 'duplicate-pair', 'From a to b'],
  ])('rejects the row %s', (row, code, words) => {
    const { rejected, issues } = preview(`from,to,seconds,metres\na,b,1,2\n${row}\n`);
    expect(rejected).toBe(1);
    expect(issues).toMatchObject([{ code, severity: 'error', where: 'times.csv, row 3' }]);
    expect(issues[0]?.message).toContain(words);
  });

  it.each([
    ['', 'no header row'],
    ['from,seconds\na,1\n', 'No column named to'],
    ['from,to,seconds\n', 'no rows'],
    ['from,to,seconds\na,b,x\n', '"x"'],
  ])('refuses %j', (text, words) => {
    const read = previewMatrix(text, 'times.csv');
    expect(read).toMatchObject({ ok: false, error: { code: 'format-invalid' } });
    expect(read.ok ? '' : read.error.detail).toContain(words);
  });

  it('refuses more places than it can hold', () => {
    const rows = Array.from({ length: 1300 }, (_, index) => `f${index},t${index},1`).join('\n');
    expect(previewMatrix(`from,to,seconds\n${rows}\n`, 'times.csv')).toMatchObject({
      ok: false,
      error: { code: 'file-too-large' },
    });
  });
});
