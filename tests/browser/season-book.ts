import type { Book } from '../../core/book/index.ts';
import { type SampleName, sampleBook } from '../support/samples.ts';

/** The sample with a second round, a cap, an applicator, and something in the store. Its mix puts down 0.45 fl oz on 1,000 ft². */
export function seasonBook(name: SampleName = 'residential-day'): Book {
  const sample = sampleBook(name);
  const [spring] = sample.rounds;
  const [rig] = sample.rigs;
  if (spring === undefined || rig === undefined) throw new Error('the sample lacks it');
  const products = sample.products.map((each) => ({
    ...each,
    onHand: 20,
    ...(each.form === 'liquid' ? { actives: [{ name: 'Holdanil', lbPerUnit: 0.03125 }] } : {}),
    label: { ...each.label, mostPerYear: each.form === 'liquid' ? 1 : 9 },
  }));
  return {
    ...sample,
    products,
    rounds: [spring, { ...spring, id: 'late', name: 'Late', dates: ['2027-05-17'] }],
    caps: [{ id: 'cap', what: 'active', active: 'Holdanil', mostLbPer1000SqFt: 0.04, source: '' }],
    applicators: [{ id: 'a', name: 'Ann', licence: '12', expires: '2027-05-01', rigIds: [rig.id], note: '' }],
  };
}

/** Two rigs that feed and spray, with a cap on nitrogen and some lawns done already. */
export function startedSeason(): Book {
  const book = seasonBook('mixed-day');
  const [round] = book.rounds;
  const visits = book.properties.slice(4, 8).map(({ id, zones }, index) => ({
    id: `visit-${index}`,
    on: '2027-03-08',
    roundId: round?.id ?? '',
    rigId: round?.rigIds[0] ?? '',
    propertyId: id,
    note: '',
    outcome: {
      kind: 'done' as const,
      tasks: zones.map((zone) => ({
        zoneId: zone.id,
        treatmentId: 'pre-emergent',
        treatedSqFt: 4000,
        usedGal: 2 + index / 8,
      })),
    },
  }));
  const cap = { id: 'n', what: 'nitrogen', mostLbPer1000SqFt: 1.8, source: 'town rule (invented)' } as const;
  return { ...book, caps: [cap, ...book.caps], visits };
}
