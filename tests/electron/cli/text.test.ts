import { describe, expect, test } from 'vitest';
import { type Issue, issue } from '../../../core/base/index.ts';
import { issueLines, rigDays } from '../../../electron/cli/text/index.ts';

const notes = (count: number): readonly Issue[] =>
  Array.from({ length: count }, (_, index) => issue('note', 'unknown-member', `b.json, m${index}`, 'Not known.'));
const warning = issue('warning', 'far-from-others', 'b.json, features[1]', 'Far.');

describe('issues for people', () => {
  test('a few notes are printed after what is graver', () => {
    expect(issueLines([...notes(3), warning])).toEqual([
      'warning: b.json, features[1]: Far. [far-from-others]',
      'note: b.json, m0: Not known. [unknown-member]',
      'note: b.json, m1: Not known. [unknown-member]',
      'note: b.json, m2: Not known. [unknown-member]',
    ]);
  });

  test('more notes than a few are one line, whatever else is told', () => {
    expect(issueLines([...notes(4), warning])).toEqual([
      'warning: b.json, features[1]: Far. [far-from-others]',
      '4 notes; --json lists them',
    ]);
    const many = issueLines([...notes(1200), ...Array.from({ length: 25 }, () => warning)]);
    expect(many).toHaveLength(22);
    expect(many.slice(20)).toEqual(['... and 5 more; --json lists them all', '1,200 notes; --json lists them']);
  });
});

test('days of several rigs on one date are told apart from days', () => {
  expect(rigDays(['2027-03-16', '2027-03-16'])).toBe('1 day, 2 rig days');
  expect(rigDays(['2027-03-16', '2027-03-17'])).toBe('2 days');
  expect(rigDays(['2027-03-16'])).toBe('1 day');
  expect(rigDays([])).toBe('0 days');
});
