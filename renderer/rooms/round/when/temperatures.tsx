import { FileUp, Trash2 } from 'lucide-react';
import { useState } from 'react';
import { err, type Result } from '../../../../core/base/index.ts';
import type { Book, TemperatureYear } from '../../../../core/book/index.ts';
import { missingDays, stationNames } from '../../../../core/round/timing/index.ts';
import { addDays, isCalendarDate } from '../../../../core/units/index.ts';
import {
  edit,
  freshId,
  importTemperatures,
  putRecord,
  removeRecord,
  showError,
  useFormat,
} from '../../../stores/index.ts';
import { Button, Choice, DraftInput, Field, QuantityInput, Section, TableHead } from '../../../ui/index.ts';
import { dayAt, withTypedDay } from './typed-days.ts';

type TemperaturesProps = { readonly book: Book; readonly today: string };

/** The stations of the book, files that can be read in, and a small table to type days into. */
export function Temperatures({ book, today }: TemperaturesProps) {
  return (
    <Section
      title="Temperatures"
      aside={
        <Button onPress={() => importTemperatures().catch(() => undefined)}>
          <FileUp size={14} aria-hidden="true" /> Read a file
        </Button>
      }
    >
      {book.temperatures.length === 0 ? (
        <p className="quiet">
          None yet. Read a table of daily temperatures (CSV) of a station nearby, several years of it if you have them,
          or type them day by day.
        </p>
      ) : (
        <YearsTable book={book} />
      )}
      <TypedDays book={book} today={today} />
    </Section>
  );
}

function YearsTable({ book }: { readonly book: Book }) {
  const words = useFormat();
  const rows = book.temperatures.toSorted((left, right) =>
    left.station === right.station ? (yearOf(left) < yearOf(right) ? -1 : 1) : left.station < right.station ? -1 : 1,
  );
  return (
    <div className="table-scroll">
      <table className="table">
        <TableHead
          columns={[
            'station',
            'year',
            'from, to',
            { figures: 'days' },
            { figures: 'left out between' },
            { figures: 'soil at' },
            'from where',
            { spoken: 'remove' },
          ]}
        />
        <tbody>
          {rows.map((record) => {
            const { days } = record;
            const missing = missingDays(days.map((day) => day[0])).reduce((sum, each) => sum + each.days, 0);
            const name = `${record.station}, ${yearOf(record)}`;
            return (
              <tr key={record.id}>
                <th scope="row">{record.station}</th>
                <td>{yearOf(record)}</td>
                <td>
                  {words.date(days[0]?.[0] ?? '').slice(4)} to {words.date(days.at(-1)?.[0] ?? '').slice(4)}
                </td>
                <td className="number">{days.length}</td>
                <td className="number">{missing}</td>
                <td className="number">
                  <QuantityInput
                    kind="width"
                    label={`Depth of the soil thermometer, ${name}`}
                    value={record.soilDepthIn ?? null}
                    optional
                    onCommit={(value) => {
                      const { soilDepthIn: _, ...rest } = record;
                      return putRecord('temperatures', value === null ? rest : { ...rest, soilDepthIn: value });
                    }}
                  />
                </td>
                <td>{record.source}</td>
                <td className="number">
                  <Button
                    look="quiet"
                    label={`Remove ${name}`}
                    tip="Remove this year"
                    onPress={() => removeRecord('temperatures', record.id, name)}
                  >
                    <Trash2 size={15} aria-hidden="true" />
                  </Button>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

function yearOf({ days }: TemperatureYear): string {
  return days[0]?.[0].slice(0, 4) ?? '';
}

const NEW = '';
const TYPED_DAYS = 7;

/** The last days, one row each: highest, lowest and soil, typed as they are read. */
function TypedDays({ book, today }: TemperaturesProps) {
  const names = stationNames(book);
  const [chosen, setChosen] = useState<string | null>(null);
  const [newName, setNewName] = useState('');
  const [last, setLast] = useState(today);
  const station = chosen !== null && names.includes(chosen) ? chosen : chosen === NEW ? newName : (names[0] ?? newName);
  const isNew = !names.includes(station);
  const days = Array.from({ length: TYPED_DAYS }, (_, index) => addDays(last, index - TYPED_DAYS + 1));
  return (
    <details className="when-typed">
      <summary>Type days</summary>
      <div className="when-form">
        {names.length > 0 && (
          <Field label="Station">
            <Choice
              label="Station that is typed"
              value={isNew ? NEW : station}
              options={[...names.map((value) => ({ value, words: value })), { value: NEW, words: 'another station' }]}
              onChoose={setChosen}
            />
          </Field>
        )}
        {isNew && (
          <Field label="Name of the station">
            <DraftInput
              label="Name of the station"
              text={newName}
              placeholder="for instance: the yard"
              onCommit={(name) => {
                setNewName(name);
                setChosen(name);
                return { ok: true, value: null };
              }}
            />
          </Field>
        )}
        <Field label="Seven days up to">
          <input
            type="date"
            className="input"
            aria-label="Seven days up to"
            value={last}
            onChange={(event) => isCalendarDate(event.target.value) && setLast(event.target.value)}
          />
        </Field>
      </div>
      <table className="table table-edit table-narrow">
        <TableHead columns={['day', { figures: 'highest' }, { figures: 'lowest' }, { figures: 'soil' }]} />
        <tbody>
          {days.map((date) => (
            <TypedDay key={`${station} ${date}`} book={book} station={station} date={date} />
          ))}
        </tbody>
      </table>
    </details>
  );
}

type TypedDayProps = { readonly book: Book; readonly station: string; readonly date: string };
const COLUMNS = [
  { place: 1, name: 'highest' },
  { place: 2, name: 'lowest' },
  { place: 3, name: 'soil' },
] as const;

function TypedDay({ book, station, date }: TypedDayProps) {
  const words = useFormat();
  const day = dayAt(book.temperatures, station, date);
  const type = (place: 1 | 2 | 3, value: number | null): Result<unknown> => {
    const typed = day.with(place, value) as unknown as typeof day;
    const [, max, min] = typed;
    if (station === '') {
      return err('quantity-unreadable', 'station', 'The station has no name yet.', 'Write its name above first.');
    }
    if (max !== null && min !== null && max < min) {
      return err('quantity-out-of-range', date, 'The highest is below the lowest.', 'Correct one of the two.');
    }
    const record = withTypedDay(book.temperatures, station, typed, freshId(book.temperatures, 'temperatures'));
    const done =
      record.days.length === 0
        ? edit({ kind: 'remove', table: 'temperatures', id: record.id })
        : putRecord('temperatures', record, `Type temperature of ${date}`);
    if (!done.ok) showError(done.error);
    return done;
  };
  return (
    <tr>
      <th scope="row">{words.date(date)}</th>
      {COLUMNS.map(({ place, name }) => (
        <td key={name} className="number">
          <QuantityInput
            kind="temperature"
            label={`${name}, ${words.longDate(date)}`}
            value={day[place]}
            optional
            onCommit={(value) => type(place, value)}
          />
        </td>
      ))}
    </tr>
  );
}
