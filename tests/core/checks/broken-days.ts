import type { Book, Programme, ProgrammeStep } from '../../../core/book/index.ts';
import { calendarOf } from '../../../core/round/calendar/index.ts';
import { sampleBook } from '../../support/samples.ts';

const good = sampleBook('mixed-day');
const first = <T>(list: readonly T[]): T => {
  const [item] = list;
  if (item === undefined) throw new Error('the sample lacks it');
  return item;
};

const programme = (a: ProgrammeStep['after'], b: ProgrammeStep['after']): Programme => ({
  id: 'programme',
  name: 'Standard',
  note: '',
  steps: [
    { id: 'a', name: 'A', treatmentIds: [], from: '03-01', to: '03-31', ...(a === undefined ? {} : { after: a }) },
    { id: 'b', name: 'B', treatmentIds: [], from: '04-01', to: '04-30', ...(b === undefined ? {} : { after: b }) },
  ],
});

/** References of rounds and programmes that lead nowhere. */
export const BROKEN_ROUND_REFERENCES: readonly Book[] = [
  { ...good, rounds: [{ ...first(good.rounds), timingId: 'nowhere' }] },
  { ...good, rounds: [{ ...first(good.rounds), promised: [{ propertyId: 'nowhere', on: '2027-03-24' }] }] },
  { ...good, rounds: [{ ...first(good.rounds), only: [{ treatmentId: 'nowhere', choice: {} }] }] },
  { ...good, rounds: [{ ...first(good.rounds), season: { programmeId: 'nowhere', stepId: 's', year: 2027 } }] },
  { ...good, programmes: [programme({ stepId: 'nowhere', leastDays: 1 }, undefined)] },
];

/** Days that do not go together. */
export const BROKEN_DAYS: Readonly<Record<string, readonly Book[]>> = {
  'days-senseless': [
    { ...good, calendar: { ...calendarOf(good), holidays: [{ on: first(first(good.rounds).dates), name: '' }] } },
    { ...good, calendar: { ...calendarOf(good), holidays: [{ on: '2027-02-30', name: '' }] } },
    { ...good, calendar: { ...calendarOf(good), workdays: [] } },
    { ...good, calendar: { ...calendarOf(good), serviceMin: 1440 } },
    {
      ...good,
      rounds: [{ ...first(good.rounds), promised: [{ propertyId: first(good.properties).id, on: '2029-01-01' }] }],
    },
    {
      ...good,
      rounds: [
        {
          ...first(good.rounds),
          promised: [1, 2].map(() => ({ propertyId: first(good.properties).id, on: first(first(good.rounds).dates) })),
        },
      ],
    },
    {
      ...good,
      properties: good.properties.map((each) => ({ ...each, hold: { why: 'new' as const } })),
      rounds: [
        {
          ...first(good.rounds),
          promised: [{ propertyId: first(good.properties).id, on: first(first(good.rounds).dates) }],
        },
      ],
    },
    { ...good, programmes: [programme({ stepId: 'b', leastDays: 1 }, { stepId: 'a', leastDays: 1 })] },
    { ...good, programmes: [programme(undefined, { stepId: 'a', leastDays: 30, mostDays: 20 })] },
  ],
};
