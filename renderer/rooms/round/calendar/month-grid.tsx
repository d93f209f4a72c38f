import type { KeyboardEvent } from 'react';
import { MONTHS } from '../../../../core/units/index.ts';
import { useFormat, useWeekBegin } from '../../../stores/index.ts';
import { calendarWords } from '../../../texts/round/index.ts';
import { type DayFacts, dayTags, weekFrom, weeksOf } from './day-facts.ts';

type MonthGridProps = {
  readonly month: string;
  readonly factsOf: (date: string) => DayFacts;
  readonly chosen: string;
  /** The one day that the Tab key stops at. */
  readonly stop: string;
  readonly onChoose: (date: string) => void;
  readonly onKey: (event: KeyboardEvent, date: string) => void;
};

/** One month in weeks. Every day is a button that says its date and what is on it; arrow keys go from day to day. */
export function MonthGrid({ month, factsOf, chosen, stop, onChoose, onKey }: MonthGridProps) {
  const begin = useWeekBegin();
  const name = `${MONTHS[Number(month.slice(5)) - 1]} ${month.slice(0, 4)}`;
  return (
    <table className="month">
      <caption>{name}</caption>
      <thead>
        <tr>
          {weekFrom(begin).map((day) => (
            <th key={day} scope="col">
              {calendarWords.month[day]}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {weeksOf(month, begin).map((week) => (
          <tr key={week.find((each) => each !== null)}>
            {week.map((date, at) =>
              date === null ? (
                // biome-ignore lint/suspicious/noArrayIndexKey: a day of another month has nothing but its place in the week.
                <td key={at} />
              ) : (
                <td key={date}>
                  <DayButton
                    facts={factsOf(date)}
                    isChosen={date === chosen}
                    isStop={date === stop}
                    onChoose={onChoose}
                    onKey={onKey}
                  />
                </td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

type DayButtonProps = {
  readonly facts: DayFacts;
  readonly isChosen: boolean;
  readonly isStop: boolean;
  readonly onChoose: (date: string) => void;
  readonly onKey: (event: KeyboardEvent, date: string) => void;
};

const KIND_WORDS: Readonly<Record<DayFacts['kind'], string>> = {
  worked: calendarWords.month.inRound,
  'held-back': calendarWords.month.heldBack,
  'on-hold': calendarWords.month.onHold,
  holiday: calendarWords.month.holiday,
  free: calendarWords.month.notInRound,
  off: calendarWords.month.notWorked,
};

function DayButton({ facts, isChosen, isStop, onChoose, onKey }: DayButtonProps) {
  const words = useFormat();
  const { date, kind } = facts;
  const tags = dayTags(facts);
  const said = [words.longDate(date), KIND_WORDS[kind], ...tags.filter((each) => each !== KIND_WORDS[kind])];
  return (
    <button
      type="button"
      className={`month-day month-${kind}`}
      aria-pressed={isChosen}
      data-date={date}
      tabIndex={isStop ? 0 : -1}
      onClick={() => onChoose(date)}
      onKeyDown={(event) => onKey(event, date)}
    >
      <span className="only-spoken">{said.join(', ')}</span>
      <span className="month-number" aria-hidden="true">
        {Number(date.slice(8))}
      </span>
      {tags.map((each) => (
        <span key={each} className="month-tag" aria-hidden="true">
          {each}
        </span>
      ))}
    </button>
  );
}
