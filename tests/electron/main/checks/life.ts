import { readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect } from 'vitest';
import type { JobDone, JobProgress } from '../../../../core/contract/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { openStore } from '../../../../electron/services/store/index.ts';
import { problemOf, sampleText } from '../../../support/samples.ts';
import type { DesktopShell } from '../shell.ts';
import type { Check } from './check.ts';

/** Starts the shell with words of the command line, always on the same folder of its own files. */
export type Lives = {
  readonly home: string;
  readonly start: (words?: readonly string[]) => Promise<DesktopShell>;
};

/** What shows only from a start to an end of the shell, or beyond, through Electron's public functions alone. */
export const LIFE_CHECKS: readonly Check<Lives>[] = [
  { name: 'an edit told as saved, and the place of the window, outlast the end', points: [], run: outlasts },
  { name: 'a plan is made with progress, in a worker, and the judge accepts it', points: [], run: plans },
  { name: 'a page that is loaded anew is a new screen', points: [], run: reloads },
  { name: 'a book named on the command line is opened', points: [], run: opensNamed },
];

/** Runs the work in a window and ends the program properly. */
export async function inWindow<Shell extends Pick<DesktopShell, 'close' | 'abandon'>>(
  starting: Promise<Shell>,
  work: (shell: Shell) => Promise<void>,
): Promise<void> {
  const shell = await starting;
  try {
    await work(shell);
  } catch (error) {
    await shell.abandon();
    throw error;
  }
  await shell.close();
}

async function outlasts({ home, start }: Lives): Promise<void> {
  const placeFile = path.join(home, 'window.json');
  const bounds = (shell: DesktopShell) =>
    shell.inMain(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getNormalBounds(), null);
  const wanted = { x: 200, y: 100, width: 1000, height: 700 };
  await writeFile(placeFile, JSON.stringify({ ...wanted, x: 50_000, maximized: false }));
  const sample = { sampleId: 'mixed-day' };
  await inWindow(start(), async (shell) => {
    expect((await bounds(shell))?.x, 'a place where no screen is').toBeLessThan(50_000);
    const { session } = await shell.must('book.openSample', sample);
    const action = { kind: 'set', changes: { name: 'Kept over the end' } } as const;
    expect(await shell.must('book.apply', { session, action, baseRevision: 0 })).toMatchObject({ revision: 1 });
    await shell.inMain(({ BrowserWindow }, place) => BrowserWindow.getAllWindows()[0]?.setBounds(place), wanted);
  });
  // No log beside the file: the book was closed, not dropped.
  const left = (await readdir(path.join(home, 'samples'))).filter((name) => name.startsWith('mixed-day'));
  expect(left, 'files of a book that was closed').toEqual(['mixed-day.swardway']);
  const store = await openStore(path.join(home, 'samples/mixed-day.swardway'));
  expect(store.ok && store.value.stored.book.name).toBe('Kept over the end');
  if (store.ok) await store.value.close();
  expect(JSON.parse(await readFile(placeFile, 'utf8')), 'the place of the window').toMatchObject(wanted);
  await inWindow(start(), async (shell) => {
    expect(await bounds(shell), 'the place of the window').toEqual(wanted);
    expect((await shell.must('book.openSample', sample)).book.name).toBe('Kept over the end');
  });
}

async function plans({ start }: Lives): Promise<void> {
  await inWindow(start(), async ({ must, listen, heard }) => {
    await listen(['job.progress', 'job.done', 'job.failed']);
    const { session, book } = await must('book.openSample', { sampleId: 'residential-day' });
    const request = { session, roundId: book.rounds[0]?.id ?? '', seed: 1, seconds: 1 };
    const { jobId } = await must('job.startPlan', request);
    const last = async () => (await heard()).findLast(({ name }) => name !== 'job.progress');
    await expect.poll(last, { timeout: 40_000, message: 'the plan ends' }).toBeDefined();
    const end = await last();
    if (end?.name !== 'job.done') throw new Error(JSON.stringify(end?.values));
    const done = end.values[0] as JobDone;
    expect(done).toMatchObject({ jobId, session, cancelled: false });
    expect(judgePlan(problemOf(book), done.plan).violations).toEqual([]);
    const progress = (await heard()).filter(({ name }) => name === 'job.progress');
    expect(progress.length, 'how often progress was told').toBeGreaterThan(2);
    expect(progress.every(({ values }) => (values[0] as JobProgress).jobId === jobId)).toBe(true);
  });
}

async function reloads({ start }: Lives): Promise<void> {
  await inWindow(start(), async ({ must, call, page }) => {
    const { session } = await must('book.openSample', { sampleId: 'mixed-day' });
    await page.reload();
    expect(await call('book.read', { session }), 'a session of the page before').toMatchObject({
      error: { code: 'not-allowed' },
    });
    expect(await must('book.openSample', { sampleId: 'mixed-day' })).toMatchObject({ revision: 0 });
  });
}

async function opensNamed({ home, start }: Lives): Promise<void> {
  const json = path.join(home, 'mixed.json');
  await writeFile(json, sampleText('mixed-day'));
  await inWindow(start([json]), async ({ must }) => {
    const { openAtStart } = await must('app.info', {});
    if (openAtStart?.kind !== 'file') throw new Error('a file was named on the command line');
    expect((await must('book.open', { token: openAtStart.token })).book.properties.length).toBeGreaterThan(0);
  });
}
