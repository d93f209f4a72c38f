import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { PLAN_WRITERS, type PlanSource } from '../../../../../core/formats/index.ts';
import { readPlan } from '../../../../../core/plan/result/index.ts';
import { ODD_NAMES, sampleSource, smallSource, written } from './sources.ts';

const sample = sampleSource();
type Row = Readonly<Record<string, string>>;

/** Rows by column, as csv-parse reads a table of RFC 4180: it throws where a row has another number of cells. */
function rowsOf(id: string, source: PlanSource): readonly Row[] {
  const text = written(id, source);
  expect(text.endsWith('\r\n')).toBe(true);
  return parse(text, { columns: true, record_delimiter: '\r\n' });
}

const sum = (rows: readonly Row[], column: string): number => rows.reduce((all, row) => all + Number(row[column]), 0);

describe('tables of days', () => {
  it('have the stops in order, with times, places and areas', () => {
    const rows = rowsOf('stops-csv', smallSource());
    const told = rows.map((row) => [row.stop, row.property, row.lat, row.lon, row.arrive, row.leave]);
    expect(told).toEqual([
      ['1', 'acre', '40', '-89.41', '2031-04-01T07:20:00', '2031-04-01T08:20:00'],
      ['2', 'birch', '40', '-89.42', '2031-04-01T08:30:00', '2031-04-01T10:16:40'],
      ['3', 'cedar', '40', '-89.43', '2031-04-01T10:26:40', '2031-04-01T10:50:58'],
    ]);
    expect(rows.map((row) => row['treated (sq ft)'])).toEqual(['10000', '8910', '2000']);
    expect(rows.map((row) => row.note)).toEqual(['Bell is broken', '', '']);
    expect(rows.map((row) => row.data)).toEqual(rows.map(() => 'invented, not for use'));
  });

  it('come to the totals of the plan', () => {
    const { totals } = sample.plan;
    expect(sum(rowsOf('stops-csv', sample), 'treated (sq ft)')).toBeCloseTo(totals.treatedSqFt, 1);
    expect(sum(rowsOf('work-csv', sample), 'treated (sq ft)')).toBeCloseTo(totals.treatedSqFt, 1);
    expect(rowsOf('stops-csv', sample)).toHaveLength(totals.stops);
    const loads = rowsOf('loads-csv', sample);
    expect(loads).toHaveLength(totals.loads);
    const products = rowsOf('products-csv', sample);
    for (const { productId, amount, unit } of totals.products) {
      const rows = products.filter((row) => row.product === productId);
      expect(sum(rows, 'amount')).toBeCloseTo(amount, 3);
      expect(new Set(rows.map((row) => row.unit))).toEqual(new Set([unit]));
    }
    // What the work takes is what the loads put in, less what is left in them.
    const work = rowsOf('work-csv', sample);
    const [volume, weight] = ['volume (gal)', 'weight (lb)'] as const;
    expect(sum(work, volume)).toBeGreaterThan(100);
    expect(sum(loads, volume)).toBeGreaterThanOrEqual(sum(work, volume) - 0.01);
    expect(sum(loads, weight)).toBeGreaterThanOrEqual(sum(work, weight) - 0.01);
  });

  it.each(ODD_NAMES)('hold %j in one cell that no spreadsheet works out', (name) => {
    for (const id of ['stops-csv', 'work-csv', 'loads-csv', 'products-csv']) {
      const rows = rowsOf(
        id,
        smallSource((what) => (what.endsWith('Lane') ? name.padEnd(300, ' long') : name)),
      );
      expect(rows.length).toBeGreaterThan(0);
      const cells = rows.flatMap((row) => Object.values(row));
      const kept = name.replace(/(?![\t\n\r\u0085])\p{Cc}/gu, '').replace(/\p{Cs}/gu, '\ufffd');
      expect(cells).toContain(/^[=+\-@\t\r]/.test(kept) ? `'${kept}` : kept);
      for (const cell of cells) expect(cell).not.toMatch(/^[=+@\t\r]|^-\D/);
    }
  });

  it('of a rig that goes nowhere have a header alone', () => {
    const { book, plan, days } = smallSource();
    const empty = days.map((day) => ({ ...day, stops: [], loads: [], activities: [] }));
    for (const { id } of PLAN_WRITERS.filter((each) => each.extension === 'csv')) {
      expect(rowsOf(id, { book, plan, days: empty })).toEqual([]);
      expect(written(id, { book, plan, days: empty })).toMatch(/^data,round,date,rig,rig name,[^\r\n]+\r\n$/);
    }
  });

  it('say the ids where the book has changed under the plan', () => {
    const { book, plan, days } = smallSource();
    const bare = { ...book, properties: [], machines: [], treatments: [], mixes: [], products: [], fillPoints: [] };
    const [row] = rowsOf('work-csv', { book: bare, plan, days });
    expect(row).toMatchObject({ 'zone name': 'front', 'treatment name': 'seed', method: 'rider, seeder' });
    for (const { id } of PLAN_WRITERS) expect(() => written(id, { book: bare, plan, days })).not.toThrow();
  });
});

describe('the plan as JSON', () => {
  it('is the plan, by its published schema', () => {
    const text = written('plan-json', sample);
    const schema = new URL('../../../../../docs/schemas/plan.schema.json', import.meta.url);
    const validate = new Ajv({ strict: false }).compile(JSON.parse(readFileSync(schema, 'utf8')));
    expect(validate(JSON.parse(text)), JSON.stringify(validate.errors)).toBe(true);
    const read = readPlan(text, 'plan.json');
    // JSON has no -0.
    expect(read.ok && read.value).toEqual(JSON.parse(JSON.stringify(sample.plan)));
  });
});

describe('writers of plans', () => {
  it('have ids of their own, say what they leave out, and know their own files', () => {
    expect(new Set(PLAN_WRITERS.map((each) => each.id)).size).toBe(PLAN_WRITERS.length);
    for (const writer of PLAN_WRITERS) {
      expect(writer.leavesOut.endsWith('.')).toBe(true);
      expect(written(writer.id, smallSource())).toMatch(writer.begins);
    }
  });
});
