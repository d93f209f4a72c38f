import { mkdtemp, readdir, readFile, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect } from 'vitest';
import { createRandom } from '../../core/base/index.ts';
import { type Book, emptyBook } from '../../core/book/index.ts';
import type { StoredPlan } from '../../core/contract/index.ts';
import { judgePlan } from '../../core/plan/judge/index.ts';
import { createStoreFile, MIGRATIONS, openConnection, openStore } from '../../electron/services/store/index.ts';
import { migrate } from '../../electron/services/store/migrate.ts';
import { startChild } from '../electron/support/child.ts';
import { problemOf, smallBook } from '../support/samples.ts';
import { exportText, PARCEL } from './crash-program.ts';

export const WORKS = ['edit', 'draft', 'import', 'migrate', 'backup', 'export', 'restore', 'plan'] as const;
export type Work = (typeof WORKS)[number];

/** What the rounds of one kind of work showed. */
export type Seen = {
  rounds: number;
  /** How often the kill fell into writing: a log or a half-written file was left behind. */
  inWriting: number;
  /** How many things were told to be done, in all. */
  told: number;
  /** The longest that the book took to open after a kill, ms. */
  longestMs: number;
};

/** After so many kills the work begins anew with an empty book: one that only grows would make each look at it slower. */
const ROUNDS_EACH = 25;

/** A kill falls up to this long after the work has begun. */
const LONGEST_MS = 120;

/** Kills the program again and again in one kind of work, and looks at what it left behind each time. */
export async function killRounds(
  program: string,
  planWorker: string,
  work: Work,
  rounds: number,
  seed: number,
): Promise<Seen> {
  const folder = await mkdtemp(path.join(tmpdir(), `swardway-crash-${work}-`));
  const random = createRandom(seed);
  const seen: Seen = { rounds, inWriting: 0, told: 0, longestMs: 0 };
  try {
    for (let round = 0; round < rounds; round += 1) {
      if (round % ROUNDS_EACH === 0) await prepare(folder, work);
      if (work === 'migrate') await oldBook(path.join(folder, 'book.swardway'));
      const child = startChild(process.execPath, [program, work, folder], {
        env: { ...process.env, PLAN_WORKER: planWorker },
      });
      await child.until(work === 'migrate' ? 'begins' : 'stored ');
      await wait(random.unit() * LONGEST_MS);
      child.process.kill('SIGKILL');
      expect((await child.ended).signal, `${work}, round ${round}: ${child.output()}`).toBe('SIGKILL');
      if (await wasWriting(folder)) seen.inWriting += 1;
      seen.told += await look(folder, work, child.output(), `${work}, seed ${seed}, round ${round}`, seen);
    }
    return seen;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** An empty folder with the books that the work begins with. */
async function prepare(folder: string, work: Work): Promise<void> {
  await emptied(folder);
  const must = async (name: string, book: Book): Promise<void> => {
    const made = await createStoreFile(path.join(folder, name), book);
    if (!made.ok) throw new Error(made.error.detail);
  };
  await must('book.swardway', work === 'plan' ? smallBook('residential-day') : emptyBook('book', 'Book'));
  if (work !== 'restore') return;
  await must('even.swardway', manyLawns('even', 400));
  await must('odd.swardway', manyLawns('odd', 700));
}

function manyLawns(name: string, count: number): Book {
  const lawn = (index: number) => ({
    id: `p${index}`,
    name: `Lot ${index}`,
    address: '',
    parking: [0, 0],
    zones: [],
    gates: [],
  });
  return { ...emptyBook(name, name), properties: Array.from({ length: count }, (_, index) => lawn(index)) as never };
}

async function emptied(folder: string): Promise<void> {
  for (const name of await readdir(folder)) await rm(path.join(folder, name), { recursive: true });
}

/** A book of the first version with something in it, in the place of the one before. */
async function oldBook(file: string): Promise<void> {
  const folder = path.dirname(file);
  await emptied(folder);
  const connection = await openConnection(file, 'create');
  await migrate(connection, MIGRATIONS.slice(0, 1));
  await connection.transaction(async () => {
    const { properties: _lawns, ...members } = JSON.parse(JSON.stringify(emptyBook('old', 'Old'))) as Record<
      string,
      unknown
    >;
    for (const [name, value] of Object.entries(members)) {
      if (Array.isArray(value)) continue;
      await connection.run('INSERT INTO member (name, json) VALUES (?, ?)', [name, JSON.stringify(value)]);
    }
  });
  await connection.close();
}

/** True where a log or a half-written file is left. Such a file is taken away, so that the next round does not count it again. */
async function wasWriting(folder: string): Promise<boolean> {
  const names = await readdir(folder, { recursive: true });
  const left = names.filter((name) => /-wal$|-journal$|\.new$/.test(name));
  const sizes = await Promise.all(
    left.map(async (name) => (await stat(path.join(folder, name)).catch(() => null))?.size ?? 0),
  );
  for (const name of left.filter((each) => each.endsWith('.new'))) await rm(path.join(folder, name), { force: true });
  return sizes.some((size) => size > 0);
}

/** Opens what is left, checks it against what was told, and says how much was told. */
async function look(folder: string, work: Work, output: string, label: string, seen: Seen): Promise<number> {
  const told = Math.max(0, ...[...output.matchAll(/^stored (\d+)\n/gm)].map((match) => Number(match[1])));
  if (work === 'export') {
    const text = await readFile(path.join(folder, 'out.txt'), 'utf8');
    const number = Number(text.slice(0, text.indexOf('\n')));
    expect(text === exportText(number), `${label}: a torn file`).toBe(true);
    expect(number, label).toBeGreaterThanOrEqual(told);
    return told;
  }
  const file = path.join(folder, 'book.swardway');
  const { book, revision, draft, plans } = await reopen(file, label, seen);
  if (work === 'edit' || work === 'backup') checkEdits(book, revision, 1, told, label);
  if (work === 'import') checkEdits(book, revision, PARCEL, told, label);
  if (work === 'plan') checkPlan(book, revision, plans, output, label);
  if (work === 'migrate') expect(book.name, label).toBe('Old');
  if (work === 'restore')
    expect([`even 400`, 'odd 700', 'Book 0'], label).toContain(`${book.name} ${book.properties.length}`);
  if (work === 'draft') {
    const number = Number(draft?.slice(0, 9) ?? 0);
    if (draft !== null) expect(draft.endsWith(draft.slice(0, 9)), `${label}: a torn outline`).toBe(true);
    expect(number, label).toBeGreaterThanOrEqual(told);
  }
  if (work === 'backup') await checkBackups(path.join(folder, 'backups'), label);
  return work === 'migrate' ? Number(output.includes('opened')) : told;
}

async function reopen(file: string, label: string, seen: Seen) {
  const begin = performance.now();
  const open = await openStore(file);
  seen.longestMs = Math.max(seen.longestMs, performance.now() - begin);
  if (!open.ok) throw new Error(`${label}: ${open.error.code}, ${open.error.detail}`);
  const { stored } = open.value;
  await open.value.close();
  const connection = await openConnection(file, 'read');
  expect(await connection.all('PRAGMA integrity_check'), label).toEqual([{ integrity_check: 'ok' }]);
  expect(await connection.all('PRAGMA foreign_key_check'), label).toEqual([]);
  await connection.close();
  return stored;
}

/** Edit N sets the note to N and adds its lawns: all agree or an edit is half there. */
function checkEdits(book: Book, revision: number, lawnsEach: number, told: number, label: string): void {
  expect(revision, label).toBeGreaterThanOrEqual(told);
  expect(book.note, label).toBe(revision === 0 ? '' : String(revision));
  expect(book.properties, label).toHaveLength(revision * lawnsEach);
}

/** The edit that was told last is there, and so is the last plan that was told: whole, and one of this book. */
function checkPlan(book: Book, revision: number, plans: readonly StoredPlan[], output: string, label: string): void {
  const lastOf = (word: string): number =>
    Math.max(0, ...[...output.matchAll(new RegExp(`^${word} (\\d+)\n`, 'gm'))].map((match) => Number(match[1])));
  expect(revision, label).toBeGreaterThanOrEqual(lastOf('edited'));
  expect(book.note, label).toBe(`${revision}`);
  const [stored] = plans;
  if (stored === undefined) throw new Error(`${label}: the plan that was told is not there`);
  expect(stored.plan.seed, label).toBeGreaterThanOrEqual(lastOf('stored'));
  expect(judgePlan(problemOf(book), stored.plan).violations, label).toEqual([]);
}

/** Every backup that is listed is a whole book with as many edits as its name says. */
async function checkBackups(folder: string, label: string): Promise<void> {
  const names = (await readdir(folder, { recursive: true }).catch(() => [])).filter((name) =>
    /^[^.].*[/\\][^.].*\.swardway$/.test(name),
  );
  const [newest] = names.sort().reverse();
  if (newest === undefined) return;
  const connection = await openConnection(path.join(folder, newest), 'frozen');
  expect(await connection.all('PRAGMA integrity_check'), label).toEqual([{ integrity_check: 'ok' }]);
  const [count] = await connection.all('SELECT max(revision) AS last FROM edit');
  expect(path.basename(newest), label).toMatch(new RegExp(`-${count?.last}-${count?.last}\\.swardway$`));
  await connection.close();
}
