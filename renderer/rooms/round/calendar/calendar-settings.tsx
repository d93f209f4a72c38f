import { X } from 'lucide-react';
import { useState } from 'react';
import { type Book, type Calendar, type Round, WEEKDAYS } from '../../../../core/book/index.ts';
import {
  calendarOf,
  heldBackCount,
  holidayWhy,
  weekdayName,
  workdaysBetween,
} from '../../../../core/round/calendar/index.ts';
import { changeRound, putRecord, useFormat } from '../../../stores/index.ts';
import { calendarWords } from '../../../texts/round/index.ts';
import { Button, Choice, DraftInput, Field, QuantityInput, Section, Tick } from '../../../ui/index.ts';
import { changeCalendar, withHoliday } from './calendar-edits.ts';

type SettingsProps = { readonly book: Book; readonly round: Round };

/** Days and hours that are worked, and what is kept free, for all rounds of the book; and what this round has of its own. */
export function CalendarSettings({ book, round }: SettingsProps) {
  return (
    <div className="calendar-settings">
      <ThisRound book={book} round={round} />
      <EveryRound book={book} />
      <Holidays book={book} />
    </div>
  );
}

function ThisRound({ book, round }: SettingsProps) {
  const calendar = calendarOf(book);
  const sorted = round.dates.toSorted();
  const [from, setFrom] = useState(sorted[0] ?? '');
  const [to, setTo] = useState(sorted.at(-1) ?? '');
  const span = from !== '' && to !== '' ? workdaysBetween(calendar, from, to) : [];
  const working = round.dates.filter((date) => holidayWhy(calendar, date) === null).length;
  return (
    <Section title={calendarWords.settings.thisRound}>
      <Field label={calendarWords.settings.from}>
        <DateInput label={calendarWords.settings.firstDay} value={from} onChange={setFrom} />
      </Field>
      <Field label={calendarWords.settings.until}>
        <DateInput label={calendarWords.settings.lastDay} value={to} onChange={setTo} />
      </Field>
      <Button
        whyNot={span.length === 0 ? calendarWords.settings.noWorkingDay : null}
        onPress={() => changeRound(round, { dates: span }, calendarWords.settings.changeDays)}
      >
        {calendarWords.settings.takeDays(span.length)}
      </Button>
      <Field label={calendarWords.settings.heldBack} note={calendarWords.settings.heldBackNote}>
        <QuantityInput
          kind="whole"
          label={calendarWords.settings.heldBackLabel}
          value={round.heldBack ?? null}
          optional
          onCommit={(value) => {
            const { heldBack: _, ...rest } = round;
            const label = calendarWords.settings.changeHeldBack;
            return putRecord('rounds', value === null ? rest : { ...rest, heldBack: value }, label);
          }}
        />
      </Field>
      <p className="quiet small">
        {calendarWords.settings.byShare(heldBackCount(working, calendar.rainShare), working)}
      </p>
    </Section>
  );
}

type DateInputProps = {
  readonly label: string;
  readonly value: string;
  readonly onChange: (date: string) => void;
};

function DateInput({ label, value, onChange }: DateInputProps) {
  return (
    <input
      type="date"
      className="input"
      aria-label={label}
      value={value}
      onChange={(event) => onChange(event.target.value)}
    />
  );
}

const CLOCKS: readonly { readonly value: Calendar['clockChange']; readonly words: string }[] = [
  { value: 'united-states', words: calendarWords.settings.clocksChange },
  { value: 'none', words: calendarWords.settings.clocksKeep },
];

function EveryRound({ book }: { readonly book: Book }) {
  const calendar = calendarOf(book);
  const change = (changes: Partial<Calendar>) => changeCalendar(book, changes, calendarWords.settings.change);
  return (
    <Section title={calendarWords.settings.everyRound}>
      <fieldset className="ticks">
        <legend className="quiet small">{calendarWords.settings.daysWorked}</legend>
        {WEEKDAYS.map((day) => (
          <Tick
            key={day}
            label={weekdayName(day)}
            checked={calendar.workdays.includes(day)}
            onChange={(on) => {
              const workdays = WEEKDAYS.filter((each) => (each === day ? on : calendar.workdays.includes(each)));
              change({ workdays });
            }}
          />
        ))}
      </fieldset>
      <Field label={calendarWords.settings.shareLost} note={calendarWords.settings.shareLostNote}>
        <QuantityInput
          kind="share"
          label={calendarWords.settings.shareLostLabel}
          value={calendar.rainShare}
          most={0.9}
          onCommit={(value) => change({ rainShare: value ?? 0 })}
        />
      </Field>
      <Field label={calendarWords.settings.serviceShare} note={calendarWords.settings.serviceShareNote}>
        <QuantityInput
          kind="minutes"
          label={calendarWords.settings.serviceShare}
          value={calendar.serviceMin}
          onCommit={(value) => change({ serviceMin: value ?? 0 })}
        />
      </Field>
      <Field label={calendarWords.settings.noticeDays} note={calendarWords.settings.noticeDaysNote}>
        <QuantityInput
          kind="whole"
          label={calendarWords.settings.noticeDays}
          value={calendar.noticeDays}
          onCommit={(value) => change({ noticeDays: value ?? 0 })}
        />
      </Field>
      <Field label={calendarWords.settings.leastOpen} note={calendarWords.settings.leastOpenNote}>
        <QuantityInput
          kind="minutes"
          label={calendarWords.settings.leastOpenLabel}
          value={calendar.leastOpenMin}
          most={1440}
          onCommit={(value) => change({ leastOpenMin: value ?? 0 })}
        />
      </Field>
      <Field label={calendarWords.settings.clocks}>
        <Choice
          label={calendarWords.settings.clockChange}
          value={calendar.clockChange}
          options={CLOCKS}
          onChoose={(clockChange) => change({ clockChange })}
        />
      </Field>
    </Section>
  );
}

function Holidays({ book }: { readonly book: Book }) {
  const words = useFormat();
  const calendar = calendarOf(book);
  const change = (on: string, name: string | null) =>
    changeCalendar(book, { holidays: withHoliday(calendar, on, name) }, calendarWords.settings.changeHolidays);
  return (
    <Section title={calendarWords.settings.holidays}>
      {calendar.holidays.length === 0 && <p className="quiet small">{calendarWords.settings.noHolidays}</p>}
      <ul className="holidays">
        {calendar.holidays.map(({ on, name }) => (
          <li key={on}>
            <span>
              {words.date(on)} {on.slice(0, 4)}
            </span>
            <DraftInput
              label={calendarWords.settings.nameOfHoliday(on)}
              text={name}
              onCommit={(text) => change(on, text)}
            />
            <Button
              look="quiet"
              label={calendarWords.settings.noHolidayOn(words.longDate(on))}
              onPress={() => change(on, null)}
            >
              <X size={14} aria-hidden="true" />
            </Button>
          </li>
        ))}
      </ul>
      <Field label={calendarWords.settings.add}>
        <DateInput
          label={calendarWords.settings.addAHoliday}
          value=""
          onChange={(on) => {
            if (on !== '') change(on, '');
          }}
        />
      </Field>
    </Section>
  );
}
