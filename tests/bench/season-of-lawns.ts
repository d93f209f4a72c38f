import type { Book, TemperatureYear } from '../../core/book/index.ts';
import { addDays } from '../../core/units/index.ts';
import { seasonBook } from '../browser/season-book.ts';
import { drawnRound } from './drawn-round.ts';

const LAWNS = 2000;
const IN_ROUND = 640;
/** Dates and rigs of the first round: close to 60 stops on a date. */
const DATES = 11;
const RIGS = 3;
const DONE_LAST_YEAR = 2000;

/**
 * A book as large as the program is made for, all of it invented: 2,000 drawn lawns, a round of 640 of them by three rigs on eleven
 * days, a later round of all, labels and caps with limits, two years of temperatures, and what was done last year.
 */
export function seasonOfLawns(): Book {
  const book = drawnRound({ lawns: LAWNS, rigs: RIGS, days: DATES }, 3);
  const limits = seasonBook('mixed-day');
  const [round] = book.rounds;
  if (round === undefined) throw new Error('the round is missing');
  const first = book.properties.slice(0, IN_ROUND);
  const dates = Array.from({ length: 40 }, (_, day) => addDays('2027-08-02', day));
  const timing: Book['timings'][number] = {
    kind: 'degree-days',
    id: 'days',
    name: 'Degree days',
    source: 'invented',
    from: '02-15',
    smoothDays: 7,
    gapDays: 3,
    baseF: 50,
    opensAt: 0,
    closesAt: 2000,
  };
  return {
    ...book,
    name: 'Two thousand lawns (invented)',
    products: limits.products,
    caps: limits.caps,
    timings: [timing],
    temperatures: [2026, 2027].map(temperatures),
    rounds: [
      { ...round, name: 'Spring', propertyIds: first.map(({ id }) => id), timingId: timing.id },
      { ...round, id: 'late', name: 'Late', dates },
    ],
    visits: book.properties.slice(0, DONE_LAST_YEAR).map(({ id, zones }, index) => ({
      id: `visit-${index}`,
      on: addDays('2026-03-02', index % 40),
      roundId: round.id,
      rigId: round.rigIds[index % RIGS] ?? '',
      propertyId: id,
      note: '',
      outcome: {
        kind: 'done',
        tasks: zones.map((zone) => ({
          zoneId: zone.id,
          treatmentId: round.treatmentIds[0] ?? '',
          treatedSqFt: 4000,
          usedGal: 4,
        })),
      },
    })),
  };
}

/** A smooth invented year. */
function temperatures(year: number): TemperatureYear {
  const days = Array.from({ length: 365 }, (_, day): TemperatureYear['days'][number] => {
    const mean = 50 - 25 * Math.cos((2 * Math.PI * day) / 365);
    return [addDays(`${year}-01-01`, day), mean + 10, mean - 10, mean];
  });
  return { id: `${year}`, station: 'Invented', source: 'invented', soilDepthIn: 2, days };
}
