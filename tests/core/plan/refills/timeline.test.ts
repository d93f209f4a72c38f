import { describe, expect, it } from 'vitest';
import type { Problem, ProblemRig } from '../../../../core/plan/problem/index.ts';
import type { Work } from '../../../../core/plan/refills/busy.ts';
import { stintKey } from '../../../../core/plan/refills/programme-bags.ts';
import { RefillSearch } from '../../../../core/plan/refills/refill-search.ts';
import { isTimeline, playDay, type Timeline, type TimelineFault } from '../../../../core/plan/refills/timeline.ts';
import type { RefillReason } from '../../../../core/plan/refills/types.ts';
import { LEG_M, smallProblem } from '../judge/small-problem.ts';

const DAY_MS = 24 * 3_600_000;
const [SHOP, HYDRANT, RIG] = [0, 1, -1];
const [TANK, HOPPER, BAGS] = [0, 1, 2];
const WATER = 0;
const [MIX_ONE, MIX_TWO, SEED] = [0, 1, 2];

type Setting = {
  readonly rig?: Partial<ProblemRig>;
  readonly closes?: readonly number[];
  readonly hydrantCloses?: number;
  readonly bags?: number;
};

function played(jobs: readonly number[], work: Work, setting: Setting = {}, reasons: readonly RefillReason[] = []) {
  const { rig = {}, closes = [], hydrantCloses = 86_400, bags = 0 } = setting;
  const small = smallProblem();
  const beside = {
    id: 'bags',
    kind: 'dry' as const,
    capacityParts: bags,
    fillMsPerPart: 0,
    pours: { into: 1, msPerPart: 4 },
  };
  const problem: Problem = {
    ...small,
    jobs: small.jobs.map((each, j) => ({ ...each, openMs: 0, closeMs: (closes[j] ?? 86_400) * 1000 })),
    stations: small.stations.map((each, k) => ({
      ...each,
      openMs: k === HYDRANT ? 28_800_000 : 0,
      closeMs: k === HYDRANT ? hydrantCloses * 1000 : DAY_MS,
    })),
    rigs: small.rigs.map((each) => ({
      ...each,
      shiftMs: DAY_MS / 2,
      compartments:
        bags === 0
          ? each.compartments
          : [...each.compartments.map((one, c) => (c === HOPPER ? { ...one, capacityParts: 1000 } : one)), beside],
      ...rig,
    })),
  };
  const { chain } = new RefillSearch(problem, 0);
  chain.load(
    jobs,
    jobs.map(() => 0),
    jobs.length,
  );
  return playDay(chain, work, reasons);
}

const fill = (compartment: number, material: number, parts: number) => ({ compartment, material, parts });
const nothing = { fills: [], stock: [] };

/** Kind, beginning and end in seconds, and whatever else is known of each activity. */
function told(day: Timeline | TimelineFault): readonly string[] {
  if (!isTimeline(day)) return [`${day.kind} at ${day.visit}`];
  return day.activities.map(({ kind, startMs, endMs, ...rest }) => {
    const more = Object.values(rest).map((each) => (typeof each === 'object' ? JSON.stringify(each) : String(each)));
    return [kind, startMs / 1000, endMs / 1000, ...more].join(' ');
  });
}

/**
 * Water taken on at the hydrant on the way to Acre; a trip there between Acre's ops; the tank filled inside its spray; and rinsed at
 * the shop on the way to Birch.
 */
const work: Work = {
  events: [
    { position: 0, done: 0, station: HYDRANT, changes: 0 },
    { position: 1, done: 0, station: HYDRANT, changes: 0 },
    { position: 1, done: 3000, station: RIG, changes: 0 },
    { position: 2, done: 0, station: SHOP, changes: 1 << TANK },
  ],
  moves: [
    { fills: [fill(HOPPER, SEED, 4000)], stock: [{ stock: 1, parts: 7 }] },
    { fills: [], stock: [{ stock: WATER, parts: 100 }] },
    { fills: [fill(TANK, MIX_ONE, 100)], stock: [] },
    { fills: [fill(TANK, MIX_ONE, 500)], stock: [] },
    { fills: [fill(TANK, MIX_ONE, 1000)], stock: [] },
  ],
};

describe('a day played to the millisecond', () => {
  it('has every activity at its time', () => {
    const reasons: readonly RefillReason[] = [
      { kind: 'stock-runs-out', stock: 0 },
      { kind: 'runs-dry', compartment: 0 },
    ];
    expect(told(played([0, 1], work, {}, reasons))).toEqual([
      'morning 25200 25800 [{"compartment":1,"material":2,"parts":4000}] [{"stock":1,"parts":7}]',
      'drive 25800 26400 0 1 5000',
      'wait 26400 28800',
      // 240 s, and 10 ms for each part.
      'refill 28800 29041 1 0 0 0 [] [] [{"stock":0,"parts":100}] {"kind":"stock-runs-out","stock":0}',
      'drive 29041 29641 1 2 5000',
      'set-up 29641 29821 0',
      'treat 29821 31021 0 0 0 4000',
      // 240 s, 200 s to unload and load, and 40 ms for each part.
      'drive 31021 31621 2 1 5000',
      'refill 31621 32065 1 0 1 0 [] [{"compartment":0,"material":0,"parts":100}] [] {"kind":"runs-dry","compartment":0}',
      'drive 32065 32665 1 2 5000',
      'swap-head 32665 32965 0 1',
      'treat 32965 33865 0 1 0 3000',
      // 240 s, 120 s inside the op, and 30 ms for each part.
      'refill 33865 34240 -1 0 1 3000 [] [{"compartment":0,"material":0,"parts":500}] [] {"kind":"payload"}',
      'treat 34240 35140 0 1 3000 6000',
      'pack-up 35140 35260 0',
      'drive 35260 35860 2 0 5000',
      // 300 s, a rinse of 300 s, and 36 ms for each part.
      'refill 35860 36496 0 1 0 0 [0] [{"compartment":0,"material":0,"parts":1000}] [] {"kind":"payload"}',
      'drive 36496 37096 0 3 5000',
      // It fell due at 8:30.
      'break 37096 38296',
      'set-up 38296 38476 1',
      'treat 38476 41176 1 0 0 9000',
      'pack-up 41176 41296 1',
      'drive 41296 41896 3 0 5000',
      'evening 41896 42796',
    ]);
  });

  it('costs its time, its ways and its rig, and overtime', () => {
    const [paidSec, legs] = [42_796 - 25_200, 7];
    const cost = 10e9 + paidSec * 5e6 + legs * LEG_M * 300_000;
    const day = played([0, 1], work) as Timeline;
    expect([day.paidMs, day.distanceM, day.cost]).toEqual([paidSec * 1000, legs * LEG_M, cost]);
    const over = played([0, 1], work, { rig: { shiftMs: (paidSec - 60) * 1000, overtimeMs: 60_000 } }) as Timeline;
    expect(over.cost).toBe(cost + 60 * 2.5e6);
    const short = { shiftMs: (paidSec - 60) * 1000, overtimeMs: 59_999 };
    expect(told(played([0, 1], work, { rig: short }))).toEqual(['too-long at 1']);
  });

  it('rinses what each vessel held last', () => {
    // Mix one at Birch, mix two at Cedar, mix one again: 300 s to rinse mix one and 240 s to rinse mix two.
    const twice: Work = {
      events: [
        { position: 0, done: 6666, station: RIG, changes: 0 },
        { position: 1, done: 0, station: RIG, changes: 1 << TANK },
        { position: 1, done: 1000, station: RIG, changes: 0 },
        { position: 2, done: 0, station: RIG, changes: 1 << TANK },
      ],
      moves: [
        { fills: [fill(TANK, MIX_ONE, 2000)], stock: [{ stock: WATER, parts: 3000 }] },
        { fills: [fill(TANK, MIX_ONE, 700)], stock: [] },
        { fills: [fill(TANK, MIX_TWO, 300)], stock: [] },
        { fills: [fill(TANK, MIX_TWO, 300)], stock: [] },
        { fills: [fill(TANK, MIX_ONE, 2000)], stock: [] },
      ],
    };
    const refills = (played([1, 2, 1], twice) as Timeline).activities.filter((each) => each.kind === 'refill');
    expect(refills.map(({ startMs, endMs }) => (endMs - startMs) / 1000)).toEqual([
      240 + 120 + 21,
      240 + 300 + 9,
      240 + 120 + 9,
      240 + 240 + 60,
    ]);
  });

  it('says which hours are not kept', () => {
    expect(told(played([0, 1], work, { hydrantCloses: 32_065 })).length).toBe(24);
    expect(told(played([0, 1], work, { hydrantCloses: 32_064 }))).toEqual(['station-closed at 0']);
    expect(told(played([0, 1], work, { hydrantCloses: 29_040 }))).toEqual(['station-closed at 0']);
    expect(told(played([0, 1], work, { closes: [29_641, 37_096] })).length).toBe(24);
    expect(told(played([0, 1], work, { closes: [29_640] }))).toEqual(['window-missed at 0']);
    expect(told(played([0, 1], work, { closes: [29_641, 37_095] }))).toEqual(['window-missed at 1']);
    // The first one that is missed is named.
    expect(told(played([0, 1], work, { closes: [29_640], hydrantCloses: 29_000 }))).toEqual(['station-closed at 0']);
  });

  it('has no break before it falls due, nor two, nor one of no length', () => {
    const kinds = (rig: Partial<ProblemRig>): number =>
      told(played([0, 1], work, { rig })).filter((each) => each.startsWith('break')).length;
    expect([kinds({ breakAfterMs: 37_096_000 }), kinds({ breakAfterMs: 37_096_001 })]).toEqual([1, 0]);
    expect([kinds({ breakAfterMs: 0 }), kinds({ breakAfterMs: -1 }), kinds({ breakMs: 0 })]).toEqual([1, 0, 0]);
  });
});

describe('bags poured on the machine', () => {
  /** 4,000 parts of seed over 4,000 ft2; the hopper holds 1,000, and pouring takes 4 ms for each part. */
  const loaded = (hopper: number, bags: number): Work => ({
    events: [],
    moves: [{ fills: [fill(HOPPER, SEED, hopper), fill(BAGS, SEED, bags), fill(TANK, MIX_ONE, 1800)], stock: [] }],
  });
  const pours = (day: Timeline | TimelineFault): readonly string[] =>
    told(day).filter((each) => each.startsWith('pour') || !isTimeline(day));

  it('go into the hopper when it is dry, as much as fits', () => {
    expect(pours(played([0], loaded(1000, 3000), { bags: 3000 }))).toEqual([
      'pour 26880 26884 0 1000 2 1 2 1000 0',
      'pour 27184 27188 0 2000 2 1 2 1000 0',
      'pour 27488 27492 0 3000 2 1 2 1000 0',
    ]);
  });

  it('are no more than what is used', () => {
    expect(pours(played([0], loaded(1000, 3400), { bags: 3400 })).at(-1)).toContain(' 3000 2 1 2 1000 ');
    expect(pours(played([0], loaded(900, 3100), { bags: 3400 })).map((each) => each.split(' ').at(-2))).toEqual([
      '1000',
      '1000',
      '1000',
      '100',
    ]);
  });

  it('are poured as it was decided where that costs less, and no earlier than there is room', () => {
    const decided = { ...loaded(1000, 3000), pours: new Map([[stintKey(0, 0, 1), 3000]]) };
    expect(pours(played([0], decided, { bags: 3000 })).length).toBe(3);
  });

  it('are no more than an op needs where a customer could not be met in time otherwise', () => {
    // 500 in the hopper. Acre's seed takes 3,500 out of the bags, 14 s; pouring 500 more ahead takes 2 s. So the rig is ready for the
    // second visit after 600 s, 600 s on the way, 180, 1,200 and 14 s, 300 to swap the head, 1,800 and 120 s.
    const ready = 25_200 + 600 + 600 + 180 + 1214 + 300 + 1800 + 120;
    const parts = (closes: number): readonly string[] =>
      pours(played([0, 0], loaded(500, 7500), { bags: 7500, closes: [closes] })).map(
        (each) => each.split(' ').at(-2) ?? '',
      );
    const full = ['1000', '1000', '1000'];
    expect(parts(ready + 2)).toEqual([...full, '1000', ...full, '500']);
    expect(parts(ready)).toEqual([...full, '500', ...full, '1000']);
    expect(parts(ready + 1)).toEqual([...full, '500', ...full, '1000']);
    expect(pours(played([0, 0], loaded(500, 7500), { bags: 7500, closes: [ready - 1] }))).toEqual([
      'window-missed at 1',
    ]);
  });

  it('do not last where there are too few, nor fit where there are too many', () => {
    expect(pours(played([0], loaded(1000, 2999), { bags: 3000 }))).toEqual(['too-long at 0']);
    expect(pours(played([0], loaded(1001, 2999), { bags: 3000 }))).toEqual(['too-long at 0']);
    expect(pours(played([0], loaded(1000, 3001), { bags: 3000 }))).toEqual(['too-long at 0']);
  });

  it('are not touched while another vessel is drawn on, and are filled at events', () => {
    const twice: Work = {
      events: [{ position: 2, done: 0, station: RIG, changes: 0 }],
      moves: [
        { fills: [fill(HOPPER, SEED, 1000), fill(BAGS, SEED, 3000), fill(TANK, MIX_ONE, 1800)], stock: [] },
        { fills: [fill(HOPPER, SEED, 1000), fill(BAGS, SEED, 3000)], stock: [] },
      ],
    };
    expect(pours(played([0, 0], twice, { bags: 3000 })).length).toBe(6);
    expect(pours(played([0, 0], { ...twice, moves: [twice.moves[0] ?? nothing, nothing] }, { bags: 3000 }))).toEqual([
      'too-long at 1',
    ]);
  });
});
