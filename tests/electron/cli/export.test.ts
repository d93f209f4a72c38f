import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildFirst, errorOf, here, jsonOf, scratchFolder, smallSample } from './support.ts';

const scratch = scratchFolder();
beforeAll(buildFirst, 120_000);
afterAll(scratch.remove);

const book = smallSample('residential-day', scratch.at('residential-day.json'));
type Exported = { readonly as: string; readonly properties: number; readonly text: string };
type Imported = { readonly counts: Readonly<Record<string, number>> };

describe('export', () => {
  test.each(['geojson', 'kml', 'csv'])('%s is written and read back without a change', async (kind) => {
    const file = scratch.at(`lawns.${kind}`);
    const run = await here(['export', book, '--as', kind, '--out', file]);
    expect(run.code).toBe(0);
    expect(run.out).toContain('8 properties written');
    const words = ['import', file, '--into', book, '--out', scratch.at(`${kind}.json`), '--json'];
    const { counts } = jsonOf<Imported>(await here(words), 'import');
    expect(counts).toMatchObject({ new: 0, changed: 0, rejected: 0, same: 8 });
  });

  test('prints the file where no other place is named, alone or in its answer', async () => {
    const printed = await here(['export', book, '--as', 'gpx']);
    expect(printed.out).toMatch(/^<\?xml[\s\S]*<gpx[\s\S]*<\/gpx>\s*$/);
    const answer = jsonOf<Exported>(await here(['export', book, '--as', 'gpx', '--json']), 'export');
    expect(answer).toMatchObject({ as: 'gpx', properties: 8 });
    expect(answer.text.trimEnd()).toBe(printed.out.trimEnd());
  });

  test('leaves files of another kind alone, and tells kinds that it does not know', async () => {
    const file = scratch.at('notes.kml');
    writeFileSync(file, 'my notes');
    expect((await here(['export', book, '--as', 'kml', '--out', file])).code).toBe(1);
    expect(readFileSync(file, 'utf8')).toBe('my notes');
    const kind = await here(['export', book, '--as', 'dwg']);
    expect(kind.code).toBe(2);
    expect(kind.remarks).toContain('geojson, kml, gpx, csv');
  });

  test('writes the days of a plan, all or those that are named', { timeout: 60_000 }, async () => {
    const plan = scratch.at('plan.json');
    expect((await here(['plan', book, '--iterations', '1', '--out', plan])).code).toBe(0);
    const file = scratch.at('days.ics');
    const written = await here(['export', book, '--plan', plan, '--as', 'ics', '--out', file]);
    expect(written.out).toContain('1 day with 8 properties written.');
    expect(readFileSync(file, 'utf8')).toMatch(/^BEGIN:VCALENDAR\r\n[\s\S]+END:VCALENDAR\r\n$/);
    const [day] = jsonOf<{ days: { date: string; rigId: string }[] }>(
      { ...written, out: readFileSync(plan, 'utf8') },
      'plan',
    ).days;
    const words = ['export', book, '--plan', plan, '--as', 'stops-csv', '--json', '--date', day?.date ?? ''];
    const answer = jsonOf<Exported & { readonly days: number }>(await here(words), 'export');
    expect(answer).toMatchObject({ as: 'stops-csv', properties: 8, days: 1 });
    expect(answer.text.split('\r\n')).toHaveLength(8 + 2);
    const other = errorOf(
      await here(['export', book, '--plan', plan, '--as', 'gpx', '--json', '--date', '2019-01-01']),
      plan,
    );
    expect(other.code).toBe('reference-missing');
  });

  test('tells kinds and options that do not go together', async () => {
    const lawns = await here(['export', book, '--as', 'ics']);
    expect([lawns.code, lawns.remarks.includes('geojson, kml, gpx, csv')]).toEqual([2, true]);
    const days = await here(['export', book, '--plan', 'plan.json', '--as', 'csv']);
    expect([days.code, days.remarks.includes('stops-csv, work-csv, loads-csv')]).toEqual([2, true]);
    expect((await here(['export', book, '--as', 'kml', '--date', '2027-03-01'])).code).toBe(2);
    const whole = await here(['export', book, '--plan', 'plan.json', '--as', 'plan-json', '--rig', 'north']);
    expect([whole.code, whole.remarks.includes('always the whole plan')]).toEqual([2, true]);
  });
});
