import { parentPort, workerData } from 'node:worker_threads';
import type { Clock, StopSignal } from '../../../core/base/index.ts';
import { buildProblem } from '../../../core/plan/problem/index.ts';
import { explainPlan } from '../../../core/plan/result/index.ts';
import { solve, startFrom } from '../../../core/plan/search/index.ts';
import type { PlanMessage, PlanOrder } from './messages.ts';
import { throttleProgress } from './throttle.ts';

/** The worker thread that plans one round and ends. Started by startPlanJob in both hosts. */

const { wish: order, stopFlag } = workerData as PlanOrder;
const tell = (message: PlanMessage): void => parentPort?.postMessage(message);
const clock: Clock = { nowMs: () => performance.now() };
const flag = new Int32Array(stopFlag);
const signal: StopSignal = { stopped: () => Atomics.load(flag, 0) !== 0 };
const onProgress = throttleProgress((progress) => tell({ kind: 'progress', progress }), clock);

function run(): void {
  onProgress({ step: 'Reading the round', done: 0, total: 1, bestSoFar: '' });
  const problem = buildProblem(order.book, order.roundId, {
    ...(order.dates === null ? {} : { dates: order.dates }),
    evenUsdPerHour: order.evenUsdPerHour ?? 0,
  });
  if (!problem.ok) {
    tell({ kind: 'failed', error: problem.error });
    return;
  }
  const options = {
    seed: order.seed,
    ...(order.seconds === null ? {} : { seconds: order.seconds }),
    ...(order.iterations === null ? {} : { iterations: order.iterations }),
    ...(order.base == null ? {} : { start: startFrom(problem.value, order.base.plan, order.base) }),
  };
  const solution = solve(problem.value, options, { clock, signal, onProgress });
  const plan = explainPlan(order.book, problem.value, solution);
  tell({ kind: 'done', plan, cancelled: signal.stopped() });
}

run();
