import { expect, test } from 'vitest';
import type { Round } from '../../../core/book/index.ts';
import { pastDueDates } from '../../../core/checks/index.ts';
import { sampleBook } from '../../support/samples.ts';

const good = sampleBook('mixed-day');

test('a due date before today is said as long as the round has days to come', () => {
  const book = {
    ...good,
    rounds: [{ ...(good.rounds[0] as Round), dates: ['2027-03-24', '2027-03-25'], dueDate: '2027-03-24' }],
  };
  expect(pastDueDates(book, '2027-03-24')).toEqual([]);
  expect(pastDueDates(book, '2027-03-25')).toMatchObject([{ code: 'due-date-past', severity: 'warning' }]);
  expect(pastDueDates(book, '2027-03-26')).toEqual([]);
});
