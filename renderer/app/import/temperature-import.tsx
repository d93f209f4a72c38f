import { useMemo } from 'react';
import { ok } from '../../../core/base/index.ts';
import type { DateOrder, DegreeUnit, TemperatureColumns, UnitGuess } from '../../../core/formats/index.ts';
import type { DayRange } from '../../../core/round/timing/index.ts';
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
import { importWords } from '../../texts/app/index.ts';
import { commonWords } from '../../texts/index.ts';
import { Button, Choice, DraftInput, Field, IssueList, QuantityInput } from '../../ui/index.ts';
import { Count } from './count.tsx';

const MOST_ISSUES = 200;

/** A table of daily temperatures: its columns, what has to be asked, and what it would add. */
export function TemperatureImportSheet({ file }: { readonly file: TemperatureImport }) {
  const book = useBook((state) => state.open?.book ?? null);
  const questions = openQuestions(file);
  const merged = useMemo(() => (book === null ? null : readAnswered(file, book)), [file, book]);
  const nothing = merged !== null && merged.reading.accepted === 0 ? importWords.temperatureImport.noRow : null;
  const whyNot = questions.length > 0 ? importWords.temperatureImport.whyNot(questions.join(', ')) : nothing;
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard. */}
      <section className="import-body" aria-label={importWords.temperatureImport.label} tabIndex={0}>
        <Columns file={file} />
        <DatesQuestion file={file} />
        <UnitQuestion file={file} what={importWords.temperatureImport.air} />
        <UnitQuestion file={file} what={importWords.temperatureImport.soil} />
        <StationQuestion file={file} />
        {merged === null ? (
          <p className="caution" role="status">
            {importWords.temperatureImport.sayFirst(questions.join(', '))}
          </p>
        ) : (
          <Outcome file={file} merged={merged} />
        )}
      </section>
      <div className="dialog-foot">
        <Button onPress={closeImport}>{commonWords.cancel}</Button>
        <Button
          look="main"
          whyNot={whyNot}
          onPress={() => {
            const records = merged?.years.map((each) => each.record) ?? [];
            if (addImported(file.fileName, { kind: 'temperatures', records })) closeImport();
          }}
        >
          {importWords.temperatureImport.add}
        </Button>
      </div>
    </>
  );
}

const MEANINGS: readonly { readonly name: keyof TemperatureColumns; readonly words: string }[] = [
  { name: 'date', words: 'date' },
  { name: 'max', words: importWords.temperatureImport.highestOfAir },
  { name: 'min', words: importWords.temperatureImport.lowestOfAir },
  { name: importWords.temperatureImport.soil, words: importWords.temperatureImport.meanOfSoil },
  { name: 'station', words: 'station' },
];
const SAMPLES = 3;

function Columns({ file: { table, columns } }: { readonly file: TemperatureImport }) {
  const options = [
    { value: '-1', words: importWords.temperatureImport.notInFile },
    ...table.columns.map((name, place) => ({
      value: String(place),
      words: name === '' ? importWords.temperatureImport.column(place + 1) : name,
    })),
  ];
  return (
    <table className="table import-table">
      <thead>
        <tr>
          <th scope="col">{importWords.temperatureImport.meaning}</th>
          <th scope="col">{importWords.temperatureImport.columnHead}</th>
          <th scope="col">{importWords.temperatureImport.example}</th>
        </tr>
      </thead>
      <tbody>
        {MEANINGS.map(({ name, words }) => (
          <tr key={name}>
            <th scope="row">{words}</th>
            <td>
              <Choice
                label={importWords.temperatureImport.columnFor(words)}
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
  mdy: importWords.temperatureImport.mdy,
  dmy: importWords.temperatureImport.dmy,
  ymd: importWords.temperatureImport.ymd,
};

/** Asked where the dates can be read in several ways; the example says what each of them would mean. */
function DatesQuestion({ file: { guess, dateOrder } }: { readonly file: TemperatureImport }) {
  const words = useFormat();
  const { example } = guess.dates;
  if (example === null) return null;
  return (
    <fieldset className="import-question">
      <legend>{importWords.temperatureImport.orderAsked}</legend>
      <p className="quiet small">{importWords.temperatureImport.orderOpen(example.text)}</p>
      <Choice
        label={importWords.temperatureImport.orderLabel}
        value={dateOrder ?? OPEN}
        options={[
          { value: OPEN, words: importWords.temperatureImport.notSaidYet },
          ...example.readings.map(({ order, date }) => ({
            value: order,
            words: importWords.temperatureImport.orderExample(ORDER_WORDS[order], example.text, words.longDate(date)),
          })),
        ]}
        onChoose={(order) => understandTemperatures({ dateOrder: order === OPEN ? null : order })}
      />
    </fieldset>
  );
}

const UNITS: readonly { readonly value: DegreeUnit | typeof OPEN; readonly words: string }[] = [
  { value: OPEN, words: importWords.temperatureImport.notSaidYet },
  { value: 'F', words: importWords.temperatureImport.fahrenheit },
  { value: 'C', words: importWords.temperatureImport.celsius },
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
      <legend>{importWords.temperatureImport.unitAsked(what)}</legend>
      <p className="quiet small">{found.why}</p>
      <Choice
        label={importWords.temperatureImport.unitOf(what)}
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
      <legend>{importWords.temperatureImport.stationAsked}</legend>
      {guess.stations.length > 1 && (
        <Field label={importWords.temperatureImport.takenFromFile}>
          <Choice
            label={importWords.temperatureImport.takenFromFile}
            value={taken ?? ''}
            options={[
              { value: '', words: importWords.temperatureImport.notSaidYetOf(guess.stations.length) },
              ...guess.stations.map((value) => ({ value, words: value })),
            ]}
            onChoose={(value) =>
              understandTemperatures(value === '' ? { taken: null } : { taken: value, station: value })
            }
          />
        </Field>
      )}
      <Field label={importWords.temperatureImport.nameInBook} note={importWords.temperatureImport.nameNote}>
        <DraftInput
          label={importWords.temperatureImport.nameLabel}
          text={station}
          onCommit={(name) => {
            understandTemperatures({ station: name });
            return ok(null);
          }}
        />
      </Field>
      {columns.soil >= 0 && (
        <Field label={importWords.temperatureImport.depthSoilThermometer}>
          <QuantityInput
            kind="width"
            label={importWords.temperatureImport.depthSoilThermometer}
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
  const degrees = (value: number | null) =>
    value === null ? importWords.temperatureImport.notRead : words.temperature(value);
  return (
    <>
      <dl className="counts">
        <Count value={found} words={importWords.temperatureImport.rows} />
        <Count value={accepted} words={importWords.temperatureImport.days} />
        <Count value={empty} words={importWords.temperatureImport.rowsEmpty} />
        {elsewhere > 0 && <Count value={elsewhere} words={importWords.temperatureImport.otherStations} />}
        <Count value={rejected} words={importWords.temperatureImport.rejected} stop={rejected > 0} />
      </dl>
      {first !== undefined && (
        <p className="small">
          {importWords.temperatureImport.sample(words.longDate(first[0]))}
          {file.columns.max >= 0 && importWords.temperatureImport.highest(degrees(first[1]))}
          {file.columns.min >= 0 && importWords.temperatureImport.lowest(degrees(first[2]))}
          {file.columns.soil >= 0 && importWords.temperatureImport.soilAt(degrees(first[3]))}.
        </p>
      )}
      <table className="table import-table">
        <thead>
          <tr>
            <th scope="col">{importWords.temperatureImport.year}</th>
            <th scope="col" className="number">
              {importWords.temperatureImport.new}
            </th>
            <th scope="col" className="number">
              {importWords.temperatureImport.changed}
            </th>
            <th scope="col" className="number">
              {importWords.temperatureImport.theSame}
            </th>
            <th scope="col">{importWords.temperatureImport.missingBetween}</th>
          </tr>
        </thead>
        <tbody>
          {years.map(({ year, added, changed, same, missing }) => (
            <tr key={year}>
              <th scope="row">{year}</th>
              <td className="number">{added}</td>
              <td className="number">{changed}</td>
              <td className="number">{same}</td>
              <td>{missing.length === 0 ? commonWords.none : missingWords(missing, words.date)}</td>
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
    from === to ? dateWords(from) : commonWords.span(dateWords(from), dateWords(to)),
  );
  return `${commonWords.days(days)}: ${ranges.join(', ')}`;
}
