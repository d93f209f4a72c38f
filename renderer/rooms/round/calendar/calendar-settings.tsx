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
import { counted } from '../../../format/index.ts';
import { changeRound, putRecord, useFormat } from '../../../stores/index.ts';
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
    <Section title="This round">
      <Field label="Work from">
        <DateInput label="First day" value={from} onChange={setFrom} />
      </Field>
      <Field label="to">
        <DateInput label="Last day" value={to} onChange={setTo} />
      </Field>
      <Button
        whyNot={span.length === 0 ? 'No working day lies between these two' : null}
        onPress={() => changeRound(round, { dates: span }, 'Change days')}
      >
        Take the {counted(span.length, 'working day')}
      </Button>
      <Field label="Held back for weather" note="days at the end; empty: by the share of every round">
        <QuantityInput
          kind="whole"
          label="Days of this round held back for weather"
          value={round.heldBack ?? null}
          optional
          onCommit={(value) => {
            const { heldBack: _, ...rest } = round;
            const label = 'Change days held back';
            return putRecord('rounds', value === null ? rest : { ...rest, heldBack: value }, label);
          }}
        />
      </Field>
      <p className="quiet small">
        By the share it would be {counted(heldBackCount(working, calendar.rainShare), 'day')} of {working}.
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
  { value: 'united-states', words: 'changed in March and November' },
  { value: 'none', words: 'never changed' },
];

function EveryRound({ book }: { readonly book: Book }) {
  const calendar = calendarOf(book);
  const change = (changes: Partial<Calendar>) => changeCalendar(book, changes, 'Change calendar');
  return (
    <Section title="Every round">
      <fieldset className="ticks">
        <legend className="quiet small">Days that are worked</legend>
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
      <Field label="Share lost to rain" note="so many days are held back, rounded up">
        <QuantityInput
          kind="share"
          label="Share of the days lost to rain"
          value={calendar.rainShare}
          most={0.9}
          onCommit={(value) => change({ rainShare: value ?? 0 })}
        />
      </Field>
      <Field label="Kept for service calls" note="of every rig's day">
        <QuantityInput
          kind="minutes"
          label="Kept for service calls"
          value={calendar.serviceMin}
          onCommit={(value) => change({ serviceMin: value ?? 0 })}
        />
      </Field>
      <Field label="Days of notice" note="where a lawn says nothing else">
        <QuantityInput
          kind="whole"
          label="Days of notice"
          value={calendar.noticeDays}
          onCommit={(value) => change({ noticeDays: value ?? 0 })}
        />
      </Field>
      <Field label="Least open time" note="in a row; with less, weather holds the day">
        <QuantityInput
          kind="minutes"
          label="Least open time of a day"
          value={calendar.leastOpenMin}
          most={1440}
          onCommit={(value) => change({ leastOpenMin: value ?? 0 })}
        />
      </Field>
      <Field label="Clocks">
        <Choice
          label="Change of the clock"
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
    changeCalendar(book, { holidays: withHoliday(calendar, on, name) }, 'Change holidays');
  return (
    <Section title="Holidays">
      {calendar.holidays.length === 0 && <p className="quiet small">None yet.</p>}
      <ul className="holidays">
        {calendar.holidays.map(({ on, name }) => (
          <li key={on}>
            <span>
              {words.date(on)} {on.slice(0, 4)}
            </span>
            <DraftInput label={`Name of the holiday on ${on}`} text={name} onCommit={(text) => change(on, text)} />
            <Button look="quiet" label={`No holiday on ${words.longDate(on)}`} onPress={() => change(on, null)}>
              <X size={14} aria-hidden="true" />
            </Button>
          </li>
        ))}
      </ul>
      <Field label="Add">
        <DateInput
          label="Add a holiday"
          value=""
          onChange={(on) => {
            if (on !== '') change(on, '');
          }}
        />
      </Field>
    </Section>
  );
}
