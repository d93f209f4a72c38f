import { Plus } from 'lucide-react';
import { type KeyboardEvent, useMemo, useRef, useState } from 'react';
import type { Book, Round } from '../../../../core/book/index.ts';
import type { Plan } from '../../../../core/plan/result/index.ts';
import { calendarOf, roundDays } from '../../../../core/round/calendar/index.ts';
import { addDays } from '../../../../core/units/index.ts';
import { NotYet } from '../../../next/index.ts';
import { addNextDay, useBook, useCurrentPlan, useCurrentRound, useFormat } from '../../../stores/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { calendarWords } from '../../../texts/round/index.ts';
import { Button } from '../../../ui/index.ts';
import { CalendarSettings } from './calendar-settings.tsx';
import { DayDetail } from './day-detail.tsx';
import { type DayFacts, dayFacts, freeDay, monthsOf } from './day-facts.ts';
import { MonthGrid } from './month-grid.tsx';
import { WeatherFile } from './weather-file.tsx';

/** The days of the round: which are worked, which are kept free and why, and what is planned and promised on them. */
export function CalendarView() {
  const book = useBook((state) => state.open?.book ?? null);
  const round = useCurrentRound();
  const known = useCurrentPlan();
  if (book === null || round === null)
    return (
      <NotYet title={commonWords.noRound} needs="round">
        {calendarWords.view.noRoundAdvice}
      </NotYet>
    );
  return <Calendar key={round.id} book={book} round={round} plan={known?.plan ?? null} />;
}

type CalendarProps = { readonly book: Book; readonly round: Round; readonly plan: Plan | null };

const MONTH_DAYS = 28;
/** Days that keys go by. */
const STEPS: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowRight: 1,
  ArrowUp: -7,
  ArrowDown: 7,
  PageUp: -MONTH_DAYS,
  PageDown: MONTH_DAYS,
};
export const CALENDAR_KEYS: readonly string[] = Object.keys(STEPS);

function Calendar({ book, round, plan }: CalendarProps) {
  const facts = useMemo(() => dayFacts(book, round, plan), [book, round, plan]);
  const [chosen, setChosen] = useState(round.dates[0] ?? '');
  const months = monthsOf([...facts.keys(), ...round.dates]);
  const box = useRef<HTMLDivElement>(null);
  const factsOf = (date: string): DayFacts => facts.get(date) ?? freeDay(book, date);
  const go = (date: string) => {
    if (!months.includes(date.slice(0, 7))) return;
    setChosen(date);
    box.current?.querySelector<HTMLButtonElement>(`[data-date="${date}"]`)?.focus();
  };
  const onKey = (event: KeyboardEvent, date: string) => {
    const days = STEPS[event.key];
    if (days === undefined) return;
    event.preventDefault();
    go(addDays(date, days));
  };
  const calendar = calendarOf(book);
  const { said } = useFormat();
  const { words } = roundDays(calendar, round);
  const addNext = () => {
    const date = addNextDay();
    if (date !== null) setChosen(date);
  };
  const shown = months.includes(chosen.slice(0, 7)) ? chosen : (round.dates[0] ?? '');
  return (
    <div className="ledger calendar">
      <section className="plan-bar" aria-label={calendarWords.view.daysLabel}>
        <div className="plan-bar-title">
          <h2>{calendarWords.view.title(round.name)}</h2>
          <p className="small quiet">{said(words)}</p>
        </div>
        <Button onPress={addNext}>
          <Plus size={14} aria-hidden="true" /> {calendarWords.view.addNextWorkingDay}
        </Button>
      </section>
      <div className="calendar-desk">
        <div className="months" ref={box}>
          {months.map((month) => (
            <MonthGrid
              key={month}
              month={month}
              factsOf={factsOf}
              chosen={shown}
              stop={shown}
              onChoose={setChosen}
              onKey={onKey}
            />
          ))}
          <Legend />
        </div>
        <DayDetail key={shown} book={book} round={round} facts={factsOf(shown)} />
      </div>
      <CalendarSettings book={book} round={round} />
      <WeatherFile book={book} />
    </div>
  );
}

const LEGEND = [
  ['worked', calendarWords.view.inRound],
  ['held-back', calendarWords.view.heldBack],
  ['on-hold', calendarWords.view.onHold],
  ['holiday', calendarWords.month.holiday],
  ['free', calendarWords.view.notInRound],
  ['off', calendarWords.view.notWorked],
] as const;

/** What the hatching means. */
function Legend() {
  return (
    <ul className="month-legend" aria-label={calendarWords.view.legend}>
      {LEGEND.map(([kind, meaning]) => (
        <li key={kind}>
          <span className={`month-sample month-${kind}`} aria-hidden="true" /> {meaning}
        </li>
      ))}
    </ul>
  );
}
