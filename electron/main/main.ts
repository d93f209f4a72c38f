import path from 'node:path';
import { app, BrowserWindow, session } from 'electron';
import { readStartArguments, type StartOpen, type StartReading } from '../arguments.ts';
import { PROGRAM_VERSION, programPlaces } from '../program.ts';
import { createServices, dataFolder, type Services } from '../services/index.ts';
import { jsonFile } from '../services/settings/index.ts';
import { createBridge } from './bridge.ts';
import { lockContents, lockSession } from './lockdown.ts';
import { setMenu } from './menu.ts';
import { declareScheme, servePages } from './pages.ts';
import { desktopPort } from './port.ts';
import { openWindow } from './window.ts';

/** The desktop shell: one window on the services. */

const places = programPlaces(__dirname);
const folder = dataFolder();
let services: Services | null = null;
/** A file that the system handed over before the window was there. */
let openFirst: string | null = null;
let placeKept: () => Promise<unknown> = async () => undefined;
const running = (): Services => {
  if (services === null) throw new Error('the services have not been started');
  return services;
};

// The browser part of Electron keeps its own files apart from the books.
app.setPath('userData', path.join(folder, 'window'));
app.enableSandbox();
declareScheme();

if (app.requestSingleInstanceLock()) {
  app.on('second-instance', (_event, words, startedIn) => {
    const [window] = BrowserWindow.getAllWindows();
    if (window?.isMinimized()) window.restore();
    window?.focus();
    const file = bookAmong(words);
    if (file !== null) open(path.resolve(startedIn, file));
  });
  // The way of macOS.
  app.on('open-file', (event, file) => {
    event.preventDefault();
    open(file);
  });
  app.on('window-all-closed', () => app.quit());
  closeBeforeQuit();
  void run();
} else app.quit();

async function run(): Promise<void> {
  await app.whenReady();
  const pages = servePages(places.pageFolder, (addressPath) => running().picture(addressPath));
  const bridge = createBridge(running);
  const reading = readStartArguments(process.argv.slice(app.isPackaged ? 1 : 2));
  services = createServices({
    port: desktopPort(pages, bridge.contentsOf),
    version: PROGRAM_VERSION,
    dataFolder: folder,
    samplesFolder: places.samplesFolder,
    workerFile: places.workerFile,
    groundWorkerFile: places.groundWorkerFile,
    roadsWorkerFile: places.roadsWorkerFile,
    open: openFirst === null ? wishOf(reading) : { kind: 'file', file: openFirst },
  });
  lockSession(session.defaultSession);
  lockContents(services.log);
  setMenu();
  await openWindow(places.preloadFile, jsonFile(path.join(folder, 'window.json')), (window, kept) => {
    placeKept = kept;
    bridge.attach(window.webContents);
  });
  services.log('info', 'window', 'opened');
}

/** Opens a book file in the window; before that is there it is what the window opens first. */
function open(file: string): void {
  if (services === null) openFirst = file;
  else services.want(file);
}

function wishOf(reading: StartReading): StartOpen {
  return reading.kind === 'start' ? reading.wishes.open : { kind: 'nothing' };
}

/** The book among the words of a second start, which has switches of the browser part between them. */
function bookAmong(words: readonly string[]): string | null {
  return words.find((word) => !word.startsWith('-') && /\.(swardway|json)$/i.test(word)) ?? null;
}

/** Ends jobs, closes every book and stores the place of the window before the program ends. */
function closeBeforeQuit(): void {
  let closed = false;
  app.on('will-quit', (event) => {
    if (closed || services === null) return;
    event.preventDefault();
    void Promise.allSettled([services.close(), placeKept()]).then(() => {
      closed = true;
      app.quit();
    });
  });
}
