import { create } from 'zustand';
import type { AppError } from '../../core/base/index.ts';
import { fleetPlanName } from '../../core/compare/index.ts';
import type { JobDone, JobProgress, RequestOf, StoredPlan } from '../../core/contract/index.ts';
import type { DoneWork, Outage } from '../../core/plan/problem/index.ts';
import type { Plan } from '../../core/plan/result/index.ts';
import { todayHere } from '../format/index.ts';
import { commonWords } from '../texts/index.ts';
import { storesWords } from '../texts/stores/index.ts';
import { askHost } from './host.ts';
import { say, showNews } from './notices.ts';
import { useView } from './view.ts';

/** A plan, and the revision of the book that it was made on; null where that is not known. */
export type KnownPlan = { readonly plan: Plan; readonly savedAt: string; readonly madeOnRevision: number | null };

export type RunningJob = {
  readonly jobId: string;
  readonly roundId: string;
  readonly step: string;
  readonly done: number;
  readonly total: number;
  readonly bestSoFar: string;
  readonly cancelling: boolean;
};

type PlanState = {
  /** The open book's session; events of other sessions are not for this page. */
  readonly session: string | null;
  readonly plans: Readonly<Record<string, KnownPlan>>;
  readonly job: RunningJob | null;
  /** Why the last planning of a round came to nothing. */
  readonly failures: Readonly<Record<string, AppError>>;
};

export const usePlans = create<PlanState>(() => ({ session: null, plans: {}, job: null, failures: {} }));

/** Jobs of this session that ended before the answer to their start arrived. */
const finishedEarly = new Set<string>();

/** Takes in the plans that are stored with a book. */
export function startPlans(session: string | null, stored: readonly StoredPlan[]): void {
  const plans: Record<string, KnownPlan> = {};
  for (const { roundId, plan, savedAt } of stored) plans[roundId] = { plan, savedAt, madeOnRevision: null };
  finishedEarly.clear();
  usePlans.setState({ session, plans, job: null, failures: {} });
}

export type PlanWish = {
  readonly roundId: string;
  readonly seconds: number;
  readonly seed: number;
  /** Dollars for an hour above the mean day; 0 for none. */
  readonly evenUsdPerHour: number;
  /** The rigs of this fleet instead of the round's own. */
  readonly fleetId?: string;
  /** The rest of a day under way instead of the round. */
  readonly rest?: RequestOf<'job.startPlan'>['rest'];
  /** Begin with the plan that is there, these properties with their rig and day; absent: from nothing. */
  readonly pinned?: readonly string[];
  /** Rigs and machines that are out on single dates. */
  readonly outages?: readonly Outage[];
  /** What was done before and is left out. */
  readonly done?: readonly DoneWork[];
};

/** Asks the host to plan a round; progress comes by events. */
export async function startPlanning({
  roundId,
  seconds,
  seed,
  evenUsdPerHour,
  pinned,
  outages = [],
  done = [],
  rest,
  fleetId,
}: PlanWish): Promise<void> {
  const { session, job } = usePlans.getState();
  if (session === null || job !== null) return;
  usePlans.setState(({ failures }) => ({ failures: without(failures, roundId) }));
  const answer = await askHost('job.startPlan', {
    session,
    roundId,
    seconds,
    seed,
    evenUsdPerHour,
    today: todayHere(),
    ...(rest === undefined ? {} : { rest }),
    ...(fleetId === undefined ? {} : { fleetId }),
    ...(pinned === undefined ? {} : { keep: { first: 0, pinned: [...pinned] } }),
    ...(outages.length === 0 ? {} : { outages: [...outages] }),
    ...(done.length === 0 ? {} : { done: [...done] }),
  });
  if (answer === null || usePlans.getState().job !== null) return;
  const { jobId } = answer;
  if (finishedEarly.delete(jobId)) return;
  usePlans.setState({
    job: { jobId, roundId, step: storesWords.plans.starting, done: 0, total: 1, bestSoFar: '', cancelling: false },
  });
  say(storesWords.plans.started);
}

export async function cancelPlanning(): Promise<void> {
  const { job } = usePlans.getState();
  if (job === null) return;
  usePlans.setState({ job: { ...job, cancelling: true } });
  await askHost('job.cancel', { jobId: job.jobId });
}

export function planProgress(progress: JobProgress): void {
  const { job } = usePlans.getState();
  if (job === null || job.jobId !== progress.jobId) return;
  const { step, total, bestSoFar } = progress;
  // Each step counts something of its own, so only within one step is a lower figure an older one.
  const done = step === job.step ? Math.max(progress.done, job.done) : progress.done;
  usePlans.setState({ job: { ...job, step, done, total, bestSoFar } });
  // Every change would talk without an end; a quarter tells that it goes on.
  const quarter = quarters(done, total);
  if (quarter > quarters(job.done, job.total) && quarter < 4) say(storesWords.plans.far(quarter * 25, bestSoFar));
}

const quarters = (done: number, total: number): number => Math.floor((4 * done) / Math.max(1, total));

export function planDone({ jobId, session, roundId, plan, savedAt, revision, cancelled }: JobDone): void {
  if (usePlans.getState().session !== session) return;
  endJob(jobId);
  usePlans.setState(({ plans }) => ({ plans: { ...plans, [roundId]: { plan, savedAt, madeOnRevision: revision } } }));
  const days = commonWords.rigDays(plan.days.length);
  const what = roundId === plan.roundId ? plan.roundName : besideName(roundId, plan);
  const words = cancelled ? storesWords.plans.stopped(days) : storesWords.plans.planned(what, days);
  if (useView.getState().room === 'round') say(words);
  else showNews(words);
}

/** What a plan beside that of the round is called. */
function besideName(keptAs: string, plan: Plan): string {
  const isFleet = keptAs.startsWith(fleetPlanName(plan.roundId, ''));
  return isFleet ? storesWords.plans.byFleet(plan.roundName) : storesWords.plans.restDay;
}

/** Plans a round by several fleets, one after the other; ends where one of them is stopped or fails. */
export async function planFleets(wish: Omit<PlanWish, 'fleetId'>, fleetIds: readonly string[]): Promise<void> {
  for (const fleetId of fleetIds) {
    const name = fleetPlanName(wish.roundId, fleetId);
    const before = usePlans.getState().plans[name];
    await startPlanning({ ...wish, fleetId });
    await planningEnds();
    if (usePlans.getState().plans[name] === before) return;
  }
}

/** Resolves when nothing is being planned any more; at once where nothing is. */
export function planningEnds(): Promise<void> {
  return new Promise((done) => {
    if (usePlans.getState().job === null) {
      done();
      return;
    }
    const leave = usePlans.subscribe((state) => {
      if (state.job !== null) return;
      leave();
      done();
    });
  });
}

/** Whatever came of a job: it runs no longer. */
export function endJob(jobId: string): void {
  const { job } = usePlans.getState();
  if (job?.jobId === jobId) usePlans.setState({ job: null });
  else finishedEarly.add(jobId);
}

function without<T>(record: Readonly<Record<string, T>>, key: string): Readonly<Record<string, T>> {
  return Object.fromEntries(Object.entries(record).filter(([each]) => each !== key));
}
