import { describe, expect, test } from 'vitest';
import type { Book } from '../../../core/book/index.ts';
import { type Finding, references } from '../../../core/checks/index.ts';
import { applyAction, type TableName } from '../../../core/edit/index.ts';
import { sampleBook } from '../../support/samples.ts';
import { countTiming } from '../round/timing/stations.ts';

const sample = sampleBook('mixed-day');
const [round] = sample.rounds;
const [lawn] = sample.properties;
const [one = '', other = ''] = round?.treatmentIds ?? [];
if (round === undefined || lawn === undefined) throw new Error('the sample lacks it');
const timing = countTiming({});

/** A book in which rounds and a programme of three steps name everything that can be removed. */
const BOOK: Book = {
  ...sample,
  timings: [timing],
  programmes: [
    {
      id: 'standard',
      name: 'Standard',
      note: '',
      steps: [
        { id: 'a', name: 'A', treatmentIds: [one], from: '03-01', to: '03-31', timingId: timing.id },
        {
          id: 'b',
          name: 'B',
          treatmentIds: [one, other],
          from: '04-01',
          to: '04-30',
          after: { stepId: 'a', leastDays: 7 },
        },
        { id: 'c', name: 'C', treatmentIds: [other], from: '05-01', to: '05-31', after: { stepId: 'b', leastDays: 7 } },
      ],
    },
    {
      id: 'short',
      name: 'Short',
      note: '',
      steps: [{ id: 's', name: 'S', treatmentIds: [one], from: '03-01', to: '03-31' }],
    },
  ],
  rounds: [
    {
      ...round,
      timingId: timing.id,
      only: [{ treatmentId: one, choice: { tags: ['shade'] } }],
      promised: [{ propertyId: lawn.id, on: round.dates[0] ?? '' }],
      propertyIds: sample.properties.map(({ id }) => id),
      season: { programmeId: 'short', stepId: 's', year: 2027 },
    },
    { ...round, id: 'late', name: 'Late', treatmentIds: [one] },
  ],
};

function without(table: TableName, id: string): Book {
  const done = applyAction(BOOK, { kind: 'remove', table, id });
  if (!done.ok) throw new Error(done.error.detail);
  return done.value.book;
}

function fixed(book: Book, finding: Finding): Book {
  const action = finding.fix?.action(book) ?? null;
  if (action === null) throw new Error(`no fix for ${finding.where}: ${finding.message}`);
  const done = applyAction(book, action);
  if (!done.ok) throw new Error(done.error.detail);
  return done.value.book;
}

const words = ({ where, message }: Finding): string => `${where}: ${message}`;

/** Makes every fix that is offered, one after the other. */
function allFixed(book: Book): Book {
  let now = book;
  for (let step = 0; step < 20; step += 1) {
    const next = references.find(now).find((each) => each.fix !== undefined);
    if (next === undefined) return now;
    const after = fixed(now, next);
    // A programme that goes may be named by a round, which is then found; what was put right is not.
    expect(references.find(after).map(words)).not.toContain(words(next));
    now = after;
  }
  throw new Error('the fixes do not end');
}

describe('what names something that was removed', () => {
  test('nothing is missing at first', () => {
    expect(references.find(BOOK)).toEqual([]);
  });

  test('a treatment is taken out of programmes and rounds; steps and programmes without any go, later steps stay', () => {
    const book = without('treatments', one);
    expect(references.find(book).map((each) => each.where)).toEqual([
      `round ${round.name}`,
      'round Late',
      'programme Standard, A',
      'programme Standard, B',
      'programme Short, S',
    ]);
    const after = allFixed(book);
    expect(after.programmes.map(({ id }) => id)).toEqual(['standard']);
    expect(
      after.programmes[0]?.steps.map(({ id, treatmentIds, after: before }) => ({ id, treatmentIds, before })),
    ).toEqual([
      { id: 'b', treatmentIds: [other], before: undefined },
      { id: 'c', treatmentIds: [other], before: { stepId: 'b', leastDays: 7 } },
    ]);
    expect(after.rounds[0]?.treatmentIds).toEqual([other]);
    expect(after.rounds[0]?.only).toBeUndefined();
    expect(after.rounds[0]?.season).toBeUndefined();
    // A round cannot be without a treatment: what it needs is for somebody to say.
    expect(references.find(after).map(({ where, fix }) => ({ where, fix }))).toEqual([
      { where: 'round Late', fix: undefined },
    ]);
  });

  test.each([
    ['timings', timing.id],
    ['programmes', 'short'],
    ['properties', lawn.id],
  ] as const)('%s are taken out of what names them, and the rest stays as it was', (table, id) => {
    const after = allFixed(without(table, id));
    expect(references.find(after)).toEqual([]);
    expect(
      after.rounds.map(({ name, treatmentIds, rigIds, dates }) => ({ name, treatmentIds, rigIds, dates })),
    ).toEqual(BOOK.rounds.map(({ name, treatmentIds, rigIds, dates }) => ({ name, treatmentIds, rigIds, dates })));
    if (table === 'properties') {
      expect(after.rounds[0]?.promised).toBeUndefined();
      expect(after.rounds[0]?.propertyIds).toHaveLength(sample.properties.length - 1);
    }
  });

  test('a rig is taken out of a round that has another one', () => {
    const [gone = '', stays = ''] = round.rigIds;
    expect(stays).not.toBe('');
    const after = allFixed(without('rigs', gone));
    expect(after.rounds.map((each) => each.rigIds)).toEqual([[stays], [stays]]);
  });
});
