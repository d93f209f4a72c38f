import { FileUp } from 'lucide-react';
import { useState } from 'react';
import type { Book } from '../../../../core/book/index.ts';
import {
  guessWeather,
  guessWeatherColumns,
  RAIN_UNITS,
  readWeather,
  type Table,
  type WeatherAnswers,
  type WeatherColumns,
  type WeatherGuess,
  WIND_UNITS,
} from '../../../../core/formats/index.ts';
import { CommandButton } from '../../../commands/index.ts';
import { closeWeatherFile, type OpenedWeather, useWeatherFile } from '../../../stores/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { calendarWords } from '../../../texts/round/index.ts';
import { Button, Choice, Field, IssueList, Section } from '../../../ui/index.ts';
import { takeWeather } from './calendar-edits.ts';

/** Weather by the hour out of a file: its columns and units are shown and asked, then its days are taken. */
export function WeatherFile({ book }: { readonly book: Book }) {
  const opened = useWeatherFile((state) => state.opened);
  return (
    <Section
      title={calendarWords.weatherFile.weather}
      aside={
        <CommandButton id="round.weather">
          <FileUp size={14} aria-hidden="true" /> {calendarWords.weatherFile.readAFile}
        </CommandButton>
      }
    >
      {opened === null ? (
        <p className="quiet small">
          {book.weather.length === 0
            ? calendarWords.weatherFile.noneYet
            : calendarWords.weatherFile.daysInBook(book.weather.length)}
        </p>
      ) : (
        <Questions key={opened.name} book={book} opened={opened} onDone={closeWeatherFile} />
      )}
    </Section>
  );
}

type Asked = Partial<Omit<WeatherAnswers, 'columns'>>;
type QuestionsProps = { readonly book: Book; readonly opened: OpenedWeather; readonly onDone: () => void };

function Questions({ book, opened, onDone }: QuestionsProps) {
  const { table, name } = opened;
  const [columns, setColumns] = useState(() => guessWeatherColumns(table.columns));
  const [asked, setAsked] = useState<Asked>({});
  const guess = guessWeather(table, columns);
  const open = openQuestions(columns, guess, asked);
  const answers: WeatherAnswers = {
    columns,
    dateOrder: asked.dateOrder ?? guess.dates.order,
    airUnit: asked.airUnit ?? guess.air.unit ?? 'F',
    windUnit: asked.windUnit ?? guess.wind ?? 'mph',
    rainUnit: asked.rainUnit ?? guess.rain ?? 'in',
  };
  const read = open.length === 0 ? readWeather(table, answers, name) : null;
  const whyNot = open[0] ?? (read?.days.length === 0 ? calendarWords.weatherFile.unreadable : null);
  return (
    <div className="weather-file" ref={showUp}>
      <p className="strong">{name}</p>
      <Columns table={table} columns={columns} onChange={setColumns} />
      <Units columns={columns} guess={guess} asked={asked} onAnswer={(more) => setAsked({ ...asked, ...more })} />
      {read !== null && (
        <p>
          {calendarWords.weatherFile.counts(read.found, read.accepted, read.rejected, read.empty, read.days.length)}
        </p>
      )}
      {read !== null && read.issues.length > 0 && <IssueList issues={read.issues} most={20} />}
      <div className="day-actions">
        <Button
          look="main"
          whyNot={whyNot}
          onPress={() => {
            if (read !== null && takeWeather(book, read.days, name).ok) onDone();
          }}
        >
          {calendarWords.weatherFile.takeDays}
        </Button>
        <Button onPress={onDone}>{commonWords.cancel}</Button>
      </div>
    </div>
  );
}

/** A file may come from outside the calendar: its questions are brought into view. */
function showUp(element: HTMLElement | null): void {
  element?.scrollIntoView({ block: 'center' });
}

/** What has to be answered before the file can be read. */
function openQuestions(columns: WeatherColumns, guess: WeatherGuess, asked: Asked): readonly string[] {
  return [
    ...(columns.date < 0 ? [calendarWords.weatherFile.chooseDate] : []),
    ...(columns.wind < 0 && columns.air < 0 && columns.rain < 0 ? [calendarWords.weatherFile.chooseFigure] : []),
    ...(guess.dates.order === null && asked.dateOrder === undefined ? [calendarWords.weatherFile.sayDates] : []),
    ...(columns.air >= 0 && guess.air.unit === null && asked.airUnit === undefined
      ? [calendarWords.weatherFile.sayUnitAir]
      : []),
    ...(guess.wind === null && asked.windUnit === undefined ? [calendarWords.weatherFile.sayWindUnit] : []),
    ...(guess.rain === null && asked.rainUnit === undefined ? [calendarWords.weatherFile.sayRainUnit] : []),
  ];
}

const COLUMN_WORDS = [
  ['date', calendarWords.weatherFile.date],
  ['time', calendarWords.weatherFile.hourOrTime],
  ['wind', calendarWords.weatherFile.wind],
  ['air', calendarWords.weatherFile.airTemperature],
  ['rain', calendarWords.weatherFile.rain],
] as const;

type ColumnsProps = {
  readonly table: Table;
  readonly columns: WeatherColumns;
  readonly onChange: (columns: WeatherColumns) => void;
};

function Columns({ table, columns, onChange }: ColumnsProps) {
  const options = [
    { value: '-1', words: commonWords.none },
    ...table.columns.map((words, at) => ({
      value: String(at),
      words: words === '' ? calendarWords.weatherFile.column(at + 1) : words,
    })),
  ];
  return COLUMN_WORDS.map(([column, words]) => (
    <Field key={column} label={words}>
      <Choice
        label={calendarWords.weatherFile.columnOf(words.toLowerCase())}
        value={String(columns[column])}
        options={options}
        onChoose={(value) => onChange({ ...columns, [column]: Number(value) })}
      />
    </Field>
  ));
}

type UnitsProps = {
  readonly columns: WeatherColumns;
  readonly guess: WeatherGuess;
  readonly asked: Asked;
  readonly onAnswer: (answer: Asked) => void;
};

const ASK = calendarWords.weatherFile.sayWhich;

/** The units as the file states them, and questions where it does not. */
function Units({ columns, guess, asked, onAnswer }: UnitsProps) {
  const { example } = guess.dates;
  return (
    <>
      {example !== null && (
        <Question
          label={calendarWords.weatherFile.datesWritten}
          note={calendarWords.weatherFile.severalWays(example.text)}
          value={asked.dateOrder ?? ''}
          options={example.readings.map(({ order, date }) => ({
            value: order,
            words: calendarWords.weatherFile.sampleDate(date),
          }))}
          onChoose={(dateOrder) => onAnswer({ dateOrder })}
        />
      )}
      {columns.air >= 0 && (
        <Question
          label={calendarWords.weatherFile.airUnit}
          note={guess.air.why}
          value={asked.airUnit ?? guess.air.unit ?? ''}
          options={[
            { value: 'F', words: calendarWords.weatherFile.fahrenheit },
            { value: 'C', words: calendarWords.weatherFile.celsius },
          ]}
          onChoose={(airUnit) => onAnswer({ airUnit })}
        />
      )}
      {columns.wind >= 0 && (
        <Question
          label={calendarWords.weatherFile.windUnit}
          note={guess.wind === null ? calendarWords.weatherFile.unitNotSaid : calendarWords.weatherFile.unitOfHeader}
          value={asked.windUnit ?? guess.wind ?? ''}
          options={WIND_UNITS.map((value) => ({
            value,
            words: value === 'kn' ? calendarWords.weatherFile.knots : value,
          }))}
          onChoose={(windUnit) => onAnswer({ windUnit })}
        />
      )}
      {columns.rain >= 0 && (
        <Question
          label={calendarWords.weatherFile.rainUnit}
          note={guess.rain === null ? calendarWords.weatherFile.unitNotSaid : calendarWords.weatherFile.unitOfHeader}
          value={asked.rainUnit ?? guess.rain ?? ''}
          options={RAIN_UNITS.map((value) => ({
            value,
            words: value === 'in' ? calendarWords.weatherFile.inches : calendarWords.weatherFile.millimetres,
          }))}
          onChoose={(rainUnit) => onAnswer({ rainUnit })}
        />
      )}
    </>
  );
}

type QuestionProps<Value extends string> = {
  readonly label: string;
  readonly note: string;
  readonly value: Value | '';
  readonly options: readonly { readonly value: Value; readonly words: string }[];
  readonly onChoose: (value: Value) => void;
};

function Question<Value extends string>({ label, note, value, options, onChoose }: QuestionProps<Value>) {
  const all: readonly { readonly value: Value | ''; readonly words: string }[] =
    value === '' ? [{ value: '', words: ASK }, ...options] : options;
  return (
    <Field label={label} note={note}>
      <Choice
        label={label}
        value={value}
        options={all}
        onChoose={(chosen) => {
          if (chosen !== '') onChoose(chosen);
        }}
      />
    </Field>
  );
}
