import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildFirst, jsonOf, sampleFile, scratchFolder, swardway } from './support.ts';

const scratch = scratchFolder();
beforeAll(buildFirst, 120_000);
afterAll(scratch.remove);

const book = sampleFile('residential-day');
type Exported = { readonly as: string; readonly properties: number; readonly text: string };
type Imported = { readonly counts: Readonly<Record<string, number>> };

describe('export', () => {
  test.each(['geojson', 'kml', 'csv'])('%s is written and read back without a change', (kind) => {
    const file = scratch.at(`lawns.${kind}`);
    const run = swardway(['export', book, '--as', kind, '--out', file]);
    expect(run.code).toBe(0);
    expect(run.out).toContain('28 properties written');
    const words = ['import', file, '--into', book, '--out', scratch.at(`${kind}.json`), '--json'];
    const { counts } = jsonOf<Imported>(swardway(words), 'import');
    expect(counts).toMatchObject({ new: 0, changed: 0, rejected: 0, same: 28 });
  });

  test('prints the file where no other place is named, alone or in its answer', () => {
    const printed = swardway(['export', book, '--as', 'gpx']);
    expect(printed.out).toMatch(/^<\?xml[\s\S]*<gpx[\s\S]*<\/gpx>\s*$/);
    const answer = jsonOf<Exported>(swardway(['export', book, '--as', 'gpx', '--json']), 'export');
    expect(answer).toMatchObject({ as: 'gpx', properties: 28 });
    expect(answer.text.trimEnd()).toBe(printed.out.trimEnd());
  });

  test('leaves files of another kind alone, and tells kinds that it does not know', () => {
    const file = scratch.at('notes.kml');
    writeFileSync(file, 'my notes');
    expect(swardway(['export', book, '--as', 'kml', '--out', file]).code).toBe(1);
    expect(readFileSync(file, 'utf8')).toBe('my notes');
    const kind = swardway(['export', book, '--as', 'dwg']);
    expect(kind.code).toBe(2);
    expect(kind.remarks).toContain('geojson, kml, gpx, csv');
  });
});
