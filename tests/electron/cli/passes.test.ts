import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { PassesOutput } from '../../../electron/cli/output/index.ts';
import { ringAt } from '../../core/geometry/shapes.ts';
import { buildFirst, errorOf, here, jsonOf, sampleFile, scratchFolder } from './support.ts';

const scratch = scratchFolder();
const lawns = scratch.at('lawns.geojson');
const FEET_PER_METRE = 1 / 0.3048;

beforeAll(() => {
  buildFirst();
  const rectangle = ringAt(
    [-83, 40],
    [
      [0, 0],
      [100, 0],
      [100, 50],
      [0, 50],
    ],
  );
  const feature = {
    type: 'Feature',
    id: 'pitch',
    properties: { name: 'Pitch' },
    geometry: { type: 'Polygon', coordinates: [rectangle] },
  };
  writeFileSync(lawns, JSON.stringify({ type: 'FeatureCollection', features: [feature] }));
}, 120_000);
afterAll(() => scratch.remove());

const passes = (...words: readonly string[]) => here(['passes', ...words, '--json']);
const head = ['--swath-ft', String(1.2 * FEET_PER_METRE), '--overlap-ft', String(0.1 * FEET_PER_METRE)];

describe('passes', () => {
  test('over a rectangle of 100 x 50 m: 42 swaths between two trim passes, with the way in degrees', async () => {
    const { zones } = jsonOf<PassesOutput>(
      await passes(lawns, ...head, '--trim', '2', '--turn-sec', '3', '--speed-mph', '4'),
      'passes',
    );
    expect(zones).toHaveLength(1);
    const [found] = zones[0]!.heads;
    expect(found).toMatchObject({ machineId: null, swathCount: 42, trimCount: 2, trimPasses: 2, speedMph: 4 });
    // Worked out in the tests of the passes themselves; 4 mph is 1.78816 m/s.
    expect(found!.sprayedM).toBeCloseTo(295.2 + 286.4 + 42 * 95.42, 0);
    expect(found!.minutes).toBeCloseTo(((found!.sprayedM + found!.unsprayedM) / 1.78816 + 43 * 3) / 60, 6);
    expect(found!.path!.filter((each) => each.kind === 'swath')).toHaveLength(42);
    const [longitude, latitude] = found!.path![0]!.coordinates[0]!;
    expect(longitude).toBeCloseTo(-83, 2);
    expect(latitude).toBeCloseTo(40, 2);
    expect(found!.handTrim!.type).toBe('MultiPolygon');
  });

  test('drive corners out where that is asked for: four runs, each with a turn', async () => {
    const driven = async (...more: readonly string[]) => {
      const run = await passes(lawns, ...head, '--trim', '1', '--turn-sec', '3', '--speed-mph', '4', ...more);
      return jsonOf<PassesOutput>(run, 'passes').zones[0]!.heads[0]!;
    };
    const [round, square] = [await driven(), await driven('--square-corners')];
    expect(round).toMatchObject({ squareCorners: false, cornerCount: 0 });
    expect(square).toMatchObject({
      squareCorners: true,
      cornerCount: 4,
      trimCount: 1,
      turnCount: round.turnCount + 4,
    });
    expect(square.path!.filter((each) => each.kind === 'corner')).toHaveLength(4);
    expect(square.path!.filter((each) => each.kind === 'trim' && each.goesOn !== true)).toHaveLength(1);
    expect(square.handTrimSqFt).toBeLessThan(0.1);
    expect(square.minutes - round.minutes).toBeCloseTo((4 * 1.2) / 1.78816 / 60 + (4 * 3) / 60, 3);
  });

  test('run up and down where the ground falls steeply, and a marker is counted along them', async () => {
    const slope = ['--up-and-down-from', '0', '--downhill', '0'];
    const run = await passes(
      lawns,
      ...head,
      '--trim',
      '2',
      ...slope,
      '--mark',
      'foam',
      '--mark-fl-oz',
      '2',
      '--figures',
    );
    const [found] = jsonOf<PassesOutput>(run, 'passes').zones[0]!.heads;
    expect(found!.angleDeg).toBeCloseTo(90, 6);
    const { markedM, ...mark } = found!.mark!;
    expect(markedM).toBe(found!.swathM);
    expect(mark).toMatchObject({ what: 'foam', flOzPer1000Ft: 2 });
    expect(mark.flOz).toBeCloseTo((markedM * FEET_PER_METRE * 2) / 1000, 6);
    const unknown = jsonOf<PassesOutput>(
      await passes(lawns, ...head, '--up-and-down-from', '0', '--figures'),
      'passes',
    );
    expect(unknown.zones[0]!.heads[0]!.notes.map((each) => each.code)).toContain('downhill-unknown');
  });

  test('of a fixed direction across take more swaths; figures alone leave the way out', async () => {
    const run = await passes(lawns, ...head, '--trim', '2', '--angle', '90', '--figures');
    const [found] = jsonOf<PassesOutput>(run, 'passes').zones[0]!.heads;
    expect(found!.swathCount).toBe(87);
    expect(found!.angleDeg).toBeCloseTo(90, 6);
    expect(found).not.toHaveProperty('path');
  });

  test('over a book: every head of the machine on every zone', async () => {
    const answer = jsonOf<PassesOutput>(
      await passes(sampleFile('residential-day'), '--machine', 'stand-on-35', '--figures'),
      'passes',
    );
    expect(answer.zones.length).toBeGreaterThan(10);
    for (const zone of answer.zones) {
      for (const each of zone.heads) {
        expect(each.machineId).toBe('stand-on-35');
        expect(each.handTrimSqFt).toBeCloseTo(each.missedShare * each.areaSqFt, 6);
        expect(each.offTargetShare).toBeLessThan(0.0001);
      }
      const hasOutline = zone.heads.length > 0;
      expect(zone.edges.length > 0).toBe(hasOutline);
      const told = answer.issues.some(
        (each) => each.code === 'passes-without-outline' && each.where.endsWith(`zone ${zone.zoneId}`),
      );
      expect(hasOutline || told).toBe(true);
    }
    expect(answer.zones.some((zone) => zone.heads.length === 2)).toBe(true);
    const kinds = new Set(answer.zones.flatMap((zone) => zone.edges.map((each) => each.kind)));
    expect([...kinds]).toEqual(expect.arrayContaining(['building', 'paving', 'bed', 'open']));
  });

  test('a table for people names zone, swaths and minutes', async () => {
    const { code, out } = await here(['passes', lawns, ...head]);
    expect(code).toBe(0);
    expect(out).toMatch(/property .* swaths .* minutes/);
    expect(out).toMatch(/Pitch .* 53,8\d\d ft²/);
  });

  test.each([
    [['--swath-ft', '0'], 'swath'],
    [['--swath-ft', '4', '--speed-mph', '0'], 'speed'],
    [['--swath-ft', '4', '--speed-mph=-2'], 'speed'],
    [['--swath-ft', '4', '--overlap-ft', '4'], 'overlap'],
    [['--swath-ft', '4', '--trim', '1.5'], 'trim passes'],
  ] as const)('%j is refused in words', async (words, told) => {
    const run = await passes(lawns, ...words);
    expect(run.code).toBe(1);
    const { error } = jsonOf<{ readonly error: { readonly code: string; readonly detail: string } }>(run, 'failure');
    expect(error.code).toBe('quantity-out-of-range');
    expect(error.detail).toContain(told);
  });

  test('an unknown machine and a file that is not there are named', async () => {
    const unknown = errorOf(await passes(sampleFile('residential-day'), '--machine', 'mower'), 'residential-day.json');
    expect(unknown.hint).toContain('stand-on-35');
    expect(errorOf(await passes(scratch.at('none.json'), '--swath-ft', '4'), 'none.json').code).toBe('file-not-found');
  });

  test('outlines without a swath, and a swath that is no number, are a wrong command line', async () => {
    expect(await passes(lawns)).toMatchObject({ code: 2, remarks: expect.stringContaining('--swath-ft is missing') });
    expect((await passes(lawns, '--swath-ft', 'wide')).remarks).toContain('--swath-ft needs a number');
  });

  test('a swath wider than every zone, and a zone thinner than any swath: all of it by hand, told, and no fault', async () => {
    const run = await passes(lawns, '--swath-ft', '400', '--figures');
    expect(run.code).toBe(0);
    const [found] = jsonOf<PassesOutput>(run, 'passes').zones[0]!.heads;
    expect(found).toMatchObject({ minutes: 0, swathCount: 0, trimCount: 0, missedShare: 1, angleDeg: null });
    expect(found!.handTrimSqFt).toBeCloseTo(found!.areaSqFt, 6);
    expect(found!.notes.map((each) => each.code)).toEqual(['swath-wider-than-ground']);
    const text = await here(['passes', lawns, '--swath-ft', '400']);
    expect(text.out).toContain('left to hand methods');
  });

  test('a speed of zero or less, and a marker without an amount, are refused with their names', async () => {
    for (const speed of ['0', '-3']) {
      const error = errorOf(await passes(lawns, '--swath-ft', '5', '--speed-mph', speed), 'zone pitch');
      expect(error).toMatchObject({ code: 'quantity-out-of-range' });
      expect(error.detail).toContain('speed');
    }
    expect((await passes(lawns, '--swath-ft', '5', '--mark', 'foam')).code).toBe(2);
    expect(
      errorOf(await passes(lawns, '--swath-ft', '5', '--mark', 'foam', '--mark-fl-oz', '0'), 'zone pitch').detail,
    ).toContain('Marking');
  });

  test('a machine without a head is told', async () => {
    const book = scratch.at('no-heads.json');
    const sample = JSON.parse(readFileSync(sampleFile('residential-day'), 'utf8'));
    for (const machine of sample.machines) machine.heads = [];
    sample.rounds = [];
    writeFileSync(book, JSON.stringify(sample));
    const error = errorOf(await passes(book), book);
    expect(error).toMatchObject({ code: 'nothing-to-do' });
    expect(error.detail).toContain('no head');
  });
});
