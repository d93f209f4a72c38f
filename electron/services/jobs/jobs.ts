import { randomBytes } from 'node:crypto';
import { availableParallelism } from 'node:os';
import { err, ok, type Progress, type Result } from '../../../core/base/index.ts';
import { bookOfFleet, fleetPlanName } from '../../../core/compare/index.ts';
import type { Done, PassDrawings, ReckonedPasses } from '../../../core/contract/index.ts';
import type { GoTable } from '../../../core/plan/board/index.ts';
import { restName } from '../../../core/plan/live/index.ts';
import type { DoneWork, Outage, RestOfDay } from '../../../core/plan/problem/index.ts';
import type { PlannedDays } from '../../../core/round/programme/index.ts';
import type { DriveTable } from '../../../core/travel/index.ts';
import type { Client } from '../host-port.ts';
import type { Session } from '../library/index.ts';
import type { Log } from '../log/index.ts';
import type { BookAt } from '../roads/index.ts';
import { type Boards, createBoards } from './boards.ts';
import { bookOfRound, lawnsListed } from './book-of-round.ts';
import { type DrawRequest, drawPasses } from './drawing.ts';
import type { Errand } from './errand.ts';
import { tellWhoCanGo } from './fitting.ts';
import type { PlanBase } from './messages.ts';
import { type PlanJob, type PlanOutcome, startLater } from './plan-job.ts';
import { startPlanning } from './planning.ts';
import { reckonPasses } from './property-passes.ts';
import { startReckoning } from './reckoning.ts';

/** What a plan is asked for with. Null for seconds or iterations: no such bound; for dates: all days of the round. */
export type PlanRequest = {
  readonly roundId: string;
  readonly seed: number;
  readonly seconds: number | null;
  readonly iterations: number | null;
  readonly dates: readonly string[] | null;
  readonly today?: string;
  readonly plannedDays?: PlannedDays;
  readonly evenUsdPerHour: number;
  readonly base: PlanBase | null;
  readonly rest?: RestOfDay;
  readonly outages: readonly Outage[];
  readonly done: readonly DoneWork[];
  readonly fleetId?: string;
};

export type FitRequest = {
  readonly roundId: string;
  readonly problemHash: string;
  readonly dates: readonly string[];
  readonly evenUsdPerHour: number;
  readonly outages?: readonly Outage[] | undefined;
  readonly done?: readonly DoneWork[] | undefined;
};

/** The work that runs in the background, and whom its news go to. */
export type Jobs = {
  readonly startPlan: (session: Session, client: Client, request: PlanRequest) => string;
  /** Whether a plan with this fingerprint, for the days that it has or for all of them, is one of the book as it is now. */
  readonly fits: (session: Session, asked: FitRequest) => Promise<Result<{ readonly fits: boolean }>>;
  /** Figures of the passes over a property, by every head that may be asked about there. */
  readonly reckonPasses: (session: Session, propertyId: string) => Promise<Result<ReckonedPasses>>;
  /** The passes of a head over a zone, to be looked at. */
  readonly draw: (session: Session, wanted: readonly DrawRequest[]) => Promise<Result<PassDrawings>>;
  /** Questions about plans that are changed by hand. */
  readonly boards: Boards;
  /** Who can go to which lawn of a round; null without such round or treatment. */
  readonly whoCanGo: (session: Session, roundId: string, treatmentId: string) => Promise<Result<GoTable | null>>;
  readonly cancel: (jobId: string, client: Client) => Result<Done>;
  /** Cancels the jobs of a session, ends whatever else is reckoned for it, and waits until its plans are stored. */
  readonly endSession: (session: string) => Promise<void>;
  readonly endClient: (clientId: string) => Promise<void>;
  readonly endAll: () => Promise<void>;
};

/** Threads beyond these find little more; and with more lawns than this there is but one. */
const MOST_WORKERS = 8;
const MOST_LAWNS_ALONE = 6000;

type RunningJob = {
  readonly jobId: string;
  readonly session: Session;
  readonly client: Client;
  readonly job: PlanJob;
  readonly finished: Promise<void>;
};
type JobTools = {
  readonly workerFile: string;
  /** Drive times by road of a book: every problem is built with them, whatever it is for. */
  readonly drivesFor: (at: BookAt) => Promise<DriveTable | undefined>;
  readonly now: () => Date;
  readonly log: Log;
};

/** The work in the background of all open books; threads are started when they are needed. */
export function createJobs({ workerFile, drivesFor, now, log }: JobTools): Jobs {
  const running = new Map<string, RunningJob>();
  const drivesOf = ({ entry }: Session): Promise<DriveTable | undefined> =>
    drivesFor({ file: entry.store.file, book: entry.book() });
  const boards = createBoards({ workerFile, drivesOf, now, log });
  const errands = new Map<Errand<unknown>, Session>();
  const run = async <T>(session: Session, errand: Errand<T>): Promise<Result<T>> => {
    errands.set(errand, session);
    const result = await errand.answer;
    errands.delete(errand);
    return result;
  };

  const startPlan: Jobs['startPlan'] = (session, client, request) => {
    const jobId = randomBytes(12).toString('base64url');
    const keptAs = nameOf(request);
    const about = { jobId, session: session.session, roundId: keptAs };
    const revision = session.entry.revision();
    const startedMs = performance.now();
    const { fleetId, ...wish } = request;
    const own = session.entry.book();
    const whole = fleetId === undefined ? own : bookOfFleet(own, request.roundId, fleetId);
    const book = bookOfRound(whole, request.roundId);
    const workers = workersFor(lawnsListed(book, request.roundId));
    const onProgress = (progress: Progress): void => client.send('job.progress', { ...about, ...progress });
    const job = startLater(drivesOf(session), (roads) =>
      startPlanning(workerFile, { book, ...wish, roads, workers }, onProgress),
    );
    const finish = async (outcome: Result<PlanOutcome>): Promise<void> => {
      const elapsedMs = Math.round(performance.now() - startedMs);
      const told = outcome.ok ? await keep(outcome.value) : outcome;
      running.delete(jobId);
      if (told.ok) client.send('job.done', { ...about, ...told.value, elapsedMs, revision });
      else client.send('job.failed', { ...about, error: told.error });
      log(told.ok ? 'info' : 'warn', 'job', 'ended', { jobId, elapsedMs, code: told.ok ? 'done' : told.error.code });
    };
    const keep = async ({ plan, cancelled }: PlanOutcome) => {
      const savedAt = now().toISOString();
      const stored = await session.entry.keepPlan({ roundId: keptAs, savedAt, plan });
      // A plan that cannot be stored (a read-only book) is still shown.
      return stored.ok || stored.error.code === 'book-read-only' ? ok({ plan, cancelled, savedAt }) : stored;
    };
    running.set(jobId, { jobId, session, client, job, finished: job.outcome.then(finish) });
    return jobId;
  };

  const endThose = async (which: (session: Session) => boolean): Promise<void> => {
    for (const [errand, session] of errands) if (which(session)) errand.end();
    await boards.end(which);
    const chosen = [...running.values()].filter((each) => which(each.session));
    for (const { job } of chosen) job.cancel();
    await Promise.all(chosen.map(({ finished }) => finished));
  };
  return {
    startPlan,
    fits: async (session, { roundId, problemHash, dates, evenUsdPerHour, outages = [], done = [] }) => {
      const choices = dates.length === 0 ? [null] : [null, dates];
      const book = bookOfRound(session.entry.book(), roundId);
      const roads = await drivesOf(session);
      const wish = { book, roundId, dates: choices, evenUsdPerHour, outages, done, roads, hash: problemHash };
      return run(session, startReckoning(workerFile, wish));
    },
    reckonPasses: (session, propertyId) => run(session, reckonPasses(workerFile, session.entry.book(), propertyId)),
    draw: (session, wanted) => run(session, drawPasses(workerFile, session.entry.book(), wanted)),
    boards,
    whoCanGo: (session, roundId, treatmentId) =>
      run(
        session,
        tellWhoCanGo(workerFile, { book: bookOfRound(session.entry.book(), roundId), roundId, treatmentId }),
      ),
    cancel: (jobId, client) => {
      const found = running.get(jobId);
      if (found === undefined || found.client.id !== client.id) return unknownJob();
      found.job.cancel();
      return ok({ done: true });
    },
    endSession: (session) => endThose((each) => each.session === session),
    endClient: (clientId) => endThose((each) => each.clientId === clientId),
    endAll: () => endThose(() => true),
  };
}

/** The rest of a day, and what another fleet makes of a round, are kept and told of beside the plan of the round. */
function nameOf({ roundId, rest, fleetId }: PlanRequest): string {
  if (rest !== undefined) return restName(roundId, rest.date);
  return fleetId === undefined ? roundId : fleetPlanName(roundId, fleetId);
}

/** One core is left to the screen; each thread holds the whole table of travel, which grows with the square of the lawns. */
function workersFor(lawns: number): number {
  const byMemory = Math.max(1, Math.floor((MOST_LAWNS_ALONE / Math.max(1, lawns)) ** 2));
  return Math.max(1, Math.min(MOST_WORKERS, availableParallelism() - 1, byMemory));
}

function unknownJob(): Result<never> {
  return err('job-unknown', 'job', 'There is no such job any more.', 'It has probably just ended; look at its result.');
}
