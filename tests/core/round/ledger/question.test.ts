import { describe, expect, test } from 'vitest';
import type { Book } from '../../../../core/book/index.ts';
import { askLabels, type LabelAnswer } from '../../../../core/round/ledger/index.ts';
import { BASE, doneOn, GROUND, lawn, roundOf, skippedOn, treatment, withLabel } from './season-book.ts';

function ask(book: Book, roundId: string, treatmentId: string, propertyId = 'one', zoneId = 'front'): LabelAnswer {
  const round = book.rounds.find((each) => each.id === roundId);
  const property = lawn(book, propertyId);
  const zone = property.zones.find((each) => each.id === zoneId);
  if (round === undefined || zone === undefined) throw new Error(roundId);
  return askLabels(book, round, GROUND)(property, zone, treatment(book, treatmentId));
}

const refused = (words: RegExp) => ({ kind: 'refused', words: expect.stringMatching(words) });
const someDays = (dates: readonly string[], words: RegExp) => ({
  kind: 'some-days',
  dates,
  words: expect.stringMatching(words),
});
const spray = (on: string, roundId: string, more: object = {}) =>
  doneOn(on, roundId, 'one', [{ zoneId: 'front', treatmentId: 'spray', treatedSqFt: 4000, ...more }]);

describe('the year of a label', () => {
  // 0.4 fl oz a round, 1 a year.
  const three: Book = {
    ...BASE,
    rounds: [
      roundOf('a', ['2027-03-01'], ['spray']),
      roundOf('b', ['2027-05-01'], ['spray']),
      roundOf('c', ['2027-07-01', '2027-07-02'], ['spray']),
    ],
  };

  test('is used up by the third round', () => {
    expect(ask(three, 'b', 'spray')).toEqual({ kind: 'allowed' });
    expect(ask(three, 'c', 'spray')).toEqual(
      refused(
        /^Early: 0\.4 fl oz in round a \+ 0\.4 fl oz in round b \+ 0\.4 fl oz now = 1\.2 fl oz per 1,000 ft² in 2027, its label allows 1 fl oz$/,
      ),
    );
  });

  test('has room again where one was skipped, or where less went down', () => {
    expect(ask({ ...three, visits: [skippedOn('2027-03-01', 'a', 'one')] }, 'c', 'spray')).toEqual({ kind: 'allowed' });
    // 4 gal on 4,000 ft²: half the rate. 0.2 + 0.4 + 0.4 = 1, which is allowed.
    expect(ask({ ...three, visits: [spray('2027-03-01', 'a', { usedGal: 4 })] }, 'c', 'spray')).toEqual({
      kind: 'allowed',
    });
    expect(ask({ ...three, visits: [spray('2027-03-01', 'a', { usedGal: 4.1 })] }, 'c', 'spray')).toEqual(
      refused(/0\.205 fl oz in round a \(recorded 2027-03-01\)/),
    );
  });

  test('counts records of a round that comes later, and of one that is gone', () => {
    const visits = [spray('2027-02-01', 'c', { usedGal: 8 }), spray('2027-02-02', 'gone', { usedGal: 8 })];
    expect(ask({ ...three, visits }, 'b', 'spray')).toEqual(refused(/round c \(recorded 2027-02-01\)/));
  });

  test('does not count what is recorded of the round itself a second time', () => {
    expect(ask({ ...three, visits: [spray('2027-05-01', 'b')] }, 'b', 'spray')).toEqual({ kind: 'allowed' });
  });

  test('bars only the days of the year that is used up', () => {
    const rounds = [...three.rounds.slice(0, 2), roundOf('c', ['2027-12-31', '2028-01-01'], ['spray'])];
    expect(ask({ ...three, rounds }, 'c', 'spray')).toEqual(someDays(['2028-01-01'], /in 2027, its label/));
  });
});

describe('a cap', () => {
  const capped: Book = {
    ...BASE,
    rounds: [
      roundOf('a', ['2027-04-01'], ['meal']),
      roundOf('b', ['2027-06-01'], ['feed']),
      roundOf('c', ['2027-09-01'], ['spray']),
    ],
    caps: [{ id: 'n', what: 'nitrogen', mostLbPer1000SqFt: 1.4, source: 'town rule 12' }],
  };

  test('adds up nutrients of two products and refuses with the arithmetic', () => {
    expect(ask(capped, 'a', 'meal')).toEqual({ kind: 'allowed' });
    expect(ask(capped, 'b', 'feed')).toEqual(
      refused(
        /^nitrogen: 1 lb in round a \+ 0\.5 lb now = 1\.5 lb per 1,000 ft² in 2027, the cap \(town rule 12\) is 1\.4 lb$/,
      ),
    );
  });

  test('leaves alone what has nothing of it', () => {
    expect(ask(capped, 'c', 'spray')).toEqual({ kind: 'allowed' });
  });

  test('binds one round by itself', () => {
    const book = { ...capped, rounds: [roundOf('a', ['2027-04-01'], ['meal', 'feed'])] };
    expect(ask(book, 'a', 'feed')).toEqual(refused(/^nitrogen: 1\.5 lb now per 1,000 ft² in 2027/));
  });

  test('on an active ingredient counts every product that holds it', () => {
    const products = BASE.products.map((each) =>
      each.id === 'meal' ? { ...each, actives: [{ name: 'HOLDANIL', lbPerUnit: 0.001 }] } : each,
    );
    const caps = [{ id: 'h', what: 'active', active: 'Holdanil', mostLbPer1000SqFt: 0.012, source: '' } as const];
    // 0.4 fl oz x 0.02 = 0.008 and 5 lb x 0.001 = 0.005.
    const book = {
      ...BASE,
      products,
      caps,
      rounds: [roundOf('a', ['2027-03-01'], ['spray']), roundOf('b', ['2027-05-01'], ['meal'])],
    };
    expect(ask(book, 'b', 'meal')).toEqual(
      refused(/0\.008 lb in round a \+ 0\.005 lb now = 0\.013 lb .* the cap is 0\.012 lb/),
    );
  });
});

describe('days between two applications', () => {
  const book = withLabel(
    {
      ...BASE,
      rounds: [
        roundOf('a', ['2028-02-10', '2028-02-20'], ['spray']),
        roundOf('b', ['2028-02-28', '2028-02-29', '2028-03-01'], ['spray']),
      ],
    },
    'early',
    { leastDaysBetween: 10, mostPerYear: 9 },
  );

  test('run from the last day of a planned round, over a leap day', () => {
    // 20 February + 10 days is 1 March 2028.
    expect(ask(book, 'b', 'spray')).toEqual(
      someDays(['2028-03-01'], /round a ends on 2028-02-20, .* not before 2028-03-01/),
    );
  });

  test('run from the recorded day where there is one', () => {
    expect(ask({ ...book, visits: [spray('2028-02-10', 'a')] }, 'b', 'spray')).toEqual({ kind: 'allowed' });
    expect(ask({ ...book, visits: [spray('2028-02-25', 'a')] }, 'b', 'spray')).toEqual(
      refused(
        /round a \(recorded 2028-02-25\), .* 10 days in between, so not before 2028-03-06; this round ends on 2028-03-01/,
      ),
    );
  });
});

describe('a product and seed on the same ground', () => {
  const labelled = withLabel(BASE, 'early', { daysBeforeSeeding: 90, daysAfterSeeding: 60 });
  const withRounds = (...rounds: readonly Book['rounds'][number][]): Book => ({ ...labelled, rounds });

  test('no seed before the product’s last day + 90', () => {
    // 16 March + 90 days is 14 June.
    const book = withRounds(
      roundOf('pre', ['2027-03-15', '2027-03-16'], ['spray']),
      roundOf('sow', ['2027-06-13', '2027-06-14'], ['sow']),
    );
    expect(ask(book, 'sow', 'sow')).toEqual(
      someDays(['2027-06-14'], /round pre ends on 2027-03-16, .* 90 days before seed, so no seed before 2027-06-14/),
    );
    const recorded = { ...book, visits: [spray('2027-03-20', 'pre')] };
    expect(ask(recorded, 'sow', 'sow')).toEqual(
      refused(/round pre \(recorded 2027-03-20\), .* no seed before 2027-06-18; this round ends on 2027-06-14/),
    );
    // The back was not recorded: the planned day counts there.
    expect(ask(recorded, 'sow', 'sow', 'one', 'back')).toMatchObject({ kind: 'some-days' });
  });

  test('no product before the day of seed + 60, from the lawn’s own day, a plan or a record', () => {
    // 1 September + 60 days is 31 October.
    const days = ['2027-10-30', '2027-10-31'];
    const planned = withRounds(roundOf('sow', ['2027-09-01'], ['sow']), roundOf('post', days, ['spray']));
    expect(ask(planned, 'post', 'spray')).toEqual(
      someDays(['2027-10-31'], /round sow sows .* 60 days after seed, so not before 2027-10-31/),
    );
    const entered = withRounds(roundOf('post', days, ['spray']));
    const seeded = { ...entered, properties: entered.properties.map((each) => ({ ...each, seededOn: '2027-09-01' })) };
    expect(ask(seeded, 'post', 'spray')).toEqual(
      someDays(['2027-10-31'], /seed on 2027-09-01, .* not before 2027-10-31/),
    );
    const tasks = [{ zoneId: 'front', treatmentId: 'sow', treatedSqFt: 4000 }];
    const recorded = { ...planned, visits: [doneOn('2027-09-05', 'sow', 'one', tasks)] };
    expect(ask(recorded, 'post', 'spray')).toEqual(
      refused(/round sow \(recorded 2027-09-05\) .* not before 2027-11-04; this round ends on 2027-10-31/),
    );
    expect(ask(recorded, 'post', 'spray', 'two')).toMatchObject({ kind: 'some-days' });
  });

  test('no product within 90 days before seed that is still to come', () => {
    // 1 September - 90 days is 3 June.
    const book = withRounds(roundOf('pre', ['2027-06-03', '2027-06-04'], ['spray']));
    const seeded = { ...book, properties: book.properties.map((each) => ({ ...each, seededOn: '2027-09-01' })) };
    expect(ask(seeded, 'pre', 'spray')).toEqual(
      someDays(['2027-06-03'], /90 days before seed, so not after 2027-06-03/),
    );
    const late = { ...seeded, rounds: [roundOf('pre', ['2027-06-04'], ['spray'])] };
    expect(ask(late, 'pre', 'spray')).toEqual(refused(/not after 2027-06-03; this round begins on 2027-06-04/));
    // A later round may sow on its last day still.
    const planned = withRounds(
      roundOf('pre', ['2027-06-03', '2027-06-04'], ['spray']),
      roundOf('sow', ['2027-08-20', '2027-09-01'], ['sow']),
    );
    expect(ask(planned, 'pre', 'spray')).toEqual(
      someDays(['2027-06-03'], /round sow sows from 2027-08-20 to 2027-09-01/),
    );
  });

  test('not both in one round', () => {
    const book = withRounds(roundOf('both', ['2027-09-01'], ['spray', 'sow']));
    expect(ask(book, 'both', 'spray')).toEqual(
      refused(/this round sows the same ground, 0 days apart, its label asks for 90 days/),
    );
    expect(ask(book, 'both', 'sow')).toEqual({ kind: 'allowed' });
  });

  test('does not bind products without such a label, nor other lawns', () => {
    const book = withRounds(
      roundOf('sow', ['2027-09-01'], ['sow'], { propertyIds: ['one'] }),
      roundOf('post', ['2027-09-10'], ['meal', 'spray']),
    );
    expect(ask(book, 'post', 'meal')).toEqual({ kind: 'allowed' });
    expect(ask(book, 'post', 'spray')).toMatchObject({ kind: 'refused' });
    expect(ask(book, 'post', 'spray', 'two')).toEqual({ kind: 'allowed' });
  });
});
