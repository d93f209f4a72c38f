import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { type Plan, readPlan } from '../../core/plan/result/index.ts';
import type { SampleName } from './samples.ts';

/**
 * A plan of a sample book as it was found once, so that what is made of plans can be tested without planning anew and does not change
 * with the search: all days of its first date, without levels, reasons and other ways. Written by tests/support/store-plans.mjs.
 */
export function storedPlan(name: SampleName): Plan {
  const bytes = readFileSync(new URL(`../fixtures/plans/${name}.plan.json.gz`, import.meta.url));
  const read = readPlan(gunzipSync(bytes).toString('utf8'), name);
  if (!read.ok) throw new Error(`${read.error.where}: ${read.error.detail}`);
  return read.value;
}
