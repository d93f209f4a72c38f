import os from 'node:os';
import path from 'node:path';
import { readLogEnd } from '../log/index.ts';
import { sqliteVersion } from '../store/index.ts';
import type { Context } from './context.ts';

/** How much of the log goes along. */
const LOG_LINES = 60;

/**
 * What somebody who looks into a fault needs, as plain text that the user reads and hands on by himself: versions, the machine's size, how
 * large the open books are, and the end of the log. No name, address, coordinate, file name or path is in it.
 */
export async function diagnostics(context: Context): Promise<string> {
  const { library, settings, port, version, now } = context;
  const mebibytes = (bytes: number): string => `${Math.round(bytes / 1024 / 1024)} MiB`;
  const { units, network } = await settings.read();
  const books = [...new Set(library.sessions().map(({ entry }) => entry))].map((entry) => {
    const { properties, rigs, rounds } = entry.book();
    const readOnly = entry.store.readOnlyBecause === null ? '' : ', read only';
    return `book: ${properties.length} properties, ${rigs.length} rigs, ${rounds.length} rounds, revision ${entry.revision()}${readOnly}`;
  });
  const lines = [
    `Swardway ${version}, ${port.host === 'window' ? 'in its own window' : 'in a browser'}`,
    `at ${now().toISOString()}`,
    `${process.platform} ${os.release()} ${process.arch}, Node ${process.versions.node}${electronWords()}, SQLite ${sqliteVersion()}`,
    `${os.cpus().length} processors, ${mebibytes(os.totalmem())} memory, ${mebibytes(process.memoryUsage().rss)} in use here`,
    `units ${units}, network ${network}`,
    ...books,
    '',
    `The last lines of the log (of at most ${LOG_LINES}):`,
    ...(await readLogEnd(path.join(context.dataFolder, 'log'), LOG_LINES)),
  ];
  return `${lines.join('\n')}\n`;
}

function electronWords(): string {
  const { electron } = process.versions;
  return electron === undefined ? '' : `, Electron ${electron}`;
}
