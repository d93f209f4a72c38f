import { describe, expect, test } from 'vitest';
import type { Book } from '../../../core/book/index.ts';
import { farthestFt, measureBook, standsFor, treatableGround } from '../../../core/measure/index.ts';
import { zonePassesWith } from '../../../core/passes/index.ts';
import { lawnQuote } from '../../../core/quote/index.ts';
import { type FitCell, fitTable } from '../../../core/reach/index.ts';
import { problemOf } from '../../support/samples.ts';
import { DRIVEN, oneLawn, PASSES, withoutTools } from '../plan/problem/one-lawn.ts';

const site = { farthestFt, stands: standsFor, passes: zonePassesWith(treatableGround) };

function machineCell(book: Book): FitCell | undefined {
  const [treatment] = book.treatments;
  const [rig] = book.rigs;
  const table = fitTable(book, measureBook(book), treatment!, rig!, site);
  return table.rows[0]?.cells.find((each) => each.answer.method.kind === 'machine');
}

/** Minutes of the ops by which a plan does the lawn with the machine. */
function planned(book: Book): readonly number[] {
  const modes = problemOf(book).jobs[0]?.modes[0] ?? [];
  const mode = modes.find((each) => each.ops.some((op) => op.method.kind === 'machine'));
  return (mode?.ops ?? []).map((op) => op.serviceMs / 60_000);
}

describe('a machine that is driven by passes', () => {
  test('takes the minutes of the plan, hand trim included and told apart', () => {
    const book = DRIVEN(oneLawn(120, 80));
    const cell = machineCell(book);
    const [machine = 0, trim = 0] = planned(book);
    expect(trim).toBeGreaterThan(0);
    expect(cell?.trim?.minutes).toBeCloseTo(trim, 3);
    expect(cell?.trim?.handMethodId).toBe('reel-200');
    expect(cell?.minutes).toBeCloseTo(machine + trim, 3);
    expect(cell?.notReachedSqFt).toBe(0);
  });

  test('leaves what is too little to be planned, or what no tool may treat, and says so', () => {
    const tooLittle = DRIVEN(oneLawn(120, 80), { ...PASSES, handTrimFromSqFt: 50 });
    for (const book of [tooLittle, withoutTools(DRIVEN(oneLawn(120, 80)))]) {
      const cell = machineCell(book);
      expect(cell?.trim).toBeNull();
      expect(cell?.notReachedSqFt).toBeGreaterThan(0);
      expect(cell?.minutes).toBeCloseTo(planned(book)[0] ?? 0, 3);
    }
  });

  test('is no way where its swath fits nowhere, as in plans', () => {
    const book = DRIVEN(oneLawn(100, 6));
    expect(machineCell(book)).toMatchObject({ answer: { can: false, reason: 'no-room-for-swath' }, minutes: null });
    expect(planned(book)).toEqual([]);
  });

  test('a quote pays for the hand trim and for setting its tool up', () => {
    const book = DRIVEN(oneLawn(120, 80));
    const [property] = book.properties;
    const [visit] = lawnQuote(book, property!, measureBook(book)[0]!).visits;
    const [machine = 0, trim = 0] = planned(book);
    expect(visit?.work.treatingMin).toBeCloseTo(machine, 3);
    expect(visit?.work.handTrimMin).toBeCloseTo(trim, 3);
    const reel = book.handMethods.find((each) => each.id === 'reel-200')!;
    const rider = book.rigs[0]!.machines[0]!;
    expect(visit?.work.setUpMin).toBe(reel.setUpMin + rider.unloadMin + rider.loadMin);
    expect(visit?.lines[0]?.arithmetic).toContain(' hand trim + ');
    expect(visit?.minutes).toBeGreaterThanOrEqual(machine + trim);
  });
});
