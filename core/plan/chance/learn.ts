import type { Spread, Visit } from '../../book/index.ts';

/** Fewer than so many visits with a figure say too little to replace what was set. */
const LEAST = 12;

/** One thing that was learned from what was recorded. */
export type Learned = {
  readonly what: 'drive' | 'on site' | 'used';
  /** Visits with both figures. */
  readonly visits: number;
  /** Mean of recorded over planned, weighted by the planned figure. */
  readonly mean: number;
  /** Standard deviation of recorded over planned. */
  readonly deviation: number;
};

/** The spread with what was learned in it, what that was, and the visits that each kind needs at least. */
export type LearnedSpread = { readonly spread: Spread; readonly learned: readonly Learned[]; readonly least: number };

type Pair = { readonly planned: number; readonly real: number };

/**
 * What recorded visits say of the spread. Each kind that has enough visits replaces what was set; the rest stays. Time on site is
 * recorded as a whole, so setting up and treating get the same mean, and their set deviations are both raised or lowered until the
 * deviation of the whole is the recorded one.
 */
export function learnSpread(visits: readonly Visit[], set: Spread): LearnedSpread {
  const done = visits.filter((each) => each.outcome.kind === 'done');
  const drives = done.flatMap(({ plannedDriveMin, drivenMin }) => pair(plannedDriveMin, drivenMin));
  const sites = done.flatMap((each) => {
    const { arriveMin, leaveMin, plannedSetUpMin, plannedTreatMin } = each;
    if (arriveMin === undefined || leaveMin === undefined) return [];
    return pair((plannedSetUpMin ?? 0) + (plannedTreatMin ?? 0), leaveMin - arriveMin);
  });
  const used = done.flatMap(({ outcome }) =>
    outcome.kind === 'done'
      ? outcome.tasks.flatMap((task) => [
          ...pair(task.expectedGal, task.usedGal),
          ...pair(task.expectedLb, task.usedLb),
        ])
      : [],
  );
  const drive = learn('drive', drives);
  const site = learn('on site', sites);
  const amount = learn('used', used);
  const spread = {
    ...set,
    ...(isEnough(drive) ? { drive: bounded(drive.deviation), driveMean: factor(drive.mean) } : {}),
    ...(isEnough(site) ? onSite(site, done, set) : {}),
    ...(isEnough(amount) ? { used: bounded(amount.deviation), usedMean: factor(amount.mean) } : {}),
  };
  return { spread, learned: [drive, site, amount], least: LEAST };
}

function pair(planned: number | undefined, real: number | undefined): readonly Pair[] {
  return planned === undefined || real === undefined || planned <= 0 || real < 0 ? [] : [{ planned, real }];
}

function learn(what: Learned['what'], pairs: readonly Pair[]): Learned {
  const planned = pairs.reduce((sum, each) => sum + each.planned, 0);
  const real = pairs.reduce((sum, each) => sum + each.real, 0);
  const mean = planned > 0 ? real / planned : 1;
  // Each pair counts by what was planned: a minute more on two minutes is no news, on forty it is.
  const square = pairs.reduce((sum, each) => sum + each.planned * (each.real / each.planned / mean - 1) ** 2, 0);
  const freedom = pairs.length > 1 ? pairs.length / (pairs.length - 1) : 1;
  return {
    what,
    visits: pairs.length,
    mean,
    deviation: mean > 0 && planned > 0 ? Math.sqrt((square / planned) * freedom) : 0,
  };
}

const isEnough = ({ visits, mean }: Learned): boolean => visits >= LEAST && mean > 0;
/** What the book takes: shares up to 1, factors above nought up to 5. */
const bounded = (deviation: number): number => Math.min(1, deviation);
const factor = (mean: number): number => Math.min(5, Math.max(0.05, mean));

/** The set deviations of both parts of a stay, scaled so that the stay as a whole has the recorded one. */
function onSite(site: Learned, visits: readonly Visit[], set: Spread): Partial<Spread> {
  const setUp = visits.reduce((sum, each) => sum + (each.plannedSetUpMin ?? 0), 0);
  const treat = visits.reduce((sum, each) => sum + (each.plannedTreatMin ?? 0), 0);
  const whole = Math.hypot(set.setUp * setUp, set.treat * treat) / Math.max(1e-9, setUp + treat);
  const means = { setUpMean: factor(site.mean), treatMean: factor(site.mean) };
  if (whole <= 0) return { ...means, setUp: bounded(site.deviation), treat: bounded(site.deviation) };
  const scale = site.deviation / whole;
  return { ...means, setUp: bounded(set.setUp * scale), treat: bounded(set.treat * scale) };
}
