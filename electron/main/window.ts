import { BrowserWindow, screen } from 'electron';
import type { JsonFile } from '../services/settings/index.ts';
import { PAGE_ADDRESS } from './address.ts';
import { keepPlace, readPlace } from './window-place.ts';

/** What a page is allowed: nothing of Node, its own world for the preload script, the system's sandbox. */
export function webPreferences(preloadFile: string): Electron.WebPreferences {
  return {
    preload: preloadFile,
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInSubFrames: false,
    nodeIntegrationInWorker: false,
    webSecurity: true,
    allowRunningInsecureContent: false,
    experimentalFeatures: false,
    webviewTag: false,
    navigateOnDragDrop: false,
  };
}

/**
 * Opens the one window where it was last.
 *
 * @param beforeLoad runs when the window is there and its page is not. It also gets what resolves once the place of the window,
 *   which is stored as it closes, is on the disk.
 */
export async function openWindow(
  preloadFile: string,
  placeFile: JsonFile,
  beforeLoad: (window: BrowserWindow, placeKept: () => Promise<unknown>) => void,
): Promise<void> {
  const place = await readPlace(
    placeFile,
    screen.getAllDisplays().map(({ workArea }) => workArea),
  );
  const window = new BrowserWindow({
    title: 'Swardway',
    width: place?.width ?? 1400,
    height: place?.height ?? 900,
    ...(place === null ? {} : { x: place.x, y: place.y }),
    minWidth: 800,
    minHeight: 560,
    show: false,
    backgroundColor: '#f4efe4',
    webPreferences: webPreferences(preloadFile),
  });
  if (place?.maximized) window.maximize();
  window.once('ready-to-show', () => window.show());
  beforeLoad(window, keepPlace(window, placeFile));
  await window.loadURL(PAGE_ADDRESS);
}
