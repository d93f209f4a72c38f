import { stat } from 'node:fs/promises';
import path from 'node:path';
import { readStartArguments, START_USAGE, type StartWishes } from './arguments.ts';
import { hasDisplay } from './electron-program.ts';
import { openInBrowser, runLoopback } from './loopback/index.ts';

const say = (line: string): void => {
  process.stdout.write(`${line}\n`);
};
const complain = (line: string): void => {
  process.stderr.write(`${line}\n`);
};

/** The wishes of the command line, or null after telling what is wrong with it (the exit code is then set). */
export async function wishesOrWords(words: readonly string[]): Promise<StartWishes | null> {
  const reading = readStartArguments(words);
  if (reading.kind === 'help') {
    say(START_USAGE);
    return null;
  }
  if (reading.kind === 'wrong') {
    complain(`${reading.words}\n\n${START_USAGE}`);
    process.exitCode = 2;
    return null;
  }
  const { open } = reading.wishes;
  if (open.kind === 'file' && (await stat(open.file).catch(() => null)) === null) {
    complain(
      `${path.basename(open.file)} is not in ${path.dirname(path.resolve(open.file))}. Check the name and the folder.`,
    );
    process.exitCode = 1;
    return null;
  }
  return reading.wishes;
}

/** Serves the program to the browser until it is ended (Ctrl-C). */
export async function startInBrowser(bundleFolder: string, words: readonly string[]): Promise<void> {
  const wishes = await wishesOrWords(words);
  if (wishes !== null) await serve(bundleFolder, wishes);
}

export async function serve(bundleFolder: string, wishes: StartWishes): Promise<void> {
  try {
    const { address, openingAddress, close } = await runLoopback(bundleFolder, wishes);
    endWithSignals(close);
    say(`Swardway is at ${address}`);
    say('Only this machine and only this address can reach it. Press Ctrl-C to end.');
    if (wishes.openBrowser && hasDisplay()) openInBrowser(openingAddress);
  } catch (error) {
    complain(whyNot(error, wishes.port));
    process.exitCode = 1;
  }
}

function whyNot(error: unknown, port: number): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code === 'EADDRINUSE')
    return `Port ${port} is taken by another program. Choose another one, or leave --port out.`;
  if (code === 'EACCES') return `Port ${port} may not be used. Choose one above 1023, or leave --port out.`;
  return `Swardway could not start: ${error instanceof Error ? error.message : String(error)}`;
}

/** Ends cleanly at the first Ctrl-C, at once at the second. */
function endWithSignals(close: () => Promise<void>): void {
  let ending = false;
  const end = (): void => {
    if (ending) process.exit(130);
    ending = true;
    close().then(
      () => process.exit(0),
      () => process.exit(1),
    );
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, end);
}
