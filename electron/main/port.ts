import { BrowserWindow, dialog, type FileFilter, type WebContents } from 'electron';
import { ok } from '../../core/base/index.ts';
import { GROUND_READERS } from '../../core/formats/index.ts';
import type { Client, FilePurpose, HostPort } from '../services/index.ts';
import type { PrintPages } from './pages.ts';

const GROUND_ENDINGS = [...new Set(GROUND_READERS.flatMap((each) => each.extensions))];
const FILTERS: Readonly<Record<FilePurpose, readonly FileFilter[]>> = {
  book: [{ name: 'Books', extensions: ['swardway', 'json'] }],
  geojson: [{ name: 'GeoJSON', extensions: ['geojson', 'json'] }],
  csv: [{ name: 'CSV tables', extensions: ['csv', 'txt'] }],
  matrix: [{ name: 'Travel tables', extensions: ['csv', 'txt'] }],
  plan: [{ name: 'Plans', extensions: ['json'] }],
  background: [{ name: 'Tiles and pictures with their place', extensions: ['mbtiles', 'pmtiles', 'tif', 'tiff'] }],
  picture: [{ name: 'Pictures', extensions: ['png', 'jpg', 'jpeg'] }],
  ground: [{ name: 'Outlines and lists of lawns', extensions: GROUND_ENDINGS }],
  heights: [{ name: 'Pictures of heights', extensions: ['tif', 'tiff'] }],
  roads: [{ name: 'Extracts of OpenStreetMap', extensions: ['pbf', 'osm'] }],
  streets: [{ name: 'Street lines', extensions: ['zip', 'geojson', 'json'] }],
};
const TITLES: Readonly<Record<FilePurpose, string>> = {
  book: 'Open a book',
  geojson: 'Open outlines of lawns',
  csv: 'Open a table of lawns',
  matrix: 'Open a travel table',
  plan: 'Open a plan',
  background: 'Open what lies behind the map',
  picture: 'Open a photo or a scanned plan',
  ground: 'Open outlines or a list of lawns',
  heights: 'Open a picture of heights',
  roads: 'Open an extract of a road map',
  streets: 'Open street lines with house numbers',
};

/** Dialogs of the system, and printing by Electron's own Chromium. */
export function desktopPort(pages: PrintPages, contentsOf: (client: Client) => WebContents | null): HostPort {
  const windowOf = (client: Client): BrowserWindow | null => {
    const contents = contentsOf(client);
    return contents === null ? null : BrowserWindow.fromWebContents(contents);
  };
  return {
    host: 'window',
    filePicking: 'dialog',
    makesPdf: true,
    pickFile: async (client, purpose) => {
      const window = windowOf(client);
      if (window === null) return { kind: 'cancelled' };
      const { canceled, filePaths } = await dialog.showOpenDialog(window, {
        title: TITLES[purpose],
        properties: ['openFile'],
        filters: [...FILTERS[purpose]],
      });
      const file = filePaths[0];
      return canceled || file === undefined ? { kind: 'cancelled' } : { kind: 'path', file };
    },
    chooseTarget: async (client, suggestedName) => {
      const window = windowOf(client);
      if (window === null) return { kind: 'cancelled' };
      const { canceled, filePath } = await dialog.showSaveDialog(window, { defaultPath: suggestedName });
      return canceled || filePath === '' ? { kind: 'cancelled' } : { kind: 'path', file: filePath };
    },
    printPdf: async (html) => ok(await printPage(pages, html)),
  };
}

/** Prints in a window that is never shown and runs no scripts. */
async function printPage(pages: PrintPages, html: string): Promise<Uint8Array> {
  const page = pages.add(html);
  const window = new BrowserWindow({
    show: false,
    webPreferences: { sandbox: true, contextIsolation: true, nodeIntegration: false, javascript: false },
  });
  try {
    await window.loadURL(page.address);
    return await window.webContents.printToPDF({ preferCSSPageSize: true, printBackground: true });
  } finally {
    page.remove();
    window.destroy();
  }
}
