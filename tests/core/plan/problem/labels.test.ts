import { describe, expect, test } from 'vitest';
import type { Book, Product, Round } from '../../../../core/book/index.ts';
import { buildProblem, type Problem } from '../../../../core/plan/problem/index.ts';
import { commonDates, splitByDays } from '../../../../core/plan/problem/label-days.ts';
import { sampleBook } from '../../../support/samples.ts';

const sample = sampleBook('residential-day');
const spring = sample.rounds[0] as Round;
const property = sample.properties[0]?.id ?? '';

/** The sample with a limit on the label of its product, and a round before the one it has. The sample's mix puts down 0.45 fl oz. */
function bookWith(label: Partial<Product['label']>, before: Partial<Round>, now: Partial<Round> = {}): Book {
  const earlier: Round = { ...spring, id: 'early', name: 'Early', dates: ['2027-03-01', '2027-03-02'], ...before };
  return {
    ...sample,
    products: sample.products.map((each) => ({ ...each, label: { ...each.label, ...label } })),
    rounds: [{ ...spring, dates: ['2027-03-10', '2027-03-16'], ...now }, earlier],
  };
}

function built(book: Book, roundId: string = spring.id): Problem {
  const problem = buildProblem(book, roundId);
  if (!problem.ok) throw new Error(problem.error.detail);
  return problem.value;
}

describe('the sum of a year over the rounds of the book', () => {
  test('that passes the limit refuses the work, with the arithmetic for every rig', () => {
    const problem = built(bookWith({ mostPerYear: 0.8 }, {}));
    expect(problem.jobs).toEqual([]);
    expect(problem.unplaceable).toHaveLength(problem.tasks.length);
    for (const { reasons } of problem.unplaceable) {
      expect(reasons).toHaveLength(problem.rigs.length);
      expect(reasons[0]?.code).toBe('label-limit-broken');
      expect(reasons[0]?.words).toMatch(
        /0\.45 fl oz in round Early \+ 0\.45 fl oz now = 0\.9 fl oz .* allows 0\.8 fl oz/,
      );
    }
  });

  test('that stays within it refuses nothing, to the last digit', () => {
    expect(built(bookWith({ mostPerYear: 0.9 }, {})).unplaceable).toEqual(built(bookWith({}, {})).unplaceable);
  });

  test('counts a property only for the rounds that treat it', () => {
    const alone = built(bookWith({ mostPerYear: 0.8 }, { propertyIds: [property] }));
    expect(new Set(alone.unplaceable.map((each) => alone.tasks[each.task]?.propertyId))).toEqual(new Set([property]));
    const skipped = built(
      bookWith({ mostPerYear: 0.8 }, { skipped: [{ propertyId: property, reason: 'gate locked' }] }),
    );
    expect(skipped.jobs.map((each) => each.propertyId)).toEqual([property]);
  });

  test('counts neither another year nor a round that comes later', () => {
    expect(built(bookWith({ mostPerYear: 0.8 }, { dates: ['2026-11-30'] })).jobs).not.toEqual([]);
    expect(built(bookWith({ mostPerYear: 0.8 }, {}), 'early').jobs).not.toEqual([]);
  });

  test('counts the round that stands first where two begin on one day', () => {
    const book = bookWith({ mostPerYear: 0.8 }, { dates: ['2027-03-10'] }, { dates: ['2027-03-10'] });
    expect(built(book, spring.id).jobs).not.toEqual([]);
    expect(built(book, 'early').jobs).toEqual([]);
  });
});

describe('the days between two applications', () => {
  // The earlier round ends on 2 March.
  test.each([
    [8, [1, 1]],
    [9, [0, 1]],
    [14, [0, 1]],
  ] as const)('%i: allow these days', (leastDaysBetween, allowed) => {
    const problem = built(bookWith({ leastDaysBetween }, {}));
    expect(problem.jobs).not.toEqual([]);
    for (const job of problem.jobs) {
      expect([...job.dayAllowed]).toEqual(allowed);
      expect(job.closed?.map((each) => each?.code ?? 'open')).toEqual(allowed[0] === 1 ? undefined : ['label', 'open']);
    }
    const notes = problem.issues.filter((each) => each.code === 'label-days');
    expect(notes.length > 0).toBe(allowed[0] === 0);
  });

  test('refuse the work where every day comes too soon', () => {
    const problem = built(bookWith({ leastDaysBetween: 15 }, {}));
    expect(problem.jobs).toEqual([]);
    expect(problem.unplaceable[0]?.reasons[0]?.words).toMatch(
      /round Early ends on 2027-03-02, .* 15 days in between, so not before 2027-03-17; this round ends on 2027-03-16/,
    );
  });

  test('run over the end of a month and of a leap year’s February', () => {
    const leap = bookWith({ leastDaysBetween: 2 }, { dates: ['2028-02-28'] }, { dates: ['2028-02-29', '2028-03-01'] });
    expect([...(built(leap).jobs[0]?.dayAllowed ?? [])]).toEqual([0, 1]);
  });

  test('do not bind a round that comes before', () => {
    expect([...(built(bookWith({ leastDaysBetween: 30 }, {}), 'early').jobs[0]?.dayAllowed ?? [])]).toEqual([1, 1]);
  });

  test('refuse a round that applies the product twice', () => {
    const [treatment] = sample.treatments;
    if (treatment === undefined) throw new Error('no treatment');
    const twice = {
      ...bookWith({ leastDaysBetween: 7 }, {}, { treatmentIds: [treatment.id, 'again'] }),
      treatments: [...sample.treatments, { ...treatment, id: 'again' }],
    };
    const problem = buildProblem(twice, spring.id);
    expect(problem).toMatchObject({ ok: false, error: { code: 'label-limit-broken' } });
    expect(!problem.ok && problem.error.detail).toMatch(/2 applications in one round, 0 days apart, .* 7 days/);
  });
});

describe('caps and seed', () => {
  // The sample's mix puts down 0.45 fl oz; 0.45 x 0.1 lb is 0.045 lb of active ingredient a round.
  const actives = [{ name: 'holdanil', lbPerUnit: 0.1 }];
  const cap = { id: 'h', what: 'active', active: 'holdanil', mostLbPer1000SqFt: 0.08, source: 'town rule' } as const;

  test('a cap on an active ingredient refuses the second round with the arithmetic', () => {
    const book = bookWith({}, {});
    const capped = { ...book, caps: [cap], products: book.products.map((each) => ({ ...each, actives })) };
    const problem = built(capped);
    expect(problem.jobs).toEqual([]);
    expect(problem.unplaceable[0]?.reasons[0]?.words).toMatch(
      /^holdanil: 0\.045 lb in round Early \+ 0\.045 lb now = 0\.09 lb .* the cap \(town rule\) is 0\.08 lb$/,
    );
  });

  test('a lawn that was skipped in the earlier round is planned all the same', () => {
    const book = bookWith({ mostPerYear: 0.8 }, {});
    const outcome = { kind: 'skipped', reason: 'gate locked' } as const;
    const visit = { id: 'v', on: '2027-03-01', roundId: 'early', rigId: 'x', propertyId: property, outcome, note: '' };
    expect(built({ ...book, visits: [visit] }).jobs.map((each) => each.propertyId)).toEqual([property]);
  });

  test('days after seed close the days before, and a lawn that is seeded soon has only days long enough before', () => {
    const seeded = (label: Partial<Product['label']>, seededOn: string): Book => {
      const book = bookWith(label, { propertyIds: [] });
      return { ...book, properties: book.properties.map((each) => ({ ...each, seededOn })) };
    };
    // 14 February + 30 days is 16 March; 15 April - 36 days is 10 March.
    const after = built(seeded({ daysAfterSeeding: 30 }, '2027-02-14'));
    expect(after.jobs.length).toBeGreaterThan(0);
    for (const job of after.jobs) expect([...job.dayAllowed]).toEqual([0, 1]);
    const before = built(seeded({ daysBeforeSeeding: 36 }, '2027-04-15'));
    expect(before.jobs.length).toBeGreaterThan(0);
    for (const job of before.jobs) expect([...job.dayAllowed]).toEqual([1, 0]);
    expect(built(seeded({ daysBeforeSeeding: 37 }, '2027-04-15')).jobs).toEqual([]);
  });
});

test('tasks without an allowed day in common go into visits of their own', () => {
  const [one, two, both, any] = [['a'], ['b'], ['a', 'b'], null].map((labelDates) => ({ labelDates }));
  if (!one || !two || !both || !any) throw new Error('no tasks');
  expect(splitByDays([one, two, both, any])).toEqual([[one, both, any], [two]]);
  expect(splitByDays([any, both, two])).toEqual([[any, both, two]]);
  expect(commonDates([any, both, two])).toEqual(['b']);
  expect(commonDates([any])).toBeNull();
});
