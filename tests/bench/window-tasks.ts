import type { CDPSession, Page } from 'playwright-core';

/** What a gesture cost the thread that draws. */
export type Spent = {
  readonly gesture: string;
  /** Its longest single task: processor time, and by the clock, ms. */
  readonly longestMs: number;
  readonly longestWallMs: number;
  /** All its tasks together, processor time, ms. */
  readonly sumMs: number;
};

type TraceEvent = {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
};

const CATEGORIES = ['__metadata', 'disabled-by-default-devtools.timeline', 'toplevel'];
/** How long the window is watched after a gesture at least, and how long it has to be at rest before that ends, ms. */
const WATCH_MS = 700;

/**
 * Does something and reads from Chromium's own trace how long the tasks of the page's main thread were. Processor time counts only what
 * the thread itself spent, so that other work on the machine does not make a task long.
 */
export async function tasksOf(page: Page, gesture: string, act: () => Promise<void>): Promise<Spent> {
  const session = await page.context().newCDPSession(page);
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await session.send('Tracing.start', {
    traceConfig: { includedCategories: CATEGORIES, recordMode: 'recordAsMuchAsPossible' },
  });
  await act();
  await page.waitForTimeout(WATCH_MS);
  await ended(session);
  await session.detach();
  const main = mainThreads(events);
  const tasks = events.filter(
    (each) => each.name === 'RunTask' && each.ph === 'X' && main.has(`${each.pid} ${each.tid}`),
  );
  const longest = tasks.reduce<TraceEvent | null>(
    (found, each) => ((each.tdur ?? 0) > (found?.tdur ?? -1) ? each : found),
    null,
  );
  return {
    gesture,
    longestMs: (longest?.tdur ?? 0) / 1000,
    longestWallMs: Math.max(0, ...tasks.map((each) => (each.dur ?? 0) / 1000)),
    sumMs: tasks.reduce((sum, each) => sum + (each.tdur ?? 0) / 1000, 0),
  };
}

async function ended(session: CDPSession): Promise<void> {
  const complete = new Promise<void>((done) => session.once('Tracing.tracingComplete', () => done()));
  await session.send('Tracing.end');
  await complete;
}

function mainThreads(events: readonly TraceEvent[]): ReadonlySet<string> {
  const named = events.filter((each) => each.name === 'thread_name' && each.args?.name === 'CrRendererMain');
  return new Set(named.map((each) => `${each.pid} ${each.tid}`));
}
