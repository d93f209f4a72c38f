import sqlite3 from 'sqlite3';
import { createTurn } from '../files/index.ts';

/** A value that can be bound to a statement, or read from a row. */
export type Cell = string | number | Uint8Array | null;
export type Row = Readonly<Record<string, Cell>>;

/** A failure that SQLite reported, with its own code ("SQLITE_BUSY"). */
export class SqliteFailure extends Error {
  readonly code: string;
  constructor(code: string, message: string) {
    super(message);
    this.name = 'SqliteFailure';
    this.code = code;
  }
}

/** One connection to one file. Statements run in the order in which they are asked for. */
export type Connection = {
  readonly exec: (sql: string) => Promise<void>;
  readonly run: (sql: string, values?: readonly Cell[]) => Promise<void>;
  readonly all: (sql: string, values?: readonly Cell[]) => Promise<readonly Row[]>;
  /** Runs the work between BEGIN IMMEDIATE and COMMIT; rolls back when it throws. Transactions never overlap. */
  readonly transaction: <T>(work: () => Promise<T>) => Promise<T>;
  /** Runs work that must not fall into a transaction (a copy of the whole file), in the same queue. */
  readonly alone: <T>(work: () => Promise<T>) => Promise<T>;
  readonly close: () => Promise<void>;
};

export type OpenMode = 'create' | 'write' | 'read' | 'frozen';

/**
 * Opens a file. 'frozen' reads a file that nothing may write to, not even SQLite's own bookkeeping.
 * Rejects with SqliteFailure.
 */
export async function openConnection(file: string, mode: OpenMode): Promise<Connection> {
  const database = await openDatabase(file, mode);
  const exec = (sql: string) => new Promise<void>((done, fail) => database.exec(sql, settle(done, fail)));
  const run = (sql: string, values: readonly Cell[] = []) =>
    new Promise<void>((done, fail) => {
      database.run(sql, [...values], settle(done, fail));
    });
  const all = (sql: string, values: readonly Cell[] = []) =>
    new Promise<readonly Row[]>((done, fail) => {
      database.all(sql, [...values], (error: Error | null, rows: Row[]) => {
        if (error) fail(asFailure(error));
        else done(rows);
      });
    });
  // One writer queue: the next piece of work begins when the one before has ended.
  const alone = createTurn();
  return {
    exec,
    run,
    all,
    alone,
    transaction: (work) => alone(() => inTransaction(exec, work)),
    close: () => new Promise<void>((done, fail) => database.close(settle(done, fail))),
  };
}

function openDatabase(file: string, mode: OpenMode): Promise<sqlite3.Database> {
  const flags = {
    create: sqlite3.OPEN_READWRITE | sqlite3.OPEN_CREATE,
    write: sqlite3.OPEN_READWRITE,
    read: sqlite3.OPEN_READONLY,
    frozen: sqlite3.OPEN_READONLY | sqlite3.OPEN_URI,
  }[mode];
  const name =
    mode === 'frozen' ? `file:${encodeURI(file).replaceAll('?', '%3f').replaceAll('#', '%23')}?immutable=1` : file;
  return new Promise((done, fail) => {
    const database = new sqlite3.Database(name, flags | sqlite3.OPEN_FULLMUTEX, (error) => {
      if (error) fail(asFailure(error));
      else done(database);
    });
  });
}

async function inTransaction<T>(exec: (sql: string) => Promise<void>, work: () => Promise<T>): Promise<T> {
  await exec('BEGIN IMMEDIATE');
  try {
    const value = await work();
    await exec('COMMIT');
    return value;
  } catch (error) {
    // SQLite may have rolled back by itself (disk full); a second ROLLBACK then fails, which is fine.
    await exec('ROLLBACK').catch(() => undefined);
    throw error;
  }
}

function settle(done: () => void, fail: (error: SqliteFailure) => void): (error: Error | null) => void {
  return (error) => {
    if (error) fail(asFailure(error));
    else done();
  };
}

function asFailure(error: Error): SqliteFailure {
  const code = 'code' in error && typeof error.code === 'string' ? error.code : 'SQLITE_ERROR';
  return new SqliteFailure(code, error.message);
}
