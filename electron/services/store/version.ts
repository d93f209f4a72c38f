import sqlite3 from 'sqlite3';

/** Version of the SQLite library inside the driver. */
export const sqliteVersion = (): string => sqlite3.VERSION;
