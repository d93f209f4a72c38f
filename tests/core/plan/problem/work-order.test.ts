import { describe, expect, it } from 'vitest';
import type { Round } from '../../../../core/book/index.ts';
import { rankOf, USUAL_WORK_ORDER, workOrderOf } from '../../../../core/plan/problem/work-order.ts';
import { sampleBook } from '../../../support/samples.ts';

const round = sampleBook('residential-day').rounds[0] as Round;

describe('the order of work', () => {
  it('is the usual one, or begins with what the round names', () => {
    expect(workOrderOf(round)).toEqual(['aerate', 'seed', 'spread', 'spray']);
    expect(workOrderOf({ ...round, workOrder: ['spray', 'spray', 'seed'] })).toEqual([
      'spray',
      'seed',
      'aerate',
      'spread',
    ]);
  });

  it('puts a starter after its seed whatever comes of other granules', () => {
    const starter = (order: Round['workOrder']): number =>
      rankOf(workOrderOf({ ...round, workOrder: order }), 'spread', true);
    const seed = (order: Round['workOrder']): number =>
      rankOf(workOrderOf({ ...round, workOrder: order }), 'seed', false);
    expect(starter(undefined)).toBe(rankOf(USUAL_WORK_ORDER, 'spread', false));
    expect(starter(['spread', 'seed'])).toBe(seed(['spread', 'seed']) + 1);
    expect(rankOf(['spread', 'seed', 'aerate', 'spray'], 'spread', false)).toBe(0);
  });
});
