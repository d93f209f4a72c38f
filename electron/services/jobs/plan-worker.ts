import { parentPort, workerData } from 'node:worker_threads';
import { type Clock, ok, type Progress, type Result, type StopSignal } from '../../../core/base/index.ts';
import { treatableGround } from '../../../core/measure/index.ts';
import { keepFigures, keptFigures, knownPassesWith, passPicture, zonePassesWith } from '../../../core/passes/index.ts';
import { improveFrom, whoCanGo } from '../../../core/plan/board/index.ts';
import { buildProblem } from '../../../core/plan/problem/index.ts';
import { explainPlan, optionsOfRest } from '../../../core/plan/result/index.ts';
import { solve, startFrom } from '../../../core/plan/search/index.ts';
import { askForAll } from './ask-for-all.ts';
import { sitAtBoard } from './board-worker.ts';
import { exchangeAt } from './exchange.ts';
import type {
  BoardOrder,
  DrawMessage,
  DrawOrder,
  FitMessage,
  FitOrder,
  PassesMessage,
  PassesOrder,
  PlanMessage,
  PlanOrder,
  ReckonMessage,
  ReckonOrder,
} from './messages.ts';
import { throttleProgress } from './throttle.ts';

/**
 * The worker thread that plans one round, or reckons its work alone, or the passes over one property, or lays passes over one zone, or
 * tells who can go where, and ends; or that stays and answers questions about plans of a round. Started by startPlanJob, startReckoning,
 * reckonPasses, drawPasses, tellWhoCanGo and createBoards.
 */

type Order = PlanOrder | ReckonOrder | DrawOrder | PassesOrder | BoardOrder | FitOrder;
const { stopFlag } = workerData as Order;
const tell = (message: PlanMessage | ReckonMessage): void => parentPort?.postMessage(message);
const clock: Clock = { nowMs: () => performance.now() };
const flag = new Int32Array(stopFlag);
let heeded = false;
const signal: StopSignal = {
  stopped: () => {
    const stopped = Atomics.load(flag, 0) !== 0;
    if (stopped && !heeded) {
      heeded = true;
      tell({ kind: 'stopping' });
    }
    return stopped;
  },
};
const onProgress = throttleProgress((progress) => tell({ kind: 'progress', progress }), clock);

/** Reckoning is told of only where it takes a while. milliseconds */
const TELL_AFTER_MS = 500;
const startedMs = clock.nowMs();
const onReckoning = (progress: Progress): void => {
  if (clock.nowMs() - startedMs > TELL_AFTER_MS) onProgress(progress);
};

function plan({ wish: order, seat }: PlanOrder): void {
  onProgress({ step: 'Reading the round', done: 0, total: 1, bestSoFar: '' });
  keepFigures(order.figures ?? []);
  const problem = buildProblem(order.book, order.roundId, {
    ...(order.dates === null ? {} : { dates: order.dates }),
    ...(order.today === undefined ? {} : { today: order.today }),
    ...optionsOfRest(order.rest),
    ...(order.plannedDays === undefined ? {} : { plannedDays: order.plannedDays }),
    evenUsdPerHour: order.evenUsdPerHour ?? 0,
    outages: order.outages ?? [],
    ...(order.roads === undefined ? {} : { roads: order.roads }),
    done: order.done ?? [],
    signal,
    // What was reckoned beforehand was told of then.
    ...(order.figures === undefined ? { onProgress: onReckoning } : {}),
  });
  if (!problem.ok) {
    tell({ kind: 'failed', error: problem.error });
    return;
  }
  tell({ kind: 'searching' });
  const improving = improveFrom(order.book, problem.value, order.base?.plan ?? null);
  const options = {
    seed: order.seed,
    ...(order.seconds === null ? {} : { seconds: order.seconds }),
    ...(order.iterations === null ? {} : { iterations: order.iterations }),
    ...(order.base == null ? {} : { start: startFrom(improving.problem, order.base.plan, order.base) }),
  };
  const exchange = seat === null ? {} : { exchange: exchangeAt(seat, signal.stopped) };
  const solution = improving.back(solve(improving.problem, options, { clock, signal, onProgress, ...exchange }));
  const told = improving.told(explainPlan(order.book, problem.value, solution));
  const whole = order.rest === undefined ? told : { ...told, rest: order.rest };
  tell({ kind: 'done', plan: whole, cancelled: signal.stopped() });
}

function reckon({
  reckon: { book, roundId, dates, evenUsdPerHour = 0, outages = [], done = [], roads, hash },
  figures,
}: ReckonOrder): void {
  keepFigures(figures);
  const known = new Set(figures.map(([key]) => key));
  let result: Result<{ readonly fits: boolean }> = ok({ fits: false });
  for (const choice of dates) {
    const days = { ...(choice === null ? {} : { dates: choice }), ...(roads === undefined ? {} : { roads }) };
    const asked = { ...days, evenUsdPerHour, outages, done };
    const built = buildProblem(book, roundId, { ...asked, signal, onProgress: onReckoning });
    result = built.ok ? ok({ fits: built.value.hash === hash }) : built;
    if (signal.stopped() || (result.ok && result.value.fits)) break;
  }
  tell({ kind: 'reckoned', result, figures: keptFigures().filter(([key]) => !known.has(key)) });
}

function draw({ draw: wishes }: DrawOrder): void {
  const drawings = wishes.map(({ property, zoneId, head, options, slopeDeg, where }) =>
    passPicture(treatableGround(property, zoneId), head, options, slopeDeg, where),
  );
  const message: DrawMessage = { drawings };
  parentPort?.postMessage(message);
}

function reckonPasses({ passesOf, figures }: PassesOrder): void {
  keepFigures(figures);
  askForAll(passesOf, zonePassesWith(treatableGround));
  const known = knownPassesWith(treatableGround);
  askForAll(passesOf, known.passes);
  const message: PassesMessage = { figures: known.asked() };
  parentPort?.postMessage(message);
}

function tellWhoGoes({ fit: { book, roundId, treatmentId }, figures }: FitOrder): void {
  keepFigures(figures);
  const message: FitMessage = { table: whoCanGo(book, roundId, treatmentId) };
  parentPort?.postMessage(message);
}

const order = workerData as Order;
if ('passesOf' in order) reckonPasses(order);
else if ('draw' in order) draw(order);
else if ('board' in order) sitAtBoard(order, signal);
else if ('fit' in order) tellWhoGoes(order);
else if ('reckon' in order) reckon(order);
else plan(order);
