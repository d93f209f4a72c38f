import { type ChildProcess, type SpawnOptions, spawn } from 'node:child_process';

/** A program that runs beside the test, with what it printed so far. */
export type Child = {
  readonly process: ChildProcess;
  readonly output: () => string;
  /** Resolves once the output holds the text; rejects when the program ends before. */
  readonly until: (text: string) => Promise<void>;
  readonly ended: Promise<{ readonly code: number | null; readonly signal: NodeJS.Signals | null }>;
};

export function startChild(command: string, words: readonly string[], options: SpawnOptions = {}): Child {
  const process = spawn(command, [...words], { ...options, stdio: ['ignore', 'pipe', 'pipe'] });
  let output = '';
  const watchers = new Set<() => void>();
  const take = (bytes: Buffer): void => {
    output += bytes.toString();
    for (const watch of watchers) watch();
  };
  process.stdout?.on('data', take);
  process.stderr?.on('data', take);
  const ended = new Promise<{ code: number | null; signal: NodeJS.Signals | null }>((done, fail) => {
    process.on('error', fail);
    process.on('close', (code, signal) => done({ code, signal }));
  });
  const until = (text: string): Promise<void> =>
    new Promise((done, fail) => {
      const watch = (): void => {
        if (!output.includes(text)) return;
        watchers.delete(watch);
        done();
      };
      watchers.add(watch);
      watch();
      ended.then(
        () => fail(new Error(`the program ended without printing "${text}":\n${output}`)),
        (error) => fail(error),
      );
    });
  return { process, output: () => output, until, ended };
}
