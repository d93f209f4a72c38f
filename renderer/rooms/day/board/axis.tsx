import { useRef } from 'react';
import { useDrop } from 'react-aria-components';
import type { Plan } from '../../../../core/plan/result/index.ts';
import type { Formatter } from '../../../format/index.ts';
import { boardWords } from '../../../texts/day/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { STOP_TYPE } from './spots.ts';
import type { BoardHands } from './use-board-hands.ts';

type DateStripProps = {
  readonly dates: readonly string[];
  readonly date: string;
  readonly plan: Plan;
  readonly words: Formatter;
  readonly onDate: (date: string) => void;
  readonly hands: BoardHands;
};

/** The days of the round; a stop may be dropped on one of them. */
export function DateStrip({ dates, ...props }: DateStripProps) {
  return (
    <nav className="board-dates" aria-label={boardWords.axis.label}>
      {dates.map((each) => (
        <DateTarget key={each} each={each} {...props} />
      ))}
    </nav>
  );
}

function DateTarget({
  each,
  date,
  plan,
  words,
  onDate,
  hands,
}: Omit<DateStripProps, 'dates'> & { readonly each: string }) {
  const ref = useRef<HTMLButtonElement>(null);
  const spot = { kind: 'date', date: each } as const;
  const { dropProps } = useDrop({
    ref,
    getDropOperation: (types) => (types.has(STOP_TYPE) && each !== date ? 'move' : 'cancel'),
    onDropEnter: () => hands.onOver(spot),
    onDropExit: () => hands.onLeave(spot),
    onDrop: () => hands.onDrop(spot),
  });
  const stops = plan.days.filter((day) => day.date === each).reduce((sum, day) => sum + day.stops.length, 0);
  const isOver = hands.over?.kind === 'date' && hands.over.date === each && each !== date;
  return (
    <button
      {...dropProps}
      ref={ref}
      type="button"
      className={`board-date${isOver ? ' board-date-over' : ''}`}
      aria-current={each === date ? 'date' : undefined}
      data-date={each}
      onClick={() => onDate(each)}
    >
      <b>{words.date(each)}</b> <span className="small quiet">{commonWords.stops(stops)}</span>
    </button>
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
