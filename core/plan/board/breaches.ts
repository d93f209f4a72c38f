import {
  formatClock,
  formatDuration,
  formatVolume,
  formatWeight,
  quantity,
  SECONDS_PER_DAY,
} from '../../units/index.ts';
import type { Excess, Spot, Violation } from '../judge/index.ts';
import type { Names, Plan, PlanActivity } from '../result/index.ts';
import type { Breach } from './types.ts';

/** What the judge found, in words: the stop, the limit, what the plan comes to, and by how much that is too much. */
export function breachesIn(plan: Plan, violations: readonly Violation[], names: Names): readonly Breach[] {
  return violations.map((violation) => {
    const { code, spot } = violation;
    if (spot === undefined)
      return { code, date: '', rigId: '', propertyId: '', words: `${violation.where}: ${violation.message}` };
    const propertyId = propertyAt(plan, spot);
    const place = propertyId === '' ? `${names.rig(spot.rigId)}, ${spot.date}` : names.property(propertyId);
    return {
      code,
      date: spot.date,
      rigId: spot.rigId,
      propertyId,
      words: `${place}: ${saidOf(violation, spot, names)}`,
    };
  });
}

/** The stop that an activity belongs to: its own, else the one that the rig is on its way to; '' for the day as a whole. */
function propertyAt(plan: Plan, { date, rigId, activity }: Spot): string {
  const day = plan.days.find((each) => each.date === date && each.rigId === rigId);
  if (day === undefined || activity < 0) return '';
  const own = ownProperty(day.activities[activity]);
  if (own !== '' || day.activities[activity]?.kind === 'morning') return own;
  return (
    day.activities
      .slice(activity)
      .map(ownProperty)
      .find((id) => id !== '') ?? ''
  );
}

function ownProperty(activity: PlanActivity | undefined): string {
  return activity !== undefined && 'propertyId' in activity ? activity.propertyId : '';
}

function saidOf({ code, message, excess }: Violation, { date, rigId }: Spot, names: Names): string {
  if (excess === undefined) return code === 'day-not-allowed' ? `does not work on ${date}` : message;
  const { subjectId } = excess;
  switch (code) {
    case 'window-missed':
      return `ready at ${clock(excess.found)}, work is allowed ${until(excess)}: ${lateBy(excess)}`;
    case 'weather-closed':
      return `${excess.found > excess.limit ? 'treats until' : 'sets up at'} ${clock(excess.found)}, weather allows it ${until(excess)}: ${lateBy(excess)} (${excess.why})`;
    case 'day-too-long':
      return `done at ${clock(excess.found)}, shift and overtime end at ${clock(excess.limit)}: ${lateBy(excess)}`;
    case 'fill-point-closed':
      return `${names.place(subjectId)} is used at ${clock(excess.found)} and is open ${until(excess)}: ${lateBy(excess)}`;
    case 'day-not-allowed':
      return closedWords(date, excess);
    case 'fill-point-lacks-material':
      return `${names.place(subjectId)} does not have what is needed there`;
    case 'over-payload':
      return `${amount(excess.found, 'lb')} aboard, ${amount(excess.limit, 'lb')} allowed: ${tooMuch(excess)}`;
    case 'stock-above-capacity':
      return excess.unit === 'bags'
        ? `${excess.found} bags in ${excess.limit} bag places: ${excess.found - excess.limit} too many`
        : `the nurse tank would hold ${amount(excess.found, 'gal')} of ${amount(excess.limit, 'gal')}: ${tooMuch(excess)}`;
    case 'level-above-capacity':
      return `${names.compartment(subjectId)} would hold ${amount(excess.found, excess.unit)} of ${amount(excess.limit, excess.unit)}: ${tooMuch(excess)}`;
    case 'too-much-left':
      return `${amount(excess.found, excess.unit)} left in ${names.compartment(subjectId)}, ${amount(excess.limit, excess.unit)} may be: ${tooMuch(excess)}`;
    case 'level-below-empty':
      return `${names.compartment(subjectId)} runs dry, ${amount(-excess.found, excess.unit)} short`;
    case 'stock-below-empty': {
      const what = subjectId === '' ? 'water' : names.material(subjectId);
      return `${names.rig(rigId)} has too little ${what} aboard, ${amount(-excess.found, excess.unit)} short`;
    }
    default:
      return message;
  }
}

function closedWords(date: string, { why = '' }: Excess): string {
  return `not to be visited on ${date}${why === '' ? '' : `: ${why}`}`;
}

function until({ found, limit }: Excess): string {
  return found > limit ? `until ${clock(limit)}` : `from ${clock(limit)}`;
}

function lateBy({ found, limit }: Excess): string {
  return `${formatDuration(quantity(Math.max(60, Math.abs(found - limit))))} too ${found > limit ? 'late' : 'early'}`;
}

function tooMuch({ found, limit, unit }: Excess): string {
  return `${amount(found - limit, unit)} too much`;
}

function amount(figure: number, unit: Excess['unit']): string {
  return unit === 'gal' ? formatVolume(quantity(figure)) : formatWeight(quantity(figure));
}

/** A time of day; after midnight it is said. */
function clock(seconds: number): string {
  return seconds < SECONDS_PER_DAY ? formatClock(seconds) : `${formatClock(seconds - SECONDS_PER_DAY)} the next day`;
}
