import { existsSync, readFileSync, statSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { findChromium, NO_CHROMIUM } from '../../browser/chromium.ts';
import { buildFirst, here, jsonOf, root, scratchFolder, smallSample, swardway } from './support.ts';

const scratch = scratchFolder();
const sample = smallSample('residential-day', scratch.at('residential-day.json'));
const plan = scratch.at('plan.json');

beforeAll(async () => {
  await buildFirst();
  expect((await here(['plan', sample, '--iterations', '3', '--out', plan])).code).toBe(0);
}, 120_000);
afterAll(() => scratch.remove());

const mediaBox = (file: string): string => /\/MediaBox \[[^\]]*\]/.exec(readFileSync(file, 'latin1'))?.[0] ?? '';

test('sheets become a PDF on the paper that is asked for', (context) => {
  const chromium = findChromium();
  if (chromium === null) return context.skip(NO_CHROMIUM);
  const CHROMIUM = chromium;
  const file = scratch.at('sheets.pdf');
  const run = swardway(['report', sample, plan, '--sheet', 'truck-list', '--pdf', file], root, { CHROMIUM });
  expect(run.code, run.remarks).toBe(0);
  expect(run.remarks).toContain('PDF written');
  // Letter is 8.5 x 11 in, 612 x 792 points; A4 is 210 x 297 mm, 595.3 x 841.9 points.
  expect(mediaBox(file)).toBe('/MediaBox [0 0 612 792]');
  const again = swardway(
    ['report', sample, plan, '--sheet', 'truck-list', '--pdf', file, '--paper', 'A4', '--large'],
    root,
    { CHROMIUM },
  );
  expect(again.code, again.remarks).toBe(0);
  expect(mediaBox(file)).toMatch(/^\/MediaBox \[0 0 59[45][.\d]* 84[12][.\d]*\]$/);
}, 60_000);

test('where there is no Chromium that is said, and no file is left', () => {
  const file = scratch.at('none.pdf');
  const run = swardway(['report', sample, plan, '--pdf', file, '--json'], root, { CHROMIUM: scratch.at('nowhere') });
  expect(run.code).toBe(1);
  expect(jsonOf<{ error: { code: string } }>(run, 'failure').error.code).toBe('not-available');
  expect(run.remarks).toContain('No Chromium was found');
  expect(existsSync(file)).toBe(false);
  expect(statSync(plan).size).toBeGreaterThan(0);
}, 60_000);

test('a sheet of a lawn needs no plan', async () => {
  const run = await here(['report', sample, '--sheet', 'measure-sheet', '--property', 'maple-1', '--json']);
  expect(run.code).toBe(1);
  expect(jsonOf<{ error: { code: string } }>(run, 'failure').error.code).toBe('reference-missing');
  const all = await here(['report', sample, '--sheet', 'measure-sheet', '--json']);
  const { sheets, roundId } = jsonOf<{ sheets: { propertyId: string }[]; roundId: string }>(all, 'report');
  expect(roundId).toBe('');
  const id = sheets[3]?.propertyId ?? '';
  const one = await here(['report', sample, '--sheet', 'measure-sheet', '--property', id, '--json']);
  expect(jsonOf<{ sheets: { propertyId: string }[] }>(one, 'report').sheets.map((each) => each.propertyId)).toEqual([
    id,
  ]);
}, 60_000);
