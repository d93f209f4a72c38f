import Module, { createRequire } from 'node:module';
import path from 'node:path';
import type { Browser, BrowserContext } from 'playwright-core';
import { AppDouble } from './app.ts';
import { WindowDouble, type WindowOptions } from './browser-window.ts';
import { DialogDouble, IpcDouble, MenuDouble, ProtocolDouble, SCREEN, SessionDouble } from './modules.ts';
import type { Shell } from './shell.ts';
import { strict } from './strict.ts';
import { type Trouble, watchTrouble } from './trouble.ts';
import type { WebContentsDouble } from './web-contents.ts';

export { toChromium, toProgram } from './addresses.ts';
export type { WindowDouble } from './browser-window.ts';
export type { WebContentsDouble } from './web-contents.ts';

/**
 * Stands in for Electron where its program file is not to be had: runs the shipped main and preload files, each window a page of
 * Chromium. What it lacks throws. It cannot show what only Electron can: real windows, native menus and dialogs, the system's
 * sandbox, the scheme's own origin, the driver inside Electron's own Node.
 */
export type ElectronDouble = {
  /** What the program gets as the module 'electron'. */
  readonly module: object;
  readonly app: AppDouble;
  readonly dialog: DialogDouble;
  readonly ipcMain: IpcDouble;
  readonly menu: MenuDouble;
  readonly protocol: ProtocolDouble;
  readonly session: SessionDouble;
  readonly windows: ReadonlySet<WindowDouble>;
  /** With what each window was made, of those that are gone as well. */
  readonly madeWindows: readonly WindowOptions[];
  /** The first window that is shown, once its page is loaded. */
  readonly firstWindow: () => Promise<WindowDouble>;
  readonly within: Trouble['within'];
  /** Ends the program as the user would; fails when anything went wrong unnoticed. */
  readonly close: () => Promise<void>;
  /** Ends what is left, whatever went wrong; the errors are returned. */
  readonly abandon: () => Promise<readonly Error[]>;
};

export type DoubleOptions = {
  /** The main file: CommonJS, as shipped. */
  readonly main: string;
  /** Stays open; each double has a context of its own in it, or the one that is given, which is closed with the double. */
  readonly browser: Browser | BrowserContext;
  /** Words of the command line after the program. */
  readonly words?: readonly string[];
  readonly environment?: Readonly<Record<string, string>>;
  /** False when another instance of the program runs already. */
  readonly isFirst?: boolean;
};

type Loader = { _load: (request: string, parent: unknown, isMain: boolean) => unknown };

export async function startDouble(options: DoubleOptions): Promise<ElectronDouble> {
  const trouble = watchTrouble();
  const { browser } = options;
  const context = 'newContext' in browser ? await browser.newContext() : browser;
  try {
    return await runMain(options, context, trouble);
  } catch (error) {
    await context.close();
    trouble.stop();
    throw error;
  }
}

async function runMain(options: DoubleOptions, context: BrowserContext, trouble: Trouble): Promise<ElectronDouble> {
  const windows = new Set<WindowDouble>();
  const madeWindows: WindowOptions[] = [];
  const app = new AppDouble(windows, options.isFirst ?? true);
  const ipcMain = new IpcDouble();
  const protocol = new ProtocolDouble(app);
  const session = new SessionDouble();
  const dialog = new DialogDouble();
  const menu = new MenuDouble();
  let ended = false;
  const shell: Shell = {
    hasEnded: () => ended,
    context,
    trouble,
    schemes: () => [...protocol.declared.keys()],
    allows: (permission) => session.permissionCheck?.(null, permission) ?? true,
    cancels: (address, resourceType) => session.cancels(address, resourceType),
    respond: async (address, method) => {
      const handler = protocol.handlers.get(new URL(address).protocol.slice(0, -1));
      return handler === undefined ? null : handler(new Request(address, { method }));
    },
    invoke: async (channel, event, values) => {
      ipcMain.calls.push({ channel, values });
      const handler = ipcMain.handlers.get(channel);
      if (handler === undefined) throw new Error(`No handler registered for '${channel}'`);
      return handler(event, ...values);
    },
  };
  const electron = strict('electron', {
    app: strict('app', app),
    BrowserWindow: windowClass(shell, app, windows, madeWindows),
    dialog: strict('dialog', dialog),
    ipcMain: strict('ipcMain', ipcMain),
    Menu: strict('Menu', menu),
    protocol: strict('protocol', protocol),
    screen: strict('screen', { getAllDisplays: () => [{ workArea: SCREEN }] }),
    session: strict('session', { defaultSession: strict('session', session) }),
  });
  const restore = loadMain(options, electron);
  const end = async (): Promise<void> => {
    ended = true;
    await context.close();
    restore();
    trouble.stop();
  };
  return {
    module: electron,
    app,
    dialog,
    ipcMain,
    menu,
    protocol,
    session,
    windows,
    madeWindows,
    within: trouble.within,
    firstWindow: () => trouble.within(waitForWindow(windows)),
    close: async () => {
      try {
        app.quit();
        await trouble.within(app.ended);
      } finally {
        await end();
      }
      const [first] = trouble.take();
      if (first !== undefined) throw first;
    },
    abandon: async () => {
      await end();
      return trouble.take();
    },
  };
}

/** The class that the program makes its windows with. */
function windowClass(shell: Shell, app: AppDouble, windows: Set<WindowDouble>, made: WindowOptions[]): object {
  const announce = (contents: WebContentsDouble) => app.emit('web-contents-created', {}, contents);
  class BrowserWindow extends WindowDouble {
    constructor(options: WindowOptions) {
      super(shell, windows, options, announce);
      made.push(options);
      this.once('closed', () => app.windowClosed());
      // biome-ignore lint/correctness/noConstructorReturn: the program gets the strict form of its window.
      return this.double as this;
    }
    static getAllWindows(): readonly WindowDouble[] {
      return [...windows].map((window) => window.double);
    }
    static fromWebContents(contents: WebContentsDouble): WindowDouble | null {
      return [...windows].find((window) => window.webContents === contents)?.double ?? null;
    }
  }
  return strict('BrowserWindow', BrowserWindow);
}

/** Runs the main file with 'electron' standing for the double. Returns what puts everything back. */
function loadMain({ main, words = [], environment = {} }: DoubleOptions, electron: object): () => void {
  const loader = Module as unknown as Loader;
  const load = loader._load;
  const { argv } = process;
  const before = Object.keys(environment).map((name) => [name, process.env[name]] as const);
  const require = createRequire(main);
  const restore = (): void => {
    loader._load = load;
    process.argv = argv;
    for (const [name, value] of before) {
      if (value === undefined) delete process.env[name];
      else process.env[name] = value;
    }
    delete require.cache[main];
  };
  loader._load = (request, parent, isMain) => (request === 'electron' ? electron : load(request, parent, isMain));
  process.argv = ['electron', path.dirname(main), ...words];
  Object.assign(process.env, environment);
  try {
    delete require.cache[main];
    require(main);
  } catch (error) {
    restore();
    throw error;
  }
  return restore;
}

/** A window is shown as soon as its page is ready; one that is still hidden so long after is a fault of the program. */
const SHOWN_WITHIN_MS = 1000;

async function waitForWindow(windows: ReadonlySet<WindowDouble>): Promise<WindowDouble> {
  let readySince: number | null = null;
  for (;;) {
    const loaded = [...windows].filter((window) => window.isReady());
    const shown = loaded.find((window) => window.isVisible());
    if (shown !== undefined) return shown;
    if (loaded.length === 0) readySince = null;
    else readySince ??= performance.now();
    if (readySince !== null && performance.now() - readySince > SHOWN_WITHIN_MS) throw new Error('no window was shown');
    await new Promise((done) => setTimeout(done, 20));
  }
}
