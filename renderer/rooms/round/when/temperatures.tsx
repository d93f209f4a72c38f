import { FileUp, Trash2 } from 'lucide-react';
import { useState } from 'react';
import { err, type Result } from '../../../../core/base/index.ts';
import type { Book, TemperatureYear } from '../../../../core/book/index.ts';
import { missingDays, stationNames } from '../../../../core/round/timing/index.ts';
import { addDays, isCalendarDate } from '../../../../core/units/index.ts';
import { CommandButton } from '../../../commands/index.ts';
import { edit, freshId, putRecord, removeRecord, showError, useFormat } from '../../../stores/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { whenWords } from '../../../texts/round/index.ts';
import { Button, Choice, DraftInput, Field, QuantityInput, Section, TableHead } from '../../../ui/index.ts';
import { dayAt, withTypedDay } from './typed-days.ts';

type TemperaturesProps = { readonly book: Book; readonly today: string };

/** The stations of the book, files that can be read in, and a small table to type days into. */
export function Temperatures({ book, today }: TemperaturesProps) {
  return (
    <Section
      title={whenWords.temperatures.temperatures}
      aside={
        <CommandButton id="round.temperatures">
          <FileUp size={14} aria-hidden="true" /> {whenWords.temperatures.readAFile}
        </CommandButton>
      }
    >
      {book.temperatures.length === 0 ? (
        <p className="quiet">{whenWords.temperatures.noneYet}</p>
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
            whenWords.temperatures.station,
            whenWords.temperatures.year,
            whenWords.temperatures.span,
            { figures: whenWords.temperatures.daysRead },
            { figures: whenWords.temperatures.daysLeftOut },
            { figures: whenWords.temperatures.soilAt },
            whenWords.temperatures.fromWhere,
            { spoken: whenWords.temperatures.removeHead },
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
                  {commonWords.span(
                    words.date(days[0]?.[0] ?? '').slice(4),
                    words.date(days.at(-1)?.[0] ?? '').slice(4),
                  )}
                </td>
                <td className="number">{days.length}</td>
                <td className="number">{missing}</td>
                <td className="number">
                  <QuantityInput
                    kind="width"
                    label={whenWords.temperatures.depthOf(name)}
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
                    label={whenWords.temperatures.removeOf(name)}
                    tip={whenWords.temperatures.removeThis}
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
      <summary>{whenWords.temperatures.typeDays}</summary>
      <div className="when-form">
        {names.length > 0 && (
          <Field label={whenWords.temperatures.stationLabel}>
            <Choice
              label={whenWords.temperatures.stationTyped}
              value={isNew ? NEW : station}
              options={[
                ...names.map((value) => ({ value, words: value })),
                { value: NEW, words: whenWords.temperatures.anotherStation },
              ]}
              onChoose={setChosen}
            />
          </Field>
        )}
        {isNew && (
          <Field label={whenWords.temperatures.nameOfStation}>
            <DraftInput
              label={whenWords.temperatures.nameOfStation}
              text={newName}
              placeholder={whenWords.temperatures.namePlaceholder}
              onCommit={(name) => {
                setNewName(name);
                setChosen(name);
                return { ok: true, value: null };
              }}
            />
          </Field>
        )}
        <Field label={whenWords.temperatures.sevenDays}>
          <input
            type="date"
            className="input"
            aria-label={whenWords.temperatures.sevenDays}
            value={last}
            onChange={(event) => isCalendarDate(event.target.value) && setLast(event.target.value)}
          />
        </Field>
      </div>
      <table className="table table-edit table-narrow">
        <TableHead
          columns={[
            commonWords.day,
            { figures: whenWords.temperatures.highest },
            { figures: whenWords.temperatures.lowest },
            { figures: whenWords.temperatures.soil },
          ]}
        />
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
  { place: 1, name: whenWords.temperatures.highest },
  { place: 2, name: whenWords.temperatures.lowest },
  { place: 3, name: whenWords.temperatures.soil },
] as const;

function TypedDay({ book, station, date }: TypedDayProps) {
  const words = useFormat();
  const day = dayAt(book.temperatures, station, date);
  const type = (place: 1 | 2 | 3, value: number | null): Result<unknown> => {
    const typed = day.with(place, value) as unknown as typeof day;
    const [, max, min] = typed;
    if (station === '') {
      return err(
        'quantity-unreadable',
        'station',
        whenWords.temperatures.nameMissing,
        whenWords.temperatures.nameMissingAdvice,
      );
    }
    if (max !== null && min !== null && max < min) {
      return err('quantity-out-of-range', date, whenWords.temperatures.crossed, whenWords.temperatures.crossedAdvice);
    }
    const record = withTypedDay(book.temperatures, station, typed, freshId(book.temperatures, 'temperatures'));
    const done =
      record.days.length === 0
        ? edit({ kind: 'remove', table: 'temperatures', id: record.id })
        : putRecord('temperatures', record, whenWords.temperatures.typed(date));
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
