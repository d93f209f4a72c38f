import { describe, expect, test } from 'vitest';
import type { Book, Round } from '../../../../core/book/index.ts';
import { buildProblem, type Op } from '../../../../core/plan/problem/index.ts';
import { sampleBook } from '../../../support/samples.ts';

const sample = sampleBook('residential-day');
const [round] = sample.rounds as readonly [Round];
const [mix] = sample.mixes;
const part = mix?.parts[0];
if (mix === undefined || part === undefined) throw new Error('no mix');
const asked = part.amountPer1000SqFt;

/** Warnings of the first three lawns where the label allows so many times the rate of the mix, and machine work with its passes. */
function warned(times: number, deliveredTimes = 1) {
  const delivered = mix === undefined ? 1 : mix.carrierGalPer1000SqFt * deliveredTimes;
  const book: Book = {
    ...sample,
    properties: sample.properties.slice(0, 3),
    products: sample.products.map((each) =>
      each.id === part?.productId ? { ...each, label: { ...each.label, mostPerApplication: asked * times } } : each,
    ),
    machines: sample.machines.map((machine) => ({
      ...machine,
      heads: machine.heads.map((head) => ({ ...head, deliveredGalPer1000SqFt: delivered })),
    })),
  };
  const built = buildProblem(book, round.id);
  if (!built.ok) throw new Error(built.error.detail);
  const { issues, jobs } = built.value;
  const ops = jobs
    .flatMap((job) => job.modes.flat().flatMap((mode) => mode.ops))
    .filter((op) => op.ground !== undefined);
  return { issues: issues.filter((each) => each.code === 'rate-with-overlap'), ops };
}

/** Passes over the ground that is reached, on average, as the plan tells them. */
const rateOf = ({ ground, areaUnits }: Op): number =>
  (ground?.coveredUnits ?? 0) / (areaUnits - (ground?.leftUnits ?? 0));

describe('the average rate with overlap', () => {
  test('is held against the most of an application, and told with its arithmetic', () => {
    const { issues, ops } = warned(1.02);
    expect(issues).toHaveLength(1);
    // The highest of the rates that plans tell of the same work.
    const highest = Math.max(...ops.map((op) => rateOf(op)));
    expect(highest).toBeGreaterThan(1.05);
    expect(issues[0]?.message).toContain(`× ${highest.toFixed(2)} passes on average = `);
    const becomes = Number(/average = ([\d.]+)/.exec(issues[0]?.message ?? '')?.[1]);
    expect(becomes).toBeCloseTo(asked * highest, 2);
    expect(issues[0]?.message).toMatch(/allowed in an application \(property .*, zone .*, the most of \d+ zones\)/);
  });

  test('is in order up to the limit, whatever single places get', () => {
    const { ops } = warned(1.02);
    const highest = Math.max(...ops.map((op) => rateOf(op)));
    expect(warned(highest + 0.001).issues).toEqual([]);
    expect(warned(highest - 0.001).issues).toHaveLength(1);
  });

  test('counts what the machine really delivers', () => {
    const { ops } = warned(1.02);
    const highest = Math.max(...ops.map((op) => rateOf(op)));
    expect(warned(highest + 0.01, 1.04).issues[0]?.message).toMatch(/passes on average × 1\.04 delivered = /);
    expect(warned(highest + 0.01, 0.9).issues).toEqual([]);
  });
});
