import { useMemo } from 'react';
import { ok } from '../../../core/base/index.ts';
import type { DateOrder, DegreeUnit, TemperatureColumns, UnitGuess } from '../../../core/formats/index.ts';
import type { DayRange } from '../../../core/round/timing/index.ts';
import { counted } from '../../format/index.ts';
import {
  addImported,
  closeImport,
  type MergedTemperatures,
  openQuestions,
  readAnswered,
  type TemperatureImport,
  understandTemperatures,
  useBook,
  useFormat,
} from '../../stores/index.ts';
import { Button, Choice, DraftInput, Field, IssueList, QuantityInput } from '../../ui/index.ts';
import { Count } from './count.tsx';

const MOST_ISSUES = 200;

/** A table of daily temperatures: its columns, what has to be asked, and what it would add. */
export function TemperatureImportSheet({ file }: { readonly file: TemperatureImport }) {
  const book = useBook((state) => state.open?.book ?? null);
  const questions = openQuestions(file);
  const merged = useMemo(() => (book === null ? null : readAnswered(file, book)), [file, book]);
  const nothing = merged !== null && merged.reading.accepted === 0 ? 'No row of the file can be used' : null;
  const whyNot = questions.length > 0 ? `Say first ${questions.join(', ')}` : nothing;
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard. */}
      <section className="import-body" aria-label="Temperatures of the file" tabIndex={0}>
        <Columns file={file} />
        <DatesQuestion file={file} />
        <UnitQuestion file={file} what="air" />
        <UnitQuestion file={file} what="soil" />
        <StationQuestion file={file} />
        {merged === null ? (
          <p className="caution" role="status">
            Say first {questions.join(', ')}.
          </p>
        ) : (
          <Outcome file={file} merged={merged} />
        )}
      </section>
      <div className="dialog-foot">
        <Button onPress={closeImport}>Leave it</Button>
        <Button
          look="main"
          whyNot={whyNot}
          onPress={() => {
            const records = merged?.years.map((each) => each.record) ?? [];
            if (addImported(file.fileName, { kind: 'temperatures', records })) closeImport();
          }}
        >
          Add these temperatures
        </Button>
      </div>
    </>
  );
}

const MEANINGS: readonly { readonly name: keyof TemperatureColumns; readonly words: string }[] = [
  { name: 'date', words: 'date' },
  { name: 'max', words: 'highest of the air' },
  { name: 'min', words: 'lowest of the air' },
  { name: 'soil', words: 'mean of the soil' },
  { name: 'station', words: 'station' },
];
const SAMPLES = 3;

function Columns({ file: { table, columns } }: { readonly file: TemperatureImport }) {
  const options = [
    { value: '-1', words: 'not in the file' },
    ...table.columns.map((name, place) => ({
      value: String(place),
      words: name === '' ? `column ${place + 1}` : name,
    })),
  ];
  return (
    <table className="table import-table">
      <thead>
        <tr>
          <th scope="col">Meaning</th>
          <th scope="col">Column</th>
          <th scope="col">For instance</th>
        </tr>
      </thead>
      <tbody>
        {MEANINGS.map(({ name, words }) => (
          <tr key={name}>
            <th scope="row">{words}</th>
            <td>
              <Choice
                label={`Column for ${words}`}
                value={String(columns[name])}
                options={options}
                onChoose={(place) => understandTemperatures({ columns: { ...columns, [name]: Number(place) } })}
              />
            </td>
            <td className="import-samples quiet">
              {table.rows
                .slice(0, SAMPLES)
                .map((row) => row.cells[columns[name]] ?? '')
                .filter((cell) => cell !== '')
                .join(' · ')}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const OPEN = 'open';
const ORDER_WORDS: Readonly<Record<DateOrder, string>> = {
  mdy: 'month, day, year',
  dmy: 'day, month, year',
  ymd: 'year, month, day',
};

/** Asked where the dates can be read in several ways; the example says what each of them would mean. */
function DatesQuestion({ file: { guess, dateOrder } }: { readonly file: TemperatureImport }) {
  const words = useFormat();
  const { example } = guess.dates;
  if (example === null) return null;
  return (
    <fieldset className="import-question">
      <legend>In which order are the dates written?</legend>
      <p className="quiet small">No day of the file settles it. Its first date is {example.text}.</p>
      <Choice
        label="Order of the dates"
        value={dateOrder ?? OPEN}
        options={[
          { value: OPEN, words: 'not said yet' },
          ...example.readings.map(({ order, date }) => ({
            value: order,
            words: `${ORDER_WORDS[order]}: ${example.text} is ${words.longDate(date)}`,
          })),
        ]}
        onChoose={(order) => understandTemperatures({ dateOrder: order === OPEN ? null : order })}
      />
    </fieldset>
  );
}

const UNITS: readonly { readonly value: DegreeUnit | typeof OPEN; readonly words: string }[] = [
  { value: OPEN, words: 'not said yet' },
  { value: 'F', words: 'Fahrenheit' },
  { value: 'C', words: 'Celsius' },
];

type UnitProps = { readonly file: TemperatureImport; readonly what: 'air' | 'soil' };

/** Fahrenheit or Celsius: asked where it is not plain, and shown with its reason where it is. */
function UnitQuestion({ file: { columns, guess, airUnit, soilUnit }, what }: UnitProps) {
  const isThere = what === 'soil' ? columns.soil >= 0 : columns.max >= 0 || columns.min >= 0;
  if (!isThere) return null;
  const found: UnitGuess = guess[what];
  const unit = what === 'soil' ? soilUnit : airUnit;
  return (
    <fieldset className="import-question">
      <legend>Is the {what} in Fahrenheit or Celsius?</legend>
      <p className="quiet small">{found.why}</p>
      <Choice
        label={`Unit of the ${what}`}
        value={unit ?? OPEN}
        options={UNITS}
        onChoose={(chosen) => {
          const answer = chosen === OPEN ? null : chosen;
          understandTemperatures(what === 'soil' ? { soilUnit: answer } : { airUnit: answer });
        }}
      />
    </fieldset>
  );
}

function StationQuestion({
  file: { guess, taken, station, soilDepthIn, columns },
}: {
  readonly file: TemperatureImport;
}) {
  return (
    <fieldset className="import-question">
      <legend>Which station is it?</legend>
      {guess.stations.length > 1 && (
        <Field label="Taken out of the file">
          <Choice
            label="Taken out of the file"
            value={taken ?? ''}
            options={[
              { value: '', words: `not said yet, of ${guess.stations.length}` },
              ...guess.stations.map((value) => ({ value, words: value })),
            ]}
            onChoose={(value) =>
              understandTemperatures(value === '' ? { taken: null } : { taken: value, station: value })
            }
          />
        </Field>
      )}
      <Field label="Name in the book" note="days of the same name are put together">
        <DraftInput
          label="Name of the station in the book"
          text={station}
          onCommit={(name) => {
            understandTemperatures({ station: name });
            return ok(null);
          }}
        />
      </Field>
      {columns.soil >= 0 && (
        <Field label="Depth of the soil thermometer">
          <QuantityInput
            kind="width"
            label="Depth of the soil thermometer"
            value={soilDepthIn}
            optional
            positive
            onCommit={(value) => {
              understandTemperatures({ soilDepthIn: value });
              return ok(null);
            }}
          />
        </Field>
      )}
    </fieldset>
  );
}

type OutcomeProps = { readonly file: TemperatureImport; readonly merged: MergedTemperatures };

function Outcome({ file, merged: { reading, years } }: OutcomeProps) {
  const words = useFormat();
  const { found, accepted, rejected, empty, elsewhere, issues, days } = reading;
  const [first] = days;
  const degrees = (value: number | null) => (value === null ? 'not read' : words.temperature(value));
  return (
    <>
      <dl className="counts">
        <Count value={found} words="rows in the file" />
        <Count value={accepted} words="days" />
        <Count value={empty} words="rows without a figure" />
        {elsewhere > 0 && <Count value={elsewhere} words="of other stations" />}
        <Count value={rejected} words="rejected" stop={rejected > 0} />
      </dl>
      {first !== undefined && (
        <p className="small">
          Read so: {words.longDate(first[0])}
          {file.columns.max >= 0 && `, highest ${degrees(first[1])}`}
          {file.columns.min >= 0 && `, lowest ${degrees(first[2])}`}
          {file.columns.soil >= 0 && `, soil ${degrees(first[3])}`}.
        </p>
      )}
      <table className="table import-table">
        <thead>
          <tr>
            <th scope="col">Year</th>
            <th scope="col" className="number">
              New
            </th>
            <th scope="col" className="number">
              Changed
            </th>
            <th scope="col" className="number">
              The same
            </th>
            <th scope="col">Missing between the first and the last day</th>
          </tr>
        </thead>
        <tbody>
          {years.map(({ year, added, changed, same, missing }) => (
            <tr key={year}>
              <th scope="row">{year}</th>
              <td className="number">{added}</td>
              <td className="number">{changed}</td>
              <td className="number">{same}</td>
              <td>{missing.length === 0 ? 'none' : missingWords(missing, words.date)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {issues.length > 0 && <IssueList issues={issues} most={MOST_ISSUES} />}
    </>
  );
}

function missingWords(missing: readonly DayRange[], dateWords: (date: string) => string): string {
  const days = missing.reduce((sum, each) => sum + each.days, 0);
  const ranges = missing.map(({ from, to }) =>
    from === to ? dateWords(from) : `${dateWords(from)} to ${dateWords(to)}`,
  );
  return `${counted(days, 'day')}: ${ranges.join(', ')}`;
}
