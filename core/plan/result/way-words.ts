import { formatClock, formatDuration, formatVolume, formatWeight, quantity } from '../../units/index.ts';
import type { Way, WhyNot } from '../explain/index.ts';
import type { Problem } from '../problem/index.ts';
import type { Solution } from '../refills/index.ts';
import { fromParts } from './amounts.ts';
import type { Names } from './names.ts';
import { must } from './route.ts';
import type { UnplacedTask } from './types.ts';

type PlanWay = UnplacedTask['reasons'][number]['ways'][number];
type Facts = { readonly problem: Problem; readonly solution: Solution; readonly names: Names };

const WEIGHT_PER_POUND = 10_000;

/** A limit that alone keeps work out, in units and words. */
export function planWay(facts: Facts, why: WhyNot, way: Way): PlanWay {
  const { problem, solution } = facts;
  const slot = must(problem.slots[way.slot], 'slot');
  const before = solution.routes.find((route) => route.slot === way.slot)?.visits[way.position - 1];
  const place = {
    date: problem.dates[slot.day] ?? '',
    afterPropertyId: before === undefined ? '' : must(problem.jobs[before.job], 'job').propertyId,
  };
  const seconds = { fromSec: way.fromMs / 1000, toSec: way.toMs / 1000 };
  return { limit: way.limit.kind, ...place, ...seconds, ...said(facts, why, way, place) };
}

type Place = Pick<PlanWay, 'date' | 'afterPropertyId'>;
type Said = Pick<PlanWay, 'subjectId' | 'amount' | 'unit' | 'words'>;

function said({ problem, names }: Facts, why: WhyNot, way: Way, place: Place): Said {
  const { limit, amount } = way;
  const rig = must(problem.rigs[why.rig], 'rig');
  switch (limit.kind) {
    case 'time':
      return {
        subjectId: '',
        amount: amount / 60_000,
        unit: 'min',
        words: `${time(amount)} more ${where(names, place)}`,
      };
    case 'day':
      return { subjectId: '', amount: 0, unit: '', words: dayWords(problem, why.job, place.date) };
    case 'customer-hours':
      return customer(names, must(problem.jobs[limit.job], 'job').propertyId, limit.job === why.job, way);
    case 'station-hours': {
      const { fillPointId } = must(problem.stations[limit.station], 'station');
      return { subjectId: fillPointId, ...hours(way, `${names.place(fillPointId)} open`) };
    }
    case 'payload': {
      const pounds = amount / WEIGHT_PER_POUND;
      return { subjectId: '', amount: pounds, unit: 'lb', words: `${weight(pounds)} more payload` };
    }
    case 'bag-places':
      return { subjectId: '', amount, unit: 'bags', words: `room for ${amount} more ${amount === 1 ? 'bag' : 'bags'}` };
    case 'nurse-tank': {
      const gallons = fromParts(amount);
      return { subjectId: '', amount: gallons, unit: 'gal', words: `${volume(gallons)} more in the nurse tank` };
    }
    case 'compartment': {
      const { id, kind } = must(rig.compartments[limit.compartment], 'compartment');
      const more = fromParts(amount);
      const text = kind === 'tank' ? volume(more) : weight(more);
      return {
        subjectId: id,
        amount: more,
        unit: kind === 'tank' ? 'gal' : 'lb',
        words: `${text} more in ${names.compartment(id)}`,
      };
    }
    case 'supply': {
      const { productId } = must(problem.stocks[limit.stock], 'stock');
      const what = productId === '' ? 'water' : names.material(productId);
      return {
        subjectId: productId,
        amount: 0,
        unit: '',
        words: `${what} to be had at the fill point where the day starts`,
      };
    }
  }
}

/** What would have to give way for the job to be done on a day that is closed to it. */
function dayWords(problem: Problem, job: number, date: string): string {
  const closed = problem.jobs[job]?.closed?.[problem.dates.indexOf(date)];
  switch (closed?.code) {
    case 'promised':
      return `another day than the promised one, ${date}`;
    case 'holiday':
      return `work on ${date}, a holiday`;
    case 'held-back':
      return `${date}, which is held back for weather`;
    case 'notice':
      return `shorter notice, on ${date}`;
    default:
      return `leave to work there on ${date}`;
  }
}

function customer(names: Names, propertyId: string, own: boolean, way: Way): Said {
  const whose = own ? 'the customer there' : names.property(propertyId);
  return { subjectId: propertyId, ...hours(way, `${whose} allowing work`) };
}

function hours(way: Way, whose: string): Omit<Said, 'subjectId'> {
  const clock = (ms: number): string => formatClock(ms / 1000);
  return {
    amount: way.amount / 60_000,
    unit: 'min',
    words: `${whose} from ${clock(way.fromMs)} to ${clock(way.toMs)}`,
  };
}

function where(names: Names, { date, afterPropertyId }: Place): string {
  return `on ${date}, ${afterPropertyId === '' ? 'first thing' : `after ${names.property(afterPropertyId)}`}`;
}

const time = (ms: number): string => formatDuration(quantity(ms / 1000));
const volume = (gallons: number): string => formatVolume(quantity(gallons));
const weight = (pounds: number): string => formatWeight(quantity(pounds));
