import { describe, expect, it } from 'vitest';
import { emptyBook } from '../../../../core/book/index.ts';
import { findGroundReader, GROUND_READ_OPTIONS, WRITERS } from '../../../../core/formats/index.ts';
import { guessMapping, previewIntake } from '../../../../core/intake/index.ts';
import { measureProperty } from '../../../../core/measure/index.ts';
import { SAMPLE_NAMES, sampleBook } from '../../../support/samples.ts';

const CASES = SAMPLE_NAMES.flatMap((name) =>
  WRITERS.filter((writer) => writer.id !== 'gpx').map((writer) => [name, writer.id, writer] as const),
);

describe('a book that is written and read again', () => {
  it.each(CASES)(
    '%s as %s would change nothing, and fills an empty book with the same lawns',
    async (name, id, writer) => {
      const book = sampleBook(name);
      const fileName = `ground.${writer.extension}`;
      const bytes = new TextEncoder().encode(writer.write(book.properties, { title: name, measure: measureProperty }));
      const reader = findGroundReader(bytes, fileName);
      if (!reader.ok) throw new Error(reader.error.detail);
      expect(reader.value.id).toBe(id);
      const source = await reader.value.read(bytes, fileName, GROUND_READ_OPTIONS);
      if (!source.ok) throw new Error(source.error.detail);
      const { mapping } = guessMapping(source.value);
      const again = previewIntake(book, source.value, mapping, fileName);
      expect(again.counts).toMatchObject({ new: 0, changed: 0, rejected: 0, same: book.properties.length });
      const fresh = previewIntake(emptyBook('b', 'Book'), source.value, mapping, fileName);
      expect(fresh.counts).toMatchObject({ new: book.properties.length, rejected: 0 });
      expect(fresh.properties.map((each) => each.after.name)).toEqual(book.properties.map((each) => each.name));
    },
  );
});
