import type { World } from './command.ts';
import { faultLine, runLine } from './run.ts';

/** The command line: one run of one command, then the end. */

const FAULT = 70;

/** Writes and waits until it is out, so that a pipe gets all of it. A reader that has gone away is no fault. */
function write(stream: NodeJS.WriteStream, text: string): Promise<void> {
  return new Promise((done) => {
    if (text === '') done();
    else stream.write(text.endsWith('\n') ? text : `${text}\n`, () => done());
  });
}

function endInFault(cause: unknown): void {
  process.stderr.write(`${faultLine(cause)}\n`, () => process.exit(FAULT));
}

const world: World = {
  bundleFolder: __dirname,
  tell: (line) => void process.stderr.write(`${line}\n`),
  onInterrupt: (stop) => {
    process.once('SIGINT', stop);
    return () => void process.off('SIGINT', stop);
  },
};

async function main(): Promise<void> {
  const outcome = await runLine(process.argv.slice(2), world);
  process.exitCode = outcome.code;
  await write(process.stderr, outcome.remarks.join('\n'));
  await write(process.stdout, outcome.out);
}

for (const stream of [process.stdout, process.stderr]) stream.on('error', () => process.exit());
process.on('uncaughtException', endInFault);
process.on('unhandledRejection', endInFault);
main().catch(endInFault);
