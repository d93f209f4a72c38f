import { mkdir, readFile, stat } from 'node:fs/promises';
import { gunzipSync } from 'node:zlib';
import { emptyBook, readBook } from '../../core/book/index.ts';
import { readPlan } from '../../core/plan/result/index.ts';
import { MIGRATIONS, openConnection } from '../../electron/services/store/index.ts';
import { migrate } from '../../electron/services/store/migrate.ts';
import { changesBetween, writeChanges } from '../../electron/services/store/records.ts';

/**
 * Writes tests/fixtures/books/version-N.swardway for every version of the file that has none yet: a small invented book as a program of that
 * version leaves it. One that is there is never written again, since later programs must read what earlier ones wrote:
 *
 *     node electron/tools/run.mjs tests/support/write-old-book.ts
 */
const FOLDER = 'tests/fixtures/books';
const PLAN = 'tests/fixtures/plans/residential-day.plan.json.gz';
const AT = '2026-03-01T12:00:00.000Z';

async function writeVersion(version: number): Promise<void> {
  const file = `${FOLDER}/version-${version}.swardway`;
  if ((await stat(file).catch(() => null)) !== null) return;
  const sample = readBook(await readFile('sample-routes/residential-day.json', 'utf8'), 'sample');
  const found = readPlan(gunzipSync(await readFile(PLAN)).toString('utf8'), 'plan');
  if (!sample.ok || !found.ok) throw new Error('the sample cannot be read');
  const book = {
    ...emptyBook('stored', 'Stored book'),
    note: 'three',
    properties: sample.value.book.properties.slice(0, 2),
  };
  const connection = await openConnection(file, 'create');
  await connection.exec('PRAGMA journal_mode = WAL');
  await migrate(connection, MIGRATIONS.slice(0, version));
  await connection.transaction(async () => {
    await writeChanges(connection, changesBetween(null, book));
    const inverse = JSON.stringify({ kind: 'set', changes: { note: '' } });
    const action = JSON.stringify({ kind: 'set', changes: { note: 'three' } });
    await connection.run('INSERT INTO edit VALUES (3, ?, ?, ?, ?)', [AT, 'Note', action, inverse]);
    const plan = { ...found.value, days: [], unplaced: [] };
    const words = ['r1', AT, plan.problemHash, JSON.stringify(plan)];
    await connection.run('INSERT INTO plan (round_id, saved_at, problem_hash, json) VALUES (?, ?, ?, ?)', words);
    if (version >= 2) await connection.run('INSERT INTO draft VALUES (1, ?, ?)', [AT, '{"corners":[]}']);
    if (version >= 3)
      await connection.run('INSERT INTO picture VALUES (?, ?, ?)', ['a1', 'image/png', Uint8Array.of(1, 2, 3)]);
  });
  await connection.exec('PRAGMA wal_checkpoint(TRUNCATE)');
  await connection.close();
}

await mkdir(FOLDER, { recursive: true });
for (const version of MIGRATIONS.keys()) await writeVersion(version + 1);
