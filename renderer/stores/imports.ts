import { create } from 'zustand';
import { type AppError, err, type Issue, ok, type Progress, type Result } from '../../core/base/index.ts';
import type { Position, TravelMatrix } from '../../core/book/index.ts';
import {
  type GroundSource,
  looksLikeTemperatures,
  looksLikeWeather,
  previewMatrix,
  readTemperatureTable,
} from '../../core/formats/index.ts';
import {
  type CoordinatesAnswer,
  type Guess,
  guessMapping,
  type IntakePreview,
  type IntakeTools,
  intakeSteps,
  type LayerMapping,
  type Mapping,
} from '../../core/intake/index.ts';
import { withPastMeasure } from '../../core/measure/index.ts';
import { todayHere } from '../format/index.ts';
import { filesWords } from '../texts/stores/index.ts';
import { useBook } from './book.ts';
import { callHost } from './host.ts';
import { say, showError } from './notices.ts';
import { inSlices } from './slices.ts';
import { beginTemperatures, type TemperatureImport, tableOfSource, withAnswers } from './temperature-import.ts';
import { takeWeatherTable } from './weather-file.ts';

/** How far reading or looking is. */
export type ImportProgress = Pick<Progress, 'step' | 'done' | 'total'>;

export const IMPORT_STEPS = ['content', 'fields', 'changes'] as const;
export type ImportStep = (typeof IMPORT_STEPS)[number];

/** A table of travel times that waits for the user's word. */
export type MatrixImport = {
  readonly kind: 'matrix';
  readonly fileName: string;
  readonly found: number;
  readonly rejected: number;
  readonly matrix: TravelMatrix;
  readonly issues: readonly Issue[];
};
/** A file of ground on its way into the book. */
export type GroundImport = {
  readonly kind: 'ground';
  readonly fileName: string;
  readonly source: GroundSource;
  readonly leftOut: Guess['leftOut'];
  readonly mapping: Mapping;
  readonly step: ImportStep;
  /** What it would change; null while that is not known. */
  readonly preview: IntakePreview | null;
  readonly progress: ImportProgress | null;
};
export type ImportState =
  | { readonly kind: 'none' }
  | {
      readonly kind: 'reading';
      readonly fileName: string;
      readonly token: string;
      readonly progress: ImportProgress | null;
    }
  | MatrixImport
  | TemperatureImport
  | GroundImport;

const NONE: ImportState = { kind: 'none' };

/** The import that is under way. */
export const useImport = create<{ readonly current: ImportState }>(() => ({ current: NONE }));

const show = (current: ImportState): void => useImport.setState({ current });
let stopLooking: () => void = () => undefined;

/** Lets go of the import; a file that is being read is not read on. */
export function closeImport(): void {
  const { current } = useImport.getState();
  stopLooking();
  show(NONE);
  if (current.kind === 'reading') callHost('ground.cancel', { token: current.token }).catch(() => undefined);
}

/** Has the host read a picked file, and asks what its layers and fields are. */
export async function readGround(fileName: string, token: string): Promise<void> {
  closeImport();
  show({ kind: 'reading', fileName, token, progress: null });
  const answer = await callHost('ground.read', { token });
  const { current } = useImport.getState();
  if (current.kind !== 'reading' || current.token !== token) return;
  const table = answer.ok ? tableOfSource(answer.value) : null;
  if (table !== null && looksLikeWeather(table)) {
    show(NONE);
    const taken = takeWeatherTable(fileName, table);
    if (!taken.ok) showError(taken.error);
    return;
  }
  const begun = answer.ok ? beginImport(fileName, answer.value) : answer;
  if (begun.ok) show(begun.value);
  else failWith(begun.error);
}

/**
 * Has the host read a list of lawns that is to begin a book of its own. Null where it was stopped, cannot be read, or holds no lawns;
 * that is told by a notice, and nothing is changed.
 */
export async function readList(fileName: string, token: string): Promise<GroundImport | null> {
  closeImport();
  show({ kind: 'reading', fileName, token, progress: null });
  const answer = await callHost('ground.read', { token });
  const { current } = useImport.getState();
  if (current.kind !== 'reading' || current.token !== token) return null;
  const begun = answer.ok ? beginImport(fileName, answer.value) : answer;
  show(NONE);
  if (!begun.ok) failWith(begun.error);
  else if (begun.value.kind !== 'ground' || holdsNothing(begun.value)) failWith(noLawns(fileName, begun.value.kind));
  else return begun.value;
  return null;
}

function holdsNothing({ source }: GroundImport): boolean {
  return source.layers.every((layer) => layer.features.length === 0);
}

function noLawns(where: string, kind: Parameters<typeof filesWords.imports.noLawns>[0]): AppError {
  return {
    code: 'nothing-to-do',
    where,
    detail: filesWords.imports.noLawns(kind),
    hint: filesWords.imports.noLawnsAdvice,
  };
}

/** Shows an import that was read before. */
export function showImport(begun: GroundImport): void {
  closeImport();
  show(begun);
}

function failWith(error: AppError): void {
  show(NONE);
  if (error.code !== 'cancelled') showError(error);
}

/** How far the host is with reading. */
export function groundProgress(event: ImportProgress & { readonly token: string }): void {
  const { current } = useImport.getState();
  if (current.kind === 'reading' && current.token === event.token) show({ ...current, progress: event });
}

/** The first look at what a file holds: ground, or travel times or temperatures where its one table has their columns. */
export function beginImport(
  fileName: string,
  source: GroundSource,
): Result<MatrixImport | TemperatureImport | GroundImport> {
  const text = matrixTextOf(source);
  if (text !== null) return previewTimes(fileName, text);
  const table = tableOfSource(source);
  if (table !== null && looksLikeTemperatures(table.columns)) return ok(beginTemperatures(fileName, table, stations()));
  const { mapping, leftOut } = guessMapping(source);
  return ok({ kind: 'ground', fileName, source, leftOut, mapping, step: 'content', preview: null, progress: null });
}

/** Shows what a table of temperatures would add. Errors: those of the format. */
export function readTemperatureFile(fileName: string, text: string | null): void {
  closeImport();
  const read =
    text === null
      ? err('file-not-readable', fileName, filesWords.imports.noText, filesWords.imports.noTextAdvice)
      : readTemperatureTable(text, fileName);
  if (read.ok) show(beginTemperatures(fileName, read.value, stations()));
  else failWith(read.error);
}

/** Whether a text is a table of daily temperatures; words about the station may stand before its header. */
export function holdsTemperatures(text: string, fileName: string): boolean {
  const read = readTemperatureTable(text, fileName);
  return read.ok && looksLikeTemperatures(read.value.columns);
}

/** Says how a table of temperatures is to be read. */
export function understandTemperatures(changes: Partial<TemperatureImport>): void {
  const { current } = useImport.getState();
  if (current.kind === 'temperatures') show(withAnswers(current, changes));
}

function stations(): readonly string[] {
  return (useBook.getState().open?.book.temperatures ?? []).map((each) => each.station);
}

/** Reads a table of travel times. Nothing is changed yet. Errors: those of the format. */
export function previewTimes(fileName: string, text: string | null): Result<MatrixImport> {
  if (text === null) {
    return err('file-not-readable', fileName, filesWords.imports.noText, filesWords.imports.noTextAdvice);
  }
  const read = previewMatrix(text, fileName);
  if (!read.ok) return read;
  const { matrix, found, rejected, issues } = read.value;
  return ok({ kind: 'matrix', fileName, found, rejected, matrix, issues });
}

/** The text of a table that has columns from, to and a time; null for anything else. */
function matrixTextOf({ formatId, layers }: GroundSource): string | null {
  const [layer] = layers;
  if (formatId !== 'csv' || layer === undefined || layers.length > 1) return null;
  const names = layer.fields.map((each) => each.toLowerCase());
  if (!names.includes('from') || !names.includes('to')) return null;
  const cell = (value: unknown) => `"${String(value ?? '').replaceAll('"', '""')}"`;
  const rows = layer.features.map(({ attributes }) => layer.fields.map((field) => cell(attributes[field])).join(','));
  return [layer.fields.map(cell).join(','), ...rows].join('\n');
}

/** Changes how one layer is understood. What was looked at before no longer holds. */
export function understandLayer(place: number, changes: Partial<LayerMapping>): void {
  const { current } = useImport.getState();
  if (current.kind !== 'ground') return;
  const layers = current.mapping.layers.map((each, index) => (index === place ? { ...each, ...changes } : each));
  understandFile({ layers });
}

/** Says where a drawing lies; all its layers share one place. */
export function placeDrawing(coordinates: CoordinatesAnswer | null): void {
  const { current } = useImport.getState();
  if (current.kind !== 'ground') return;
  const { source, mapping } = current;
  const layers = mapping.layers.map((each, place) =>
    source.layers[place]?.coordinates.kind === 'drawing' ? { ...each, coordinates } : each,
  );
  understandFile({ layers });
}

export function understandFile(changes: Partial<Mapping>): void {
  const { current } = useImport.getState();
  if (current.kind !== 'ground') return;
  show({ ...current, mapping: { ...current.mapping, ...changes }, preview: null });
}

const STEP_WORDS: Readonly<Record<ImportStep, string>> = {
  content: filesWords.imports.step1,
  fields: filesWords.imports.step2,
  changes: filesWords.imports.step3,
};

/** Goes to a step; the last one looks at the book first. */
export function goToImportStep(step: ImportStep): void {
  const { current } = useImport.getState();
  if (current.kind !== 'ground') return;
  stopLooking();
  show({ ...current, step, progress: null });
  say(STEP_WORDS[step]);
  if (step === 'changes' && current.preview === null) lookAtBook().catch(() => undefined);
}

/** Works out what the import would change, in short parts between which the window can draw. */
export async function lookAtBook(): Promise<void> {
  const before = useImport.getState().current;
  const { open } = useBook.getState();
  if (before.kind !== 'ground' || open === null) return;
  const { source, mapping, fileName } = before;
  const tools = await toolsFor(source, mapping);
  const now = useImport.getState().current;
  if (now.kind !== 'ground' || now.mapping !== mapping || now.step !== 'changes') return;
  const steps = intakeSteps(open.book, source, mapping, fileName, tools);
  stopLooking = inSlices(
    steps,
    (progress) => keep({ progress }),
    (preview) => {
      keep({ preview, progress: null });
      const { found, rejected } = preview.counts;
      say(filesWords.imports.looked(found, rejected));
    },
  );
}

function keep(changes: Partial<GroundImport>): void {
  const { current } = useImport.getState();
  if (current.kind === 'ground') show({ ...current, ...changes });
}

/** What the preview needs of the program: today's date, and places of addresses where a street file was loaded. */
async function toolsFor(source: GroundSource, mapping: Mapping): Promise<IntakeTools> {
  const today = todayHere();
  const places = await findPlaces(addressesOf(source, mapping));
  return {
    keepPast: (before, after) => withPastMeasure(before, after, today),
    findPlace: (address) => places.get(address) ?? null,
  };
}

/** Addresses of records that have no place of their own. */
function addressesOf(source: GroundSource, mapping: Mapping): readonly string[] {
  const all = source.layers.flatMap((layer, place) => {
    const field = mapping.layers[place]?.fields.address?.field;
    if (field === undefined) return [];
    return layer.features.flatMap(({ geometry, attributes }) => {
      const text = geometry === null ? String(attributes[field] ?? '').trim() : '';
      return text === '' ? [] : [text];
    });
  });
  return [...new Set(all)];
}

/** The host looks up so many addresses in one go. */
const MOST_ADDRESSES = 20_000;

async function findPlaces(addresses: readonly string[]): Promise<ReadonlyMap<string, Position>> {
  const found = new Map<string, Position>();
  for (let first = 0; first < addresses.length; first += MOST_ADDRESSES) {
    const asked = addresses.slice(first, first + MOST_ADDRESSES);
    const answer = await callHost('places.find', { addresses: asked });
    if (!answer.ok) return found;
    for (const [index, each] of answer.value.entries()) {
      const address = asked[index];
      if (each.kind === 'placed' && address !== undefined) found.set(address, each.at);
    }
  }
  return found;
}
