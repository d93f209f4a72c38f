import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { type Book, readBook } from '../../../core/book/index.ts';
import {
  GROUND_READ_OPTIONS,
  GROUND_READERS,
  type GroundSource,
  PLAN_WRITERS,
  WRITERS,
} from '../../../core/formats/index.ts';
import { measureProperty } from '../../../core/measure/index.ts';
import { storedPlan } from '../../support/stored-plans.ts';
import { emptyOne, look, taken } from './sources.ts';

const folder = fileURLToPath(new URL('../../../sample-routes/', import.meta.url));
const samples = readdirSync(folder).filter((name) => name.endsWith('.json'));

function bookOf(name: string): Book {
  const read = readBook(readFileSync(`${folder}${name}`, 'utf8'), name);
  if (!read.ok) throw new Error(read.error.detail);
  return read.value.book;
}

async function sourceOf(book: Book, writerId: string): Promise<GroundSource> {
  const writer = WRITERS.find((each) => each.id === writerId);
  const reader = GROUND_READERS.find((each) => each.id === writerId);
  const text = writer?.write(book.properties, { title: book.name, measure: measureProperty });
  if (text === undefined || reader === undefined) throw new Error(`nobody writes and reads ${writerId}`);
  const read = await reader.read(new TextEncoder().encode(text), `book.${writerId}`, GROUND_READ_OPTIONS);
  if (!read.ok) throw new Error(read.error.detail);
  return read.value;
}

const cases = samples.flatMap((name) => ['geojson', 'kml'].map((id) => [name, id] as const));

describe.each(cases)('the ground of %s, written as %s', (name, id) => {
  it('changes nothing in its own book', async () => {
    const book = bookOf(name);
    const preview = look(await sourceOf(book, id), book);
    const odd = preview.properties.filter((each) => each.kind !== 'same');
    expect(odd.map((each) => [each.after.id, each.words])).toEqual([]);
    expect(preview.counts.rejected).toBe(0);
  });

  it('makes the same ground in an empty book', async () => {
    const book = bookOf(name);
    const after = taken(emptyOne(), look(await sourceOf(book, id)));
    const shapeOf = ({ properties }: Book) =>
      properties.map((each) => ({
        id: each.id,
        name: each.name,
        address: each.address,
        zones: each.zones.map((zone) => [zone.id, zone.shape.kind, zone.slopeDeg, zone.gateIds]),
        gates: each.gates.map((gate) => [gate.id, gate.clearWidthIn]),
        exclusions: each.exclusions.map((exclusion) => [exclusion.id, exclusion.what, exclusion.keepAwayFt]),
      }));
    expect(shapeOf(after)).toEqual(shapeOf(book));
  });
});

describe.each(samples)('%s, written as GPX waypoints', (name) => {
  it('changes nothing in its own book: parking points and gates are known again', async () => {
    const preview = look(await sourceOf(bookOf(name), 'gpx'), bookOf(name));
    expect(preview.properties.filter((each) => each.kind !== 'same').map((each) => each.words)).toEqual([]);
    expect(preview.counts.rejected).toBe(0);
  });
});

describe('lawns without an outline', () => {
  it('are known again by where the rig parks', async () => {
    const book = bookOf('mixed-day.json');
    const source = await sourceOf(book, 'geojson');
    const preview = look(source, book, { mergeBy: 'place' });
    expect(preview.properties.filter((each) => each.kind === 'new')).toEqual([]);
  });
});

describe.each(['geojson', 'kml'])('days of a plan, written as %s', (id) => {
  it('are no ground: every record is turned away by its role, and nothing changes', async () => {
    const book = bookOf('mixed-day.json');
    const plan = storedPlan('mixed-day');
    const writer = PLAN_WRITERS.find((each) => each.id === id);
    const reader = GROUND_READERS.find((each) => each.id === id);
    const text = writer?.write({ book, plan, days: plan.days }, { title: 'Days', nowMs: 0, planText: () => '' });
    if (text === undefined || reader === undefined) throw new Error('nobody writes and reads it');
    const read = await reader.read(new TextEncoder().encode(text), `days.${id}`, GROUND_READ_OPTIONS);
    if (!read.ok) throw new Error(read.error.detail);
    const preview = look(read.value, book);
    expect(preview.properties.filter((each) => each.kind !== 'same').map((each) => each.after.id)).toEqual([]);
    expect(preview.counts.rejected).toBe(preview.rows.length);
    const codes = preview.rows.flatMap((row) => row.issues.map((each) => each.code));
    expect(new Set(codes)).toEqual(new Set(['role-unknown']));
  });
});
