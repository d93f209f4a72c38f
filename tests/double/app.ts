import { EventEmitter } from 'node:events';
import { tmpdir } from 'node:os';
import type { WindowDouble } from './browser-window.ts';

/** The program as a whole: its start, its one instance, its end. */
export class AppDouble extends EventEmitter {
  readonly isPackaged = false;
  /** Resolves when the program has ended. */
  readonly ended: Promise<void>;
  readonly paths = new Map<string, string>([['temp', tmpdir()]]);
  sandboxed = false;
  #ready = false;
  #end: () => void = () => undefined;
  #ending = false;
  readonly #windows: Set<WindowDouble>;
  readonly #isFirst: boolean;

  constructor(windows: Set<WindowDouble>, isFirst: boolean) {
    super();
    this.#windows = windows;
    this.#isFirst = isFirst;
    this.ended = new Promise((done) => {
      this.#end = done;
    });
  }

  enableSandbox(): void {
    if (this.#ready) throw new Error('app.enableSandbox() can only be called before app is ready');
    this.sandboxed = true;
  }
  setPath(name: string, value: string): void {
    this.paths.set(name, value);
  }
  requestSingleInstanceLock(): boolean {
    return this.#isFirst;
  }
  isReady(): boolean {
    return this.#ready;
  }
  async whenReady(): Promise<void> {
    await new Promise((done) => setImmediate(done));
    this.#ready = true;
  }
  /** Closes the windows, asks whether it may end, and ends. */
  quit(): void {
    for (const window of [...this.#windows]) window.close();
    if (this.#windows.size > 0) return;
    let prevented = false;
    this.emit('will-quit', {
      preventDefault: () => {
        prevented = true;
      },
    });
    if (prevented) return;
    this.emit('quit');
    this.#end();
  }
  /** Called when a window has gone. */
  windowClosed(): void {
    if (this.#windows.size > 0 || this.#ending) return;
    this.#ending = true;
    queueMicrotask(() => {
      if (this.listenerCount('window-all-closed') > 0) this.emit('window-all-closed');
      else this.quit();
    });
  }
}
