import { describe, expect, it } from 'vitest';
import type { Calibration, Head } from '../../../core/book/index.ts';
import { emptyBook } from '../../../core/book/index.ts';
import {
  keepCalibration,
  overdueUses,
  readEntries,
  SHEETS,
  tracesOf,
  workSheet,
} from '../../../core/calibrate/index.ts';
import { calibrationDue } from '../../../core/checks/calibration-due.ts';

const head: Head = {
  id: 'boom',
  name: 'boom',
  purpose: 'spray',
  swathFt: 9,
  speedMph: 4,
  fieldEfficiency: 0.65,
  swapMin: 0,
  compartmentIds: [],
  deliveredGalPer1000SqFt: 0.5,
  usesSince: 12,
  dueAfterUses: 10,
};
const made = (id: string, on: string, value: number, what = 'boom'): Calibration => ({
  id,
  on,
  by: '',
  what,
  given: [],
  found: [{ name: 'gal-per-1000', value, unit: 'gal/1000ft2' }],
  source: '',
  setting: '',
});

describe('a calibration that is kept', () => {
  it('sets what the head delivers and its speed, and begins the count of uses anew', () => {
    const kept = keepCalibration(head, made('a', '2026-03-01', 0.34), { 'gal-per-1000': 0.34, mph: 3.5 });
    expect(kept).toMatchObject({ deliveredGalPer1000SqFt: 0.34, speedMph: 3.5, usesSince: 0 });
    expect(kept.calibrations?.map((each) => each.id)).toEqual(['a']);
    expect(keepCalibration(kept, made('b', '2026-05-01', 0.36), {}).calibrations).toHaveLength(2);
  });

  it('leaves the carrier rate alone where the sheet only mixes', () => {
    const kept = keepCalibration(head, made('a', '2026-03-01', 2, 'mix'), { 'gal-per-1000': 2 });
    expect(kept.deliveredGalPer1000SqFt).toBe(0.5);
  });

  it('holds what the boom sheet works out of typed figures', () => {
    // GPA = 5940 x gal/min / (mph x in), Iowa State University Extension: 5940 x 0.25 / (5 x 20) = 14.85; / 43.56 = 0.3409.
    const sheet = SHEETS.find((each) => each.kind === 'boom')!;
    const entries = readEntries(sheet, { gpm: '0.25', mph: '5', 'spacing-in': '20' });
    const worked = entries.ok ? workSheet(sheet, entries.value) : entries;
    expect(worked.ok && worked.value.answers.find((each) => each.name === 'gal-per-1000')?.value).toBeCloseTo(
      0.3409,
      4,
    );
    expect(readEntries(sheet, { gpm: 'much' })).toMatchObject({ ok: false, error: { where: 'gpm' } });
  });
});

describe('when the next one is due', () => {
  it('counts days of use past the limit; never where none is set', () => {
    expect(overdueUses({ dueAfterUses: 10, usesSince: 12 })).toBe(2);
    expect(overdueUses({ dueAfterUses: 10, usesSince: 9 })).toBe(-1);
    expect(overdueUses({ dueAfterUses: 10 })).toBe(-10);
    expect(overdueUses({ usesSince: 500 })).toBeNull();
  });

  it('is told by the checks from the day on which it falls due', () => {
    const bookWith = (usesSince: number) => ({
      ...emptyBook('b', 'book'),
      machines: [
        {
          id: 'm',
          name: 'Machine',
          what: 'ride-on' as const,
          transitWidthIn: 36,
          emptyWeightLb: 700,
          maxSlopeDeg: 15,
          compartments: [],
          heads: [{ ...head, usesSince, calibrations: [made('a', '2026-03-01', 0.34)] }],
          bagPlaces: 0,
        },
      ],
    });
    expect(calibrationDue.find(bookWith(9))).toEqual([]);
    const [due] = calibrationDue.find(bookWith(10));
    expect(due).toMatchObject({ code: 'calibration-due', severity: 'warning', where: 'machine Machine, head boom' });
    expect(due?.message).toContain('2026-03-01');
  });
});

it('traces join the same figure of several calibrations in order of time', () => {
  const traces = tracesOf([made('b', '2026-05-01', 0.36), made('a', '2026-03-01', 0.34), made('c', '2026-04-01', 0.3)]);
  expect(traces).toEqual([
    {
      name: 'gal-per-1000',
      unit: 'gal/1000ft2',
      points: [
        { on: '2026-03-01', value: 0.34 },
        { on: '2026-04-01', value: 0.3 },
        { on: '2026-05-01', value: 0.36 },
      ],
    },
  ]);
  expect(tracesOf([made('a', '2026-03-01', 0.34)])).toEqual([]);
});
