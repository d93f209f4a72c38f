import type { Book } from '../../core/book/index.ts';
import {
  type DateOrder,
  type DegreeUnit,
  type GroundSource,
  guessTemperatureColumns,
  guessTemperatures,
  readTemperatures,
  type Table,
  type TemperatureColumns,
  type TemperatureGuess,
  type TemperatureReading,
} from '../../core/formats/index.ts';
import { type MergedYear, mergeTemperatures } from '../../core/round/timing/index.ts';
import { filesWords } from '../texts/stores/index.ts';

/** A table of temperatures on its way into the book: what was seen in it, and what was answered. */
export type TemperatureImport = {
  readonly kind: 'temperatures';
  readonly fileName: string;
  readonly table: Table;
  readonly columns: TemperatureColumns;
  readonly guess: TemperatureGuess;
  /** Null while it is not said. */
  readonly airUnit: DegreeUnit | null;
  readonly soilUnit: DegreeUnit | null;
  readonly dateOrder: DateOrder | null;
  /** Which of the file's stations is taken; null where it names none, or while it is not said. */
  readonly taken: string | null;
  /** What the station is called in the book. */
  readonly station: string;
  readonly soilDepthIn: number | null;
};

/** The first look at a table of temperatures. A file of the one station that the book has adds to it. */
export function beginTemperatures(fileName: string, table: Table, stations: readonly string[]): TemperatureImport {
  const columns = guessTemperatureColumns(table.columns);
  const guess = guessTemperatures(table, columns);
  const [named] = guess.stations;
  const known = [...new Set(stations)];
  const stem = fileName.replace(/\.[^.]*$/, '');
  return {
    kind: 'temperatures',
    fileName,
    table,
    columns,
    guess,
    ...answersOf(guess),
    station:
      guess.stations.length === 1 && named !== undefined ? named : known.length === 1 ? (known[0] ?? stem) : stem,
    soilDepthIn: null,
  };
}

function answersOf(guess: TemperatureGuess): Pick<TemperatureImport, 'airUnit' | 'soilUnit' | 'dateOrder' | 'taken'> {
  return {
    airUnit: guess.air.unit,
    soilUnit: guess.soil.unit,
    dateOrder: guess.dates.order,
    taken: guess.stations.length === 1 ? (guess.stations[0] ?? null) : null,
  };
}

/** The import with other answers; other columns are looked at anew. */
export function withAnswers(file: TemperatureImport, changes: Partial<TemperatureImport>): TemperatureImport {
  const changed = { ...file, ...changes };
  if (changes.columns === undefined) return changed;
  const guess = guessTemperatures(file.table, changes.columns);
  return { ...changed, guess, ...answersOf(guess) };
}

/** What has to be said before the file can be read, in words. */
export function openQuestions({
  columns,
  guess,
  airUnit,
  soilUnit,
  dateOrder,
  taken,
  station,
}: TemperatureImport): readonly string[] {
  const hasAir = columns.max >= 0 || columns.min >= 0;
  return [
    ...(columns.date < 0 ? [filesWords.temperatureImport.dateColumn] : []),
    ...(!hasAir && columns.soil < 0 ? [filesWords.temperatureImport.temperatureColumns] : []),
    ...(columns.date >= 0 && dateOrder === null ? [filesWords.temperatureImport.dateOrder] : []),
    ...(hasAir && airUnit === null ? [filesWords.temperatureImport.airUnit] : []),
    ...(columns.soil >= 0 && soilUnit === null ? [filesWords.temperatureImport.soilUnit] : []),
    ...(guess.stations.length > 1 && taken === null ? [filesWords.temperatureImport.station] : []),
    ...(station.trim() === '' ? [filesWords.temperatureImport.stationName] : []),
  ];
}

/** What a table of temperatures would do to the book. */
export type MergedTemperatures = { readonly reading: TemperatureReading; readonly years: readonly MergedYear[] };

/** Reads the table as it was answered; null while something is still to be said. Nothing is changed yet. */
export function readAnswered(file: TemperatureImport, book: Book): MergedTemperatures | null {
  if (openQuestions(file).length > 0) return null;
  const { table, columns, dateOrder, airUnit, soilUnit, taken, fileName, soilDepthIn } = file;
  const reading = readTemperatures(
    table,
    { columns, dateOrder, airUnit: airUnit ?? 'F', soilUnit: soilUnit ?? 'F', station: taken },
    fileName,
  );
  const station = file.station.trim();
  const ids = new Set(book.temperatures.map((each) => each.id));
  const idFor = (year: number): string => {
    const stem = `${station
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .slice(0, 60)}-${year}`;
    let id = stem;
    for (let number = 2; ids.has(id); number += 1) id = `${stem}-${number}`;
    ids.add(id);
    return id;
  };
  const about = { source: fileName, soilDepthIn: columns.soil < 0 ? null : soilDepthIn };
  return { reading, years: mergeTemperatures(book.temperatures, station, reading.days, about, idFor) };
}

const ROW = /, row (\d+)$/;

/** The one table of a file as rows of cells, with the numbers that its rows have in the file; null for anything else. */
export function tableOfSource({ formatId, layers }: GroundSource): Table | null {
  const [layer] = layers;
  if (formatId !== 'csv' || layer === undefined || layers.length > 1) return null;
  return {
    columns: layer.fields,
    rows: layer.features.map(({ where, attributes }, index) => ({
      number: Number(ROW.exec(where)?.[1] ?? index + 2),
      cells: layer.fields.map((field) => String(attributes[field] ?? '')),
      fault: null,
    })),
  };
}
