import type { AppInfo } from '../../core/contract/index.ts';
import { filesWords } from '../texts/stores/index.ts';
import { bookDidNotOpen } from './backups.ts';
import { showBook, useBook } from './book.ts';
import { pickFile, receiveFile, uploadFile } from './files.ts';
import { askHost, callHost } from './host.ts';
import { holdsTemperatures, readGround, readList, readTemperatureFile, showImport } from './imports.ts';
import { showError } from './notices.ts';
import { rememberedBook } from './remembered.ts';
import { goTo } from './view.ts';
import { takeWeatherTable, weatherTableOf } from './weather-file.ts';

export async function openSample(sampleId: string): Promise<void> {
  const opened = await askHost('book.openSample', { sampleId });
  if (opened === null) return;
  showBook(opened);
  goTo('ground');
}

/** Starts an empty book and shows its Ground room; false where it was given up or failed. */
export async function createBook(name: string): Promise<boolean> {
  const opened = await askHost('book.create', { name });
  if (opened === null || 'kind' in opened) return false;
  showBook(opened);
  goTo('ground');
  return true;
}

/** Chooses a list of lawns, begins a book that is called like it, and shows what the list would put in. */
export async function importList(): Promise<void> {
  const picked = await pickFile('ground');
  if (picked !== null) await bookFromList(picked.name, picked.token);
}

/** The book is made only once the list was read: a file that holds no lawns leaves everything as it is. */
async function bookFromList(fileName: string, token: string): Promise<void> {
  const list = await readList(fileName, token);
  if (list !== null && (await createBook(bookName(fileName)))) showImport(list);
}

/** "Spring customers" from "Spring_customers.csv". */
function bookName(fileName: string): string {
  const name = fileName
    .replace(/\.[^.]*$/, '')
    .replace(/[_\s]+/g, ' ')
    .trim();
  return name === '' ? filesWords.open.newBook : name.slice(0, 200);
}

export async function openToken(token: string): Promise<void> {
  const opened = await callHost('book.open', { token });
  if (opened.ok) showBook(opened.value);
  else await bookDidNotOpen(token, opened.error);
}

export async function openBookFile(): Promise<void> {
  const picked = await pickFile('book');
  if (picked !== null) await openToken(picked.token);
}

/** Chooses a file of lawns, travel times or temperatures and shows what it would change. */
export async function importFile(): Promise<void> {
  const picked = await pickFile('ground');
  if (picked !== null) await readGround(picked.name, picked.token);
}

/** Chooses a table of temperatures and shows what it would add. */
export async function importTemperatures(): Promise<void> {
  const picked = await pickFile('csv');
  if (picked !== null) readTemperatureFile(picked.name, picked.text);
}

/** A file that was dropped on the window: a book is opened; a list begins a book where none is open; tables of temperatures and weather, and ground, show what they would change. */
export async function takeDroppedFile(file: File): Promise<void> {
  const lower = file.name.toLowerCase();
  const isBook =
    lower.endsWith('.swardway') ||
    (lower.endsWith('.json') && (await file.slice(0, 4096).text()).includes('swardway-book'));
  if (isBook || (lower.endsWith('.json') && useBook.getState().open === null)) {
    const picked = await uploadFile('book', file);
    if (picked !== null) await openToken(picked.token);
    return;
  }
  if (useBook.getState().open === null) {
    const picked = await uploadFile('ground', file);
    if (picked !== null) await bookFromList(picked.name, picked.token);
    return;
  }
  if (/\.(csv|txt)$/.test(lower) && file.size <= LARGEST_TABLE && (await tookTable(file))) return;
  const picked = await uploadFile('ground', file);
  if (picked !== null) await readGround(picked.name, picked.token);
}

/** Tables of days and hours have no more than a few of these, bytes. */
const LARGEST_TABLE = 16 * 1024 * 1024;

/** Whether a table is one of temperatures or of weather; it is shown then. */
async function tookTable(file: File): Promise<boolean> {
  const text = await file.text();
  const weather = weatherTableOf(text, file.name);
  if (weather !== null) {
    const taken = takeWeatherTable(file.name, weather);
    if (!taken.ok) showError(taken.error);
    return true;
  }
  if (!holdsTemperatures(text, file.name)) return false;
  readTemperatureFile(file.name, text);
  return true;
}

export async function saveCopy(as: 'book' | 'json'): Promise<void> {
  const { open } = useBook.getState();
  if (open !== null) receiveFile(await askHost('book.saveCopy', { session: open.session, as }));
}

/** Opens what was open before a reload, else what the program was started with. */
export async function openAtStart({ openAtStart: wish }: AppInfo): Promise<void> {
  const token = rememberedBook();
  const before = token === null ? null : await callHost('book.open', { token });
  if (before?.ok === true) {
    showBook(before.value);
    return;
  }
  if (wish === null) return;
  if (wish.kind === 'sample') await openSample(wish.sampleId);
  else await openToken(wish.token);
}
