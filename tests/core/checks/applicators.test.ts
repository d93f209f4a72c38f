import { expect, test } from 'vitest';
import type { Applicator } from '../../../core/book/index.ts';
import { licences } from '../../../core/checks/applicators.ts';
import { BASE, roundOf } from '../round/ledger/season-book.ts';

const rounds = [roundOf('spring', ['2027-03-15', '2027-03-16', '2027-03-17'], ['spray'])];
const who = (name: string, expires?: string): Applicator => ({
  id: name,
  name,
  licence: '12',
  rigIds: ['rig'],
  note: '',
  ...(expires === undefined ? {} : { expires }),
});
const found = (...applicators: readonly Applicator[]) =>
  licences.find({ ...BASE, rounds, applicators }).map((each) => each.message);

test('a licence holds on its last day', () => {
  expect(found(who('Ann', '2027-03-17'))).toEqual([]);
  expect(found(who('Ann', '2027-03-16'))).toEqual([
    'On 2027-03-17 (round spring) none of its applicators has a valid license: Ann until 2027-03-16. Renew it, or plan another rig.',
  ]);
});

test('the other one of a rig may hold one, and one without a known end holds', () => {
  expect(found(who('Ann', '2027-01-01'), who('Bo', '2027-12-31'))).toEqual([]);
  expect(found(who('Ann', '2027-01-01'), who('Bo'))).toEqual([]);
  expect(found(who('Ann', '2027-03-14'), who('Bo', '2027-03-15'))).toEqual([
    expect.stringMatching(
      /^On 2027-03-16 .*, and on 1 later day, none of its applicators has a valid license: Ann until 2027-03-14, Bo until 2027-03-15/,
    ),
  ]);
});

test('nothing is asked where no applicators are kept', () => {
  expect(found()).toEqual([]);
});
