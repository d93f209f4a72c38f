import type * as Files from 'node:fs/promises';
import path from 'node:path';

/**
 * A disk that fails at the step that a test names. A test file puts it between the program and the system:
 *
 *     vi.mock('node:fs/promises', async (original) => {
 *       const { failingDisk } = await import('…/failing-disk.ts');
 *       return failingDisk(await original());
 *     });
 *
 * Each step of writing is counted: opening a file to be written, writing, flushing a file or a folder, renaming, copying, linking, making a
 * folder. What SQLite itself writes is not seen here.
 */
export const disk = {
  /** Steps since `begin`, by name. */
  steps: [] as string[],
  failAt: Number.POSITIVE_INFINITY,
  code: '',
  isDead: false,
  dies: false,
};

/**
 * Counts from now on.
 *
 * @param failAt the step that fails; absent, none does
 * @param how the system's code, or 'death': from that step on nothing reaches the disk any more, not even tidying up
 */
export function begin(failAt = Number.POSITIVE_INFINITY, how = ''): void {
  Object.assign(disk, { steps: [], failAt, code: how === 'death' ? 'EIO' : how, dies: how === 'death', isDead: false });
}

function step(name: string, file: string): void {
  const number = disk.steps.push(`${name} ${path.basename(file).replaceAll(/[0-9a-f]{12}/g, '*')}`) - 1;
  if (number === disk.failAt && disk.dies) disk.isDead = true;
  if (number === disk.failAt || disk.isDead) throw failure(name);
}

function failure(syscall: string): Error {
  return Object.assign(new Error(`${disk.code}: on purpose`), { code: disk.code, syscall });
}

/** The functions of node:fs/promises, those that write by way of the failing disk. */
export function failingDisk(real: typeof Files): typeof Files {
  const through =
    <Words extends readonly unknown[], Answer>(name: string, work: (...words: Words) => Promise<Answer>) =>
    async (...words: Words): Promise<Answer> => {
      step(name, String(words[1] ?? words[0]));
      return work(...words);
    };
  const changed = {
    open: async (file: string, flags: string = 'r', ...rest: never[]) => {
      const isWriting = flags !== 'r';
      if (isWriting) step('open', file);
      return watched(await real.open(file, flags, ...rest), file, isWriting);
    },
    rename: through('rename', real.rename),
    copyFile: through('copyfile', real.copyFile),
    link: through('link', real.link),
    mkdir: (file: string, ...rest: never[]) => {
      if (disk.isDead) return Promise.reject(failure('mkdir'));
      return real.mkdir(file, ...rest);
    },
    rm: (file: string, ...rest: never[]) => {
      if (disk.isDead) return Promise.reject(failure('rm'));
      return real.rm(file, ...rest);
    },
  };
  const all = { ...real, ...changed } as unknown as typeof Files;
  return { ...all, default: all } as unknown as typeof Files;
}

function watched(handle: Files.FileHandle, file: string, isWriting: boolean): Files.FileHandle {
  return new Proxy(handle, {
    get: (target, name) => {
      const part = Reflect.get(target, name) as unknown;
      if (typeof part !== 'function') return part;
      return async (...words: unknown[]) => {
        if (name === 'writeFile' && isWriting) {
          // Half of it gets there before the disk says no.
          const text = words[0] as string | Uint8Array;
          const fails = disk.steps.length === disk.failAt;
          if (fails) await target.writeFile(text.slice(0, Math.floor(text.length / 2)));
          step('write', file);
        }
        if (name === 'sync') step(isWriting ? 'fsync' : 'fsync folder', file);
        return (part as (...words: unknown[]) => unknown).apply(target, words);
      };
    },
  });
}
