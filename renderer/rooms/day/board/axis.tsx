import type { Plan } from '../../../../core/plan/result/index.ts';
import type { Formatter } from '../../../format/index.ts';
import { counted } from '../../../format/index.ts';
import type { DropSpot } from './use-drag.ts';

type DateStripProps = {
  readonly dates: readonly string[];
  readonly date: string;
  readonly plan: Plan;
  readonly words: Formatter;
  readonly onDate: (date: string) => void;
  readonly over: DropSpot | null;
};

/** The days of the round; a stop may be dropped on one of them. */
export function DateStrip({ dates, date, plan, words, onDate, over }: DateStripProps) {
  return (
    <nav className="board-dates" aria-label="Days of the round">
      {dates.map((each) => {
        const stops = plan.days.filter((day) => day.date === each).reduce((sum, day) => sum + day.stops.length, 0);
        const isOver = over?.kind === 'date' && over.date === each;
        return (
          <button
            key={each}
            type="button"
            className={`board-date${isOver ? ' board-date-over' : ''}`}
            aria-current={each === date ? 'date' : undefined}
            data-date={each}
            onClick={() => onDate(each)}
          >
            <b>{words.date(each)}</b> <span className="small quiet">{counted(stops, 'stop')}</span>
          </button>
        );
      })}
    </nav>
  );
}

const HOUR = 3600;

/** Whole hours above the rows. */
export function HourAxis({
  hours,
  words,
}: {
  readonly hours: { readonly startSec: number; readonly endSec: number };
  readonly words: Formatter;
}) {
  const count = Math.round((hours.endSec - hours.startSec) / HOUR);
  const every = count > 12 ? 2 : 1;
  return (
    <div className="board-axis" aria-hidden="true">
      <span />
      <div>
        {Array.from({ length: count }, (_, index) => index)
          .filter((index) => index % every === 0)
          .map((index) => (
            <span key={index} style={{ left: `${(100 * index) / count}%` }}>
              {words.clock(hours.startSec + index * HOUR)}
            </span>
          ))}
      </div>
    </div>
  );
}
