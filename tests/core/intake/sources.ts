import type { Geometry } from 'geojson';
import * as v from 'valibot';
import { expect } from 'vitest';
import { type Book, bookSchema, emptyBook, type Property } from '../../../core/book/index.ts';
import { applyAction } from '../../../core/edit/index.ts';
import {
  type AttributeValue,
  GROUND_READ_OPTIONS,
  type GroundSource,
  geojsonReader,
  type SourceCoordinates,
  type SourceLayer,
} from '../../../core/formats/index.ts';
import {
  applyIntake,
  guessMapping,
  type IntakePreview,
  type Mapping,
  previewIntake,
} from '../../../core/intake/index.ts';
import { ringAt } from '../geometry/shapes.ts';
import { feet, HOME } from '../measure/lawns.ts';

/** Ground sources for tests, drawn in feet round an invented place. */

export type Attributes = Readonly<Record<string, AttributeValue>>;
export type Drawn = {
  readonly id?: string;
  readonly geometry?: Geometry | null;
  readonly attributes?: Attributes;
};

export function boxShape(west: number, south: number, east: number, north: number): Geometry {
  const corners = [
    [west, south],
    [east, south],
    [east, north],
    [west, north],
  ] as const;
  return { type: 'Polygon', coordinates: [ringAt(HOME, feet(corners)).map((each) => [...each])] };
}

export function pointShape(east: number, north: number): Geometry {
  const [at] = ringAt(HOME, feet([[east, north]]));
  return { type: 'Point', coordinates: [...(at ?? HOME)] };
}

export function layerOf(
  features: readonly Drawn[],
  name = 'lawns',
  coordinates: SourceCoordinates = { kind: 'degrees', from: 'EPSG:4326' },
): SourceLayer {
  const fields = [...new Set(features.flatMap((each) => Object.keys(each.attributes ?? {})))];
  return {
    name,
    coordinates,
    fields,
    features: features.map(({ id, geometry, attributes }, index) => ({
      where: `${name}, record ${index + 1}`,
      id: id ?? null,
      geometry: geometry ?? null,
      attributes: attributes ?? {},
      issues: [],
    })),
  };
}

export function sourceOf(...layers: readonly SourceLayer[]): GroundSource {
  return { formatId: 'test', layers, issues: [] };
}

export const emptyOne = (properties: readonly Property[] = []): Book => ({ ...emptyBook('b', 'Book'), properties });

/** A preview that was checked to add up, and to be what a book can hold. */
export function look(
  source: GroundSource,
  book: Book = emptyOne(),
  mapping: Partial<Mapping> = {},
  tools: Parameters<typeof previewIntake>[4] = {},
): IntakePreview {
  const preview = previewIntake(book, source, { ...guessMapping(source).mapping, ...mapping }, 'file', tools);
  checkPreview(preview, source);
  return preview;
}

export function checkPreview(preview: IntakePreview, source: GroundSource): void {
  const records = source.layers.flatMap((each) => each.features);
  expect(preview.rows.map((each) => each.where)).toEqual(records.map((each) => each.where));
  const { found, ...kinds } = preview.counts;
  expect(Object.values(kinds).reduce((sum, each) => sum + each, 0)).toBe(found);
  expect(found).toBe(records.length);
  for (const row of preview.rows) {
    const isRejected = row.kind === 'rejected';
    expect(row.words, row.where).not.toBe('');
    if (isRejected) {
      const isReason = row.issues.some((each) => each.severity === 'error' || each.code === 'layer-left-out');
      expect(isReason, row.where).toBe(true);
    }
    expect(row.propertyIds.length > 0).toBe(!isRejected);
  }
  for (const { after } of preview.properties) {
    const parsed = v.safeParse(bookSchema, JSON.parse(JSON.stringify({ ...emptyBook('b', 'B'), properties: [after] })));
    expect(parsed.issues).toBeUndefined();
  }
}

/** The book after doing what was previewed; the book itself where that is nothing. */
export function taken(book: Book, preview: IntakePreview): Book {
  const action = applyIntake(book, preview);
  if (!action.ok) {
    expect(action.error.code).toBe('nothing-to-do');
    return book;
  }
  const applied = applyAction(book, action.value);
  if (!applied.ok) throw new Error(applied.error.detail);
  return applied.value.book;
}

/** A GeoJSON text as a source. */
export async function geojson(text: string): Promise<GroundSource> {
  const read = await geojsonReader.read(new TextEncoder().encode(text), 'lawns.geojson', GROUND_READ_OPTIONS);
  if (!read.ok) throw new Error(read.error.detail);
  return read.value;
}
