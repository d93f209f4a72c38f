import { type Issue, issue, type Progress } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import type { GroundSource } from '../formats/index.ts';
import { type Placing, placingOf } from './coordinates.ts';
import { type Draft, draftLawns, freeId, recordsOf } from './drafts.ts';
import { openHomes } from './homes.ts';
import type { LayerMapping, Mapping } from './mapping.ts';
import { matchDrafts, strangersOf, twinsOf } from './match.ts';
import { mergeDraft } from './merge/property.ts';
import { readRecord } from './read-record.ts';
import { type IntakeRecord, refuse } from './record.ts';
import { countRows, rowsOf, type Settled } from './rows.ts';
import type { IntakePreview, IntakeTools } from './types.ts';

/** Work between two reports of how far it is. */
const SLICE = 64;

/** Work done in small steps, each of which says how far it is; the last one gives the result. */
export type Steps<Value> = Generator<Progress, Value, undefined>;

/**
 * What importing a file would change in a book. Every record of the file is one row: new, changed, same, part of another one's
 * property, or rejected with its reason. Nothing is changed yet.
 */
export function previewIntake(
  book: Book,
  source: GroundSource,
  mapping: Mapping,
  fileName: string,
  tools: IntakeTools = {},
): IntakePreview {
  const steps = intakeSteps(book, source, mapping, fileName, tools);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** The steps of `previewIntake`, for callers that have other things to do between them. */
export function* intakeSteps(
  book: Book,
  source: GroundSource,
  mapping: Mapping,
  fileName: string,
  tools: IntakeTools = {},
): Steps<IntakePreview> {
  const issues = [...source.issues];
  const records = yield* readAll(source, mapping, issues);
  const drafting = draftLawns(records);
  matchDrafts(drafting.drafts, book.properties, mapping.mergeBy);
  const errors = new Map<number, Issue>(drafting.refused);
  const drafts = yield* settleParts(records, drafting.drafts, book, mapping, errors);
  const settled = yield* mergeAll(drafts, book, fileName, tools);
  const remarks = joinRemarks(drafting.remarks, twinsOf(drafts, book.properties), strangersOf(drafts));
  const rows = rowsOf(records, settled, errors, remarks);
  return {
    fileName,
    rows,
    counts: countRows(rows),
    properties: settled.flatMap((each) => each.change ?? []),
    issues,
    base: book.properties,
  };
}

function joinRemarks(
  remarks: ReadonlyMap<number, readonly Issue[]>,
  ...others: readonly ReadonlyMap<number, Issue>[]
): ReadonlyMap<number, readonly Issue[]> {
  const all = new Map(remarks);
  for (const other of others) {
    for (const [index, each] of other) all.set(index, [...(all.get(index) ?? []), each]);
  }
  return all;
}

function* readAll(source: GroundSource, mapping: Mapping, issues: Issue[]): Steps<readonly IntakeRecord[]> {
  const total = source.layers.reduce((sum, each) => sum + each.features.length, 0);
  const records: IntakeRecord[] = [];
  for (const [place, layer] of source.layers.entries()) {
    const understood = mapping.layers[place] ?? NO_MAPPING;
    const placing =
      understood.role === 'nothing' ? null : placingOf(layer.coordinates, understood.coordinates, layer.name);
    if (placing?.ok === false && layer.features.length > 0) {
      issues.push(issue('error', 'coordinates-unknown', layer.name, `${placing.error.detail} ${placing.error.hint}`));
    }
    for (const feature of layer.features) {
      const read = readRecord(
        feature,
        records.length,
        understood,
        placing?.ok ? placing.value : NOWHERE,
        mapping.closeLines,
      );
      records.push(placing?.ok === false && feature.geometry !== null ? unplaced(read, placing.error.detail) : read);
      if (records.length % SLICE === 0) yield progress('Reading records', records.length, total);
    }
  }
  return records;
}

const NO_MAPPING: LayerMapping = { role: 'nothing', fields: {}, ownIds: false, coordinates: null };
const NOWHERE: Placing = () => null;

/** A record of a layer of which nobody has said where it lies. */
function unplaced({ index, where, id, name, joins }: IntakeRecord, why: string): IntakeRecord {
  const base = { index, where, id, name, joins, issues: [] };
  return refuse(base, 'coordinates-unknown', `${why} Say what the coordinates of its layer mean.`);
}

/** Gives zones and lots their properties first, then what lies on them. */
function* settleParts(
  records: readonly IntakeRecord[],
  drafts: readonly Draft[],
  book: Book,
  mapping: Mapping,
  errors: Map<number, Issue>,
): Steps<readonly Draft[]> {
  const zones = records.filter((each) => each.kind === 'lawn' && each.isZone);
  const lots = records.filter((each) => each.kind === 'parcel');
  const inside = records.filter((each) => each.kind === 'exclusion' || each.kind === 'gate');
  let all = drafts;
  let done = 0;
  const total = zones.length + lots.length + inside.length;
  for (const group of [[...zones, ...lots], inside]) {
    if (group.length === 0) continue;
    const homes = openHomes(all, book.properties, lots);
    for (const record of group) {
      const found = homes.settle(record);
      if (typeof found !== 'number') errors.set(record.index, found);
      done += 1;
      if (done % SLICE === 0) yield progress('Joining parts to properties', done, total);
    }
    all = homes.drafts();
    matchDrafts(all, book.properties, mapping.mergeBy);
  }
  return all;
}

function* mergeAll(
  drafts: readonly Draft[],
  book: Book,
  fileName: string,
  { findPlace, keepPast }: IntakeTools,
): Steps<readonly Settled[]> {
  const taken = new Set([...book.properties, ...book.fillPoints].map((each) => each.id));
  const wanted = new Set(drafts.flatMap((each) => (each.before === null ? (each.fileId ?? []) : [])));
  const settled: Settled[] = [];
  for (const draft of drafts) {
    const id = draft.before?.id ?? newId(draft, taken, wanted);
    taken.add(id);
    const change = mergeDraft(draft, id, fileName, findPlace);
    const kept =
      change?.kind === 'changed' && change.before !== null && keepPast !== undefined
        ? { ...change, after: keepPast(change.before, change.after) }
        : change;
    settled.push({ draft, change: kept });
    if (settled.length % SLICE === 0) yield progress('Comparing with the book', settled.length, drafts.length);
  }
  return settled;
}

/** The id that the file gives, or a made one, where no other property and no fill point has it. */
function newId(draft: Draft, taken: ReadonlySet<string>, wanted: ReadonlySet<string>): string {
  if (draft.fileId !== null) return freeId(draft.fileId, (each) => taken.has(each));
  const number = (recordsOf(draft)[0]?.index ?? 0) + 1;
  return freeId(`lawn-${number}`, (each) => taken.has(each) || wanted.has(each));
}

function progress(step: string, done: number, total: number): Progress {
  return { step, done, total, bestSoFar: '' };
}
