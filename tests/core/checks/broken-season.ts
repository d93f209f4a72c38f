import type { ApplicationRecord, Applicator, Book, TemperatureYear } from '../../../core/book/index.ts';
import { keepRecord } from '../../../core/records/index.ts';
import { addDays } from '../../../core/units/index.ts';
import { sampleBook } from '../../support/samples.ts';
import { DONE, draftOf, recordBook } from '../records/record-book.ts';
import { countTiming, soilTiming } from '../round/timing/stations.ts';

const good = sampleBook('mixed-day');

const temperatures = (days: TemperatureYear['days']): TemperatureYear => ({
  id: 'y',
  station: 'Yard',
  source: '',
  days,
});

const applicator = (more: Partial<Applicator>): Applicator => ({
  id: 'a',
  name: 'A',
  licence: '12',
  note: '',
  ...more,
});
const lastDay =
  good.rounds
    .flatMap((each) => each.dates)
    .toSorted()
    .at(-1) ?? '';
const dayBefore = addDays(lastDay, -1);

/** A record as it was written; another number of its version leaves its predecessor out. */
function keptRecord(version = 1): ApplicationRecord {
  const book = recordBook([DONE]);
  const kept = keepRecord(book, draftOf(book), { writtenAt: '2027-03-16T17:05', writtenBy: 'Kim Example', why: '' });
  if (!kept.ok) throw new Error(kept.error.detail);
  return { ...kept.value.record, version };
}

/** For each rule on seasons: the sample book with one thing broken that this rule has to find. */
export const BROKEN_SEASON: Readonly<Record<string, readonly Book[]>> = {
  'timing-senseless': [
    { ...good, timings: [countTiming({ opensAt: 500, closesAt: 250 })] },
    { ...good, timings: [countTiming({ bestAt: 100, opensAt: 100 })] },
    { ...good, timings: [soilTiming({ opensAtF: 60, closesAtF: 50 })] },
    { ...good, timings: [soilTiming({ course: 'falling', opensAtF: 50, closesAtF: 56 })] },
    { ...good, timings: [soilTiming({ station: 'Elsewhere' })] },
    { ...good, temperatures: [temperatures([['2027-02-30', 60, 40, null]])] },
    { ...good, temperatures: [temperatures([['2027-03-01', 40, 60, null]])] },
    {
      ...good,
      temperatures: [
        temperatures([
          ['2027-03-02', 60, 40, null],
          ['2027-03-01', 60, 40, null],
        ]),
      ],
    },
    {
      ...good,
      temperatures: [
        temperatures([['2027-03-01', 60, 40, null]]),
        { ...temperatures([['2027-03-05', 60, 40, null]]), id: 'again' },
      ],
    },
  ],
  'fleet-idle': [
    {
      ...good,
      rigs: good.rigs.map((rig) => ({ ...rig, machines: [], handMethodIds: [] })),
      fleets: [{ id: 'f', name: 'F', rigIds: good.rigs.map((rig) => rig.id), fixedPerSeason: 0, note: '' }],
    },
  ],
  'licence-lacking': [
    // On the day after the last one of its rig's only licence; without a number; and a rig that nobody is entered for.
    { ...good, applicators: good.rigs.map((rig) => applicator({ rigIds: [rig.id], expires: dayBefore })) },
    { ...good, applicators: good.rigs.map((rig) => applicator({ rigIds: [rig.id], licence: ' ' })) },
    { ...good, applicators: [applicator({ rigIds: [] })] },
  ],
  'record-altered': [
    // A figure changed by hand, and a second version without the first.
    { ...good, applicationRecords: [{ ...keptRecord(), writtenBy: 'Somebody else' }] },
    { ...good, applicationRecords: [keptRecord(2)] },
  ],
  'cap-idle': [
    { ...good, caps: [{ id: 'c', what: 'active', active: 'unheard of', mostLbPer1000SqFt: 1, source: '' }] },
    { ...good, caps: [{ id: 'c', what: 'active', mostLbPer1000SqFt: 1, source: '' }] },
    {
      ...good,
      caps: [{ id: 'c', what: 'nitrogen', mostLbPer1000SqFt: 1, source: '' }],
      products: good.products.map((each) => ({
        ...each,
        unit: 'fl-oz' as const,
        analysis: { nitrogen: 0.2, phosphate: 0, potash: 0 },
      })),
    },
  ],
};
