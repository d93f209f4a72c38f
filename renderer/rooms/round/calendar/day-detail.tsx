import type { ReactNode } from 'react';
import type { Book, Round } from '../../../../core/book/index.ts';
import { calendarOf, holidayWhy } from '../../../../core/round/calendar/index.ts';
import { changeRound, goTo, selectDay, useCurrentPlan, useFormat, withDate } from '../../../stores/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { calendarWords } from '../../../texts/round/index.ts';
import { Button, DraftInput, Field } from '../../../ui/index.ts';
import { changeCalendar, withHoliday } from './calendar-edits.ts';
import type { DayFacts } from './day-facts.ts';
import { WeatherHours } from './weather-hours.tsx';

/** Lawns that are named; the rest is counted. */
const MOST_NAMED = 12;

type DayDetailProps = { readonly book: Book; readonly round: Round; readonly facts: DayFacts };

/** What is known of the chosen day, and what can be done with it. */
export function DayDetail({ book, round, facts }: DayDetailProps) {
  const words = useFormat();
  const { date } = facts;
  const planned = useCurrentPlan()?.plan.days.find((each) => each.date === date);
  const promised = (round.promised ?? []).filter((each) => each.on === date);
  const nameOf = (id: string): string => book.properties.find((each) => each.id === id)?.name ?? id;
  return (
    <section className="day-detail" aria-label={words.longDate(date)}>
      <h3>{words.longDate(date)}</h3>
      <p>{facts.why === '' ? calendarWords.day.inRound : sentence(words.said(facts.why))}</p>
      {facts.weather !== '' && (
        <p className="caution small">{calendarWords.day.partClosed(words.said(facts.weather))}</p>
      )}
      {planned !== undefined && (
        <p>
          {calendarWords.day.planned(facts.stops)}{' '}
          <Button
            look="quiet"
            onPress={() => {
              selectDay(date, planned.rigId);
              goTo('day');
            }}
          >
            {calendarWords.day.openDay}
          </Button>
        </p>
      )}
      <Names title={calendarWords.day.promised} names={promised.map((each) => nameOf(each.propertyId))} />
      <Names title={calendarWords.day.toTell} names={facts.tell} />
      <DayActions book={book} round={round} date={date} />
      <WeatherHours book={book} round={round} date={date} />
    </section>
  );
}

function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

function Names({ title, names }: { readonly title: string; readonly names: readonly string[] }): ReactNode {
  if (names.length === 0) return null;
  const more = names.length > MOST_NAMED ? calendarWords.day.andMore(names.length - MOST_NAMED) : '';
  return (
    <p className="small">
      <span className="strong">{title}: </span>
      {names.slice(0, MOST_NAMED).join(', ')}
      {more}.
    </p>
  );
}

function DayActions({ book, round, date }: { readonly book: Book; readonly round: Round; readonly date: string }) {
  const calendar = calendarOf(book);
  const holiday = calendar.holidays.find((each) => each.on === date);
  const isIn = round.dates.includes(date);
  const next = withDate(round, date, !isIn);
  return (
    <>
      <div className="day-actions">
        <Button
          whyNot={next === null ? calendarWords.day.oneDayNeeded : null}
          onPress={() => {
            if (next !== null)
              changeRound(round, { dates: next }, isIn ? calendarWords.day.takeOutDay : commonWords.addDay);
          }}
        >
          {isIn ? calendarWords.day.takeOut : calendarWords.day.workOnDay}
        </Button>
        <Button
          onPress={() => {
            const name = holiday === undefined ? '' : null;
            changeCalendar(book, { holidays: withHoliday(calendar, date, name) }, calendarWords.day.changeHolidays);
          }}
        >
          {holidayWhy(calendar, date) === null ? calendarWords.day.makeHoliday : calendarWords.day.noHoliday}
        </Button>
      </div>
      {holiday !== undefined && (
        <Field label={calendarWords.day.holidayName}>
          <DraftInput
            label={calendarWords.day.nameOfHoliday}
            text={holiday.name}
            onCommit={(name) =>
              changeCalendar(book, { holidays: withHoliday(calendar, date, name) }, calendarWords.day.changeHolidayName)
            }
          />
        </Field>
      )}
    </>
  );
}
