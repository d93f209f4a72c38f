import { describe, expect, it } from 'vitest';
import type { Progress } from '../../../core/base/index.ts';
import { GROUND_READ_OPTIONS } from '../../../core/formats/index.ts';
import { createTally } from '../../../core/formats/tally.ts';

const limits = { ...GROUND_READ_OPTIONS.limits, features: 1000, positions: 5000 };

describe('the tally of a reading', () => {
  it('refuses one record and one corner too many, with the place and the limit', () => {
    const records = createTally({ ...GROUND_READ_OPTIONS, limits }, 'lots.zip', 0);
    for (let index = 0; index < 1000; index += 1) expect(records.add(1)).toBeNull();
    expect(records.add(0)).toMatchObject({ error: { code: 'file-too-large', where: 'lots.zip' } });
    const corners = createTally({ ...GROUND_READ_OPTIONS, limits }, 'lots.zip', 0);
    expect(corners.add(5000)).toBeNull();
    expect(corners.add(1)).toMatchObject({ error: { detail: expect.stringContaining('5,000 corners') } });
  });

  it('tells how far it is, of a total that is never less', () => {
    const told: Progress[] = [];
    const options = { ...GROUND_READ_OPTIONS, limits, onProgress: (progress: Progress) => told.push(progress) };
    const tally = createTally(options, 'lots.zip', 300);
    for (let index = 0; index < 450; index += 1) tally.add(1);
    expect(told.map(({ done, total }) => [done, total])).toEqual([
      [200, 300],
      [400, 400],
    ]);
  });

  it('stops soon after it is told to', () => {
    let isStopped = false;
    const tally = createTally({ ...GROUND_READ_OPTIONS, signal: { stopped: () => isStopped } }, 'lots.zip', 0);
    const read = () => Array.from({ length: 250 }, () => tally.add(1)).find((each) => each !== null);
    expect(read()).toBeUndefined();
    isStopped = true;
    expect(read()).toMatchObject({ ok: false, error: { code: 'cancelled' } });
  });
});
