import type { Violation } from '../../../../core/plan/judge/index.ts';
import type { Plan, PlanActivity, PlanTask } from '../../../../core/plan/result/index.ts';

/** A plan whose parts may be written to. */
export type Draft<T> = T extends object ? { -readonly [Key in keyof T]: Draft<T[Key]> } : T;

/** One way to break the small plan, the violation that it is, and those that follow from it. */
export type Breaker = {
  readonly code: Violation['code'];
  readonly what: string;
  readonly follows?: readonly Violation['code'][];
  readonly run: (plan: Draft<Plan>) => void;
};

type Passes = Extract<NonNullable<PlanTask['reckoned']>, { readonly from: 'passes' }>;
type OfKind<Kind extends PlanActivity['kind']> = Draft<Extract<PlanActivity, { readonly kind: Kind }>>;

export function find<Kind extends PlanActivity['kind']>(plan: Draft<Plan>, kind: Kind, nth = 0): OfKind<Kind> {
  const found = plan.days.flatMap((day) => day.activities).filter((each) => each.kind === kind)[nth];
  return found as OfKind<Kind>;
}

/** Makes one activity longer and everything after it later. */
export function stretch(plan: Draft<Plan>, index: number, seconds: number): void {
  plan.days[0]?.activities.forEach((each, at) => {
    if (at > index) each.startSec += seconds;
    if (at >= index) each.endSec += seconds;
  });
}

export const bagOfGrass = (weightLb: number) => ({
  stock: 'dry' as const,
  productId: 'grass',
  volumeGal: 0,
  weightLb,
  bags: Math.ceil(weightLb / 50),
});

/** Every violation at least once. Stated figures are left as they were: 'figure-differs' may come with all of them. */
export const BREAKERS: readonly Breaker[] = [
  {
    code: 'level-below-empty',
    what: 'a refill that is too small',
    run: (plan) => {
      for (const fill of find(plan, 'refill').fills) fill.volumeGal = 15;
    },
  },
  {
    code: 'level-below-empty',
    what: 'a fill that takes out',
    run: (plan) => {
      for (const fill of find(plan, 'refill', 2).fills) fill.volumeGal = -6;
    },
  },
  {
    code: 'level-above-capacity',
    what: 'a tank filled over its top',
    run: (plan) => {
      for (const fill of find(plan, 'morning').fills.slice(0, 1)) fill.volumeGal = 20.5;
    },
  },
  {
    code: 'level-above-capacity',
    what: 'a fill of a tank that the rig has not',
    follows: ['level-below-empty'],
    run: (plan) => {
      for (const fill of find(plan, 'refill', 2).fills) fill.compartmentId = 'other/tank';
    },
  },
  {
    code: 'stock-below-empty',
    what: 'a nurse tank that is asked for too much',
    run: (plan) => {
      for (const fill of find(plan, 'morning').stock) fill.volumeGal = 27;
    },
  },
  {
    code: 'stock-above-capacity',
    what: 'a nurse tank filled over its top',
    run: (plan) => {
      for (const fill of find(plan, 'morning').stock) fill.volumeGal = 31;
    },
  },
  {
    code: 'stock-above-capacity',
    what: 'more bags than places',
    run: (plan) => {
      find(plan, 'morning').stock = [bagOfGrass(51)];
    },
    follows: ['stock-below-empty'],
  },
  {
    code: 'mixed-materials',
    what: 'a second mix without a rinse',
    run: (plan) => {
      find(plan, 'refill', 2).rinsedCompartmentIds = [];
    },
  },
  {
    code: 'out-of-order',
    what: 'spray before seed on the same ground, which no rig does',
    follows: ['time-not-possible'],
    run: sprayFirst,
  },
  {
    code: 'out-of-reach',
    what: 'a method that the rig has not for this zone',
    run: (plan) => {
      find(plan, 'treat', 4).method = { kind: 'hand', handMethodId: 'hose' };
    },
  },
  {
    code: 'out-of-reach',
    what: 'a rig that can do none of it',
    // What is not known to draw leaves the tank full for the next fill.
    follows: ['level-above-capacity', 'too-much-left'],
    run: (plan) => {
      for (const day of plan.days) day.rigId = 'south';
    },
  },
  { code: 'day-too-long', what: 'more than shift and overtime', run: (plan) => stretch(plan, 24, 3000) },
  { code: 'window-missed', what: 'a visit that starts after its window', run: (plan) => stretch(plan, 1, 400) },
  { code: 'fill-point-closed', what: 'a hydrant after its hours', run: (plan) => stretch(plan, 12, 2000) },
  {
    code: 'fill-point-lacks-material',
    what: 'seed from a hydrant',
    run: (plan) => {
      find(plan, 'refill', 1).stock = [bagOfGrass(1)];
    },
  },
  {
    code: 'fill-point-lacks-material',
    what: 'stock taken on where there is no fill point',
    run: (plan) => {
      find(plan, 'refill').stock = [bagOfGrass(1)];
    },
  },
  {
    code: 'fill-point-lacks-material',
    what: 'a fill point that is not in the book',
    run: (plan) => {
      find(plan, 'refill', 1).fillPointId = 'pond';
    },
  },
  {
    code: 'too-much-left',
    what: 'more of a mix left in the tank than may be',
    run: (plan) => {
      // 0.6 gal too much, 30 ms a part.
      for (const fill of find(plan, 'refill', 2).fills) fill.volumeGal += 0.6;
      stretch(plan, plan.days[0]?.activities.indexOf(find(plan, 'refill', 2) as never) ?? -1, 1.8);
    },
  },
  {
    code: 'over-payload',
    what: 'full tanks and a full hopper',
    run: (plan) => {
      for (const fill of find(plan, 'morning').fills.slice(1)) fill.weightLb = 100;
    },
  },
  {
    code: 'ground-not-covered',
    what: 'a strip left out',
    run: (plan) => {
      find(plan, 'treat', 4).areaSqFt = 1600;
    },
  },
  {
    code: 'ground-covered-twice',
    what: 'a strip done again',
    // What is done again takes material and time again.
    follows: ['level-below-empty', 'time-not-possible'],
    run: (plan) => {
      const treat = find(plan, 'treat', 4);
      treat.doneSqFt -= 300;
      treat.areaSqFt += 300;
    },
  },
  {
    code: 'task-unknown',
    what: 'a treatment that nobody ordered',
    follows: ['task-missing'],
    run: (plan) => {
      for (const each of plan.unplaced) each.treatmentId = 'other';
    },
  },
  {
    code: 'task-missing',
    what: 'work that is neither done nor listed',
    run: (plan) => {
      plan.unplaced = [];
    },
  },
  {
    code: 'rig-unknown',
    what: 'a rig that is not in the round',
    follows: ['task-missing'],
    run: (plan) => {
      for (const day of plan.days) day.rigId = 'east';
    },
  },
  {
    code: 'day-not-allowed',
    what: 'properties on a day that they do not allow',
    run: (plan) => {
      for (const day of plan.days) day.date = '2031-04-02';
    },
  },
  {
    code: 'day-not-allowed',
    what: 'a day outside the round',
    run: (plan) => {
      for (const day of plan.days) day.date = '2031-05-01';
    },
  },
  ...impossibleTimes(),
  {
    code: 'figure-differs',
    what: 'a day whose pay is wrong',
    run: (plan) => {
      for (const day of plan.days) day.costUsd += 1;
    },
  },
  {
    code: 'figure-differs',
    what: 'a load ticket with another amount',
    run: (plan) => {
      for (const load of plan.days[0]?.loads.slice(0, 1) ?? []) load.volumeGal = 19;
    },
  },
  {
    code: 'figure-differs',
    what: 'totals that do not add up',
    run: (plan) => {
      plan.totals.treatedSqFt += 1000;
    },
  },
  ...wronglyTold(),
  {
    code: 'plan-stale',
    what: 'a plan for another state of the book',
    run: (plan) => {
      plan.problemHash = 'other';
    },
  },
];

/** What is told of a task, or of the ground of a day, and is not what the problem has. */
function wronglyTold(): readonly Breaker[] {
  const told = (what: string, run: (task: Draft<PlanTask>, plan: Draft<Plan>) => void): Breaker => ({
    code: 'figure-differs',
    what,
    run: (plan) => {
      const task = plan.days[0]?.stops[1]?.tasks[0];
      if (task !== undefined) run(task, plan);
    },
  });
  const passes = (what: string, change: Partial<Passes>): Breaker =>
    told(what, (task) => {
      Object.assign(task.reckoned ?? {}, change);
    });
  return [
    passes('less overlap than there is', { overlapShare: 0.05 }),
    passes('less covered than the tank is emptied for', { coveredSqFt: 9000 }),
    passes('an average rate of one pass', { averageRate: 1 }),
    passes('fewer passes over the worst place', { worstRate: 2 }),
    passes('fewer swaths', { swaths: 11 }),
    passes('no pass along the edge', { trimPasses: 0 }),
    passes('ground that is not reached, and kept quiet', { notReachedSqFt: 0 }),
    told('passes said to be field capacity', (task) => {
      task.reckoned = { from: 'field-capacity', fieldEfficiency: 0.7 };
    }),
    told('field capacity said to be passes', (task, plan) => {
      const other = plan.days[0]?.stops[2]?.tasks[0];
      if (other !== undefined && task.reckoned !== undefined) other.reckoned = { ...task.reckoned };
    }),
    told('passes that are not told', (task) => {
      delete task.reckoned;
    }),
    told('a task with less ground than is treated', (task) => {
      task.areaSqFt = 8000;
    }),
    told('a task that takes less out of the tank', (task) => {
      task.volumeGal = 20;
    }),
    told('a task that begins later', (task) => {
      task.startSec += 60;
    }),
    told('a task told twice', (task, plan) => {
      plan.days[0]?.stops[1]?.tasks.push({ ...task });
    }),
    told('a task told of a stop where it is not done', (task, plan) => {
      plan.days[0]?.stops[2]?.tasks.push({ ...task });
    }),
    told('a day that counts what is not reached as treated', (_, plan) => {
      for (const day of plan.days) day.treatedSqFt += 90;
    }),
    told('a day that covers less', (_, plan) => {
      for (const day of plan.days) day.coveredSqFt = day.treatedSqFt;
    }),
    told('a day with hand trim that nobody does', (_, plan) => {
      for (const day of plan.days) day.handTrimSqFt = 90;
    }),
    told('totals that are silent on what is not reached', (_, plan) => {
      plan.totals.notReachedSqFt = 0;
    }),
  ];
}

function impossibleTimes(): readonly Breaker[] {
  const timed = (what: string, run: Breaker['run']): Breaker => ({ code: 'time-not-possible', what, run });
  return [
    timed('a drive that is too quick', (plan) => stretch(plan, 1, -60)),
    timed('a gap between two activities', (plan) => {
      find(plan, 'pack-up').startSec += 30;
    }),
    timed('a zone done in no time', (plan) => stretch(plan, 5, -600)),
    timed('a refill shorter than its parts', (plan) => stretch(plan, 11, -30)),
    timed('a trip to a fill point without time for the machine', (plan) => stretch(plan, 14, -100)),
    timed('a rinse that takes no time', (plan) => stretch(plan, 20, -300)),
    timed('a head that swaps itself', (plan) => stretch(plan, 4, -100)),
    timed('a set-up that is too short', (plan) => stretch(plan, 2, -60)),
    timed('no break', (plan) => {
      const activities = plan.days[0]?.activities ?? [];
      stretch(plan, 8, -1200);
      activities.splice(8, 1);
    }),
    timed('a day that ends away from home', (plan) => {
      plan.days[0]?.activities.splice(-1, 1);
    }),
    timed('the same rig twice on one date', (plan) => {
      plan.days.push({ ...structuredClone(plan.days[0] as Draft<Plan['days'][number]>), activities: [], stops: [] });
    }),
    timed('work by a person who does something else', (plan) => {
      find(plan, 'treat', 4).person = 2;
    }),
  ];
}

/** The spray before the seed on the same ground, with all times right. */
function sprayFirst(plan: Draft<Plan>): void {
  const activities = plan.days[0]?.activities ?? [];
  const [seed, spray] = [find(plan, 'treat', 0), find(plan, 'treat', 1)];
  const swap = find(plan, 'swap-head');
  const start = seed.startSec;
  Object.assign(spray, { startSec: start, endSec: start + 1800 });
  Object.assign(swap, { startSec: start + 1800, endSec: start + 2100, headId: 'seeder' });
  Object.assign(seed, { startSec: start + 2100, endSec: start + 3300 });
  activities.splice(3, 3, spray, swap, seed);
}
