import { describe, expect, it } from 'vitest';
import { createLedger } from '../../../../core/plan/judge/ledger.ts';
import { lookupOf } from '../../../../core/plan/judge/lookup.ts';
import {
  checkAboard,
  checkLeft,
  cleanVessels,
  drawForOp,
  pourIn,
  takeFromStock,
  type VesselContext,
} from '../../../../core/plan/judge/vessels.ts';
import type { Aboard, Op, ProblemCompartment, ProblemRig } from '../../../../core/plan/problem/index.ts';
import { smallProblem } from './small-problem.ts';

const [TANK, HOPPER, BAGS] = [0, 1, 2];
const [WATER, SEED_STOCK] = [0, 1];
const [MIX_ONE, MIX_TWO, SEED] = [0, 1, 2];

/** The first rig of the small problem with bags beside its hopper, everything clean and empty. */
function contextOf(begins?: Aboard): VesselContext {
  const problem = smallProblem();
  const bags: ProblemCompartment = {
    id: 'rider/bags',
    kind: 'dry',
    capacityParts: 5000,
    fillMsPerPart: 0,
    pours: { into: HOPPER, msPerPart: 4 },
  };
  const plain = problem.rigs[0] as ProblemRig;
  const compartments = [...plain.compartments, bags];
  const rig = begins === undefined ? { ...plain, compartments } : { ...plain, compartments, begins };
  return { lookup: lookupOf(problem), rig, ledger: createLedger(), vessels: cleanVessels(problem, rig) };
}

const said = ({ ledger }: VesselContext): readonly string[] =>
  ledger.violations.map(({ code, message }) => `${code}: ${message}`);
const excesses = ({ ledger }: VesselContext) => ledger.violations.map((each) => each.excess);

describe('what is aboard when a day begins under way', () => {
  const begins: Aboard = { parts: [500, 0, 300], materials: [MIX_TWO, -1, SEED], stockParts: [700, 5000] };
  const aboard = (change: (context: VesselContext) => void, given: Aboard | undefined = begins): readonly string[] => {
    const context = contextOf(given);
    const { vessels } = context;
    [500, 0, 300].forEach((parts, c) => {
      vessels.levels[c] = parts;
    });
    [MIX_TWO, -1, SEED].forEach((material, c) => {
      vessels.materials[c] = material;
    });
    vessels.stocks[WATER] = 700;
    vessels.stocks[SEED_STOCK] = 5000;
    change(context);
    checkAboard(context, 'morning');
    return said(context);
  };

  it('is just what the problem says, to a twentieth of a part', () => {
    expect(aboard(() => undefined)).toEqual([]);
    expect(
      aboard(({ vessels }) => {
        vessels.levels[TANK] = 500.04;
        vessels.stocks[WATER] = 699.96;
      }),
    ).toEqual([]);
    // What a clean vessel holds nothing of does not matter.
    expect(
      aboard(({ vessels }) => {
        vessels.materials[HOPPER] = SEED;
      }),
    ).toEqual([]);
  });

  it('may be anything where the problem does not say', () => {
    const context = contextOf();
    context.vessels.levels[TANK] = 77;
    checkAboard(context, 'morning');
    expect(said(context)).toEqual([]);
  });

  it.each([
    ['more in a vessel', 'levels', TANK, 600, 'rider/tank begins with 6, it holds 5'],
    ['less in a vessel', 'levels', BAGS, 200, 'rider/bags begins with 2, it holds 3'],
    ['something in a clean one', 'levels', HOPPER, 100, 'rider/hopper begins with 1, it holds 0'],
    ['another mix', 'materials', TANK, MIX_ONE, 'rider/tank begins with 5, it holds 5'],
    ['less water', 'stocks', WATER, 600, 'the rig begins with 6 of water, it has 7'],
    ['more seed', 'stocks', SEED_STOCK, 5100, 'the rig begins with 51 of grass, it has 50'],
  ] as const)('is told with %s', (_, figures, index, value, words) => {
    const told = aboard(({ vessels }) => {
      vessels[figures][index] = value;
    });
    expect(told).toEqual([`aboard-differs: ${words}`]);
  });
});

describe('what goes beyond a limit is told with it', () => {
  it('in a vessel that is filled too far', () => {
    const context = contextOf();
    pourIn(context, { compartment: TANK, material: MIX_ONE, parts: 2100 }, '');
    pourIn(context, { compartment: HOPPER, material: SEED, parts: 10_300 }, '');
    expect(excesses(context)).toEqual([
      { subjectId: 'rider/tank', limit: 20, found: 21, unit: 'gal' },
      { subjectId: 'rider/hopper', limit: 100, found: 103, unit: 'lb' },
    ]);
  });

  it('in a vessel that runs dry', () => {
    const context = contextOf();
    const op = smallProblem().jobs[1]?.modes[0]?.[0]?.ops[0] as Op;
    drawForOp(context, op, 0, 9000, '');
    const seed = { ...op, material: SEED, draws: [{ compartment: HOPPER, parts: 400 }] };
    drawForOp(context, seed, 0, 4500, '');
    expect(excesses(context)).toEqual([
      { subjectId: 'rider/tank', limit: 0, found: -27, unit: 'gal' },
      { subjectId: 'rider/hopper', limit: 0, found: -2, unit: 'lb' },
    ]);
    expect(said(context)).toEqual([
      'level-below-empty: rider/tank runs dry, short by 27 gal',
      'level-below-empty: rider/hopper runs dry, short by 2 lb',
    ]);
  });

  it('in a stock that runs out', () => {
    const context = contextOf();
    takeFromStock(context, WATER, 150, '');
    takeFromStock(context, SEED_STOCK, 250, '');
    expect(excesses(context)).toEqual([
      { subjectId: '', limit: 0, found: -1.5, unit: 'gal' },
      { subjectId: 'grass', limit: 0, found: -2.5, unit: 'lb' },
    ]);
  });

  it('in what is left of a mix', () => {
    const context = contextOf();
    context.vessels.materials[TANK] = MIX_TWO;
    for (const level of [50, 50.04, 80]) {
      context.vessels.levels[TANK] = level;
      checkLeft(context, TANK, '');
    }
    expect(said(context)).toEqual(['too-much-left: 0.8 gal are left in rider/tank, 0.5 may be']);
    expect(excesses(context)).toEqual([{ subjectId: 'rider/tank', limit: 0.5, found: 0.8, unit: 'gal' }]);
  });
});

describe('bags of another product', () => {
  const filled = (level: number, compartment: number): readonly string[] => {
    const context = contextOf();
    context.vessels.materials[compartment] = MIX_ONE;
    context.vessels.levels[compartment] = level;
    pourIn(context, { compartment, material: SEED, parts: 100 }, '');
    expect(context.vessels.materials[compartment]).toBe(SEED);
    return said(context);
  };

  it('take the place of empty ones, and of no others', () => {
    expect([filled(0, BAGS), filled(0.04, BAGS)]).toEqual([[], []]);
    const mixed = (id: string) => [`mixed-materials: ${id} is filled with another material without a rinse`];
    expect(filled(1, BAGS)).toEqual(mixed('rider/bags'));
    // A hopper is to be emptied first, even where it has run dry.
    expect(filled(0, HOPPER)).toEqual(mixed('rider/hopper'));
  });
});
