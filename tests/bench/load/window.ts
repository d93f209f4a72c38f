import type { Page } from 'playwright-core';
import { type Desk, goToRoom, openDesk } from '../../browser/desk.ts';
import { tasksOf } from '../window-tasks.ts';
import type { Line } from './figures.ts';
import { heldBy, heldByPage } from './memory.ts';
import { installWatches, type Watched } from './watches.ts';

/** One second finds the plan of a day that six find: docs/benchmarks.md. */
const SEARCH_SEC = 1;
const EDITS = 20;
const ROOMS = ['Shed', 'Round', 'Day', 'Paper', 'Ground'] as const;
/** What is sought: parts of names and of addresses, typed letter by letter. */
const SOUGHT = ['lawn 4217', 'saddler', '12 mill', 'zzz'];

/** What the program takes in the window, from opening the book file to the rooms. */
export async function timeWindow(file: string, times: number): Promise<readonly Line[]> {
  const desk = await openDesk({ words: [file] });
  try {
    const { page } = desk;
    page.setDefaultTimeout(120_000);
    const opening = await timeOpening(page, times);
    // Only now: what watches takes time itself.
    await page.addInitScript(installWatches);
    const longest = await watchOpening(page, times);
    const searching = await timeSearch(page);
    const edits = await timeEdits(page);
    const planning = await timePlans(page);
    for (const room of ROOMS) {
      await goToRoom(page, room);
      await page.waitForTimeout(1500);
    }
    // Before the traces, which the page's process holds as well.
    const held = await memoryLines(desk);
    const rooms = await timeRooms(page);
    const traced = await traceEdit(page);
    // The watches are not let into the sandboxed frame of a sheet.
    const complaints = desk.complaints.filter((each) => !each.includes("script execution in 'about:srcdoc'"));
    if (complaints.length > 0) throw new Error(`the page complained: ${complaints.join('; ')}`);
    return [...opening, ...longest, ...searching, ...edits, ...planning, ...held, ...rooms, ...traced];
  } finally {
    await desk.close();
  }
}

/** Rows of the list of lawns; other lists of the page have options too. */
const lawnRows = (page: Page) => page.getByRole('listbox', { name: 'Lawns' }).getByRole('option');

const ms = (what: string, aim: number | null, figures: readonly number[]): Line => ({ what, unit: 'ms', aim, figures });

const watched = <Value>(page: Page, read: (watches: Watched) => Value): Promise<Value> =>
  page.evaluate(
    ([text]) =>
      new Function('watches', `return (${text})(watches)`)(
        (window as unknown as { watches: Watched }).watches,
      ) as Value,
    [String(read)],
  );

async function measured(page: Page): Promise<void> {
  await page.waitForFunction(() => !document.querySelector('.step-active')?.textContent?.includes('measuring'));
}

/** From asking for the page to a list and a map of which a lawn can be chosen. */
async function timeOpening(page: Page, times: number): Promise<readonly Line[]> {
  const usable: number[] = [];
  const whole: number[] = [];
  await lawnRows(page).first().waitFor();
  for (let time = 0; time < times; time += 1) {
    await measured(page);
    await page.waitForTimeout(3000);
    const from = performance.now();
    await page.reload({ waitUntil: 'commit' });
    await lawnRows(page).first().waitFor();
    await page.locator('.map canvas, .map path.turf').first().waitFor({ state: 'attached' });
    await lawnRows(page).nth(3).click();
    await page.locator('.turf-selected').first().waitFor({ state: 'attached' });
    usable.push(performance.now() - from);
    await measured(page);
    whole.push(performance.now() - from);
  }
  return [
    ms('window: opened, a lawn can be chosen', 3000, usable),
    ms('window: opened, every lawn measured', null, whole),
  ];
}

async function watchOpening(page: Page, times: number): Promise<readonly Line[]> {
  const longest: number[] = [];
  for (let time = 0; time < times; time += 1) {
    await page.reload({ waitUntil: 'commit' });
    await lawnRows(page).first().waitFor();
    await measured(page);
    await page.waitForTimeout(3000);
    longest.push(Math.max(0, ...(await watched(page, (watches) => watches.tasks))));
  }
  return [ms('window: longest task while opening, by the clock', 200, longest)];
}

/** From a key in the field that filters to the filtered list on the screen. */
async function timeSearch(page: Page): Promise<readonly Line[]> {
  const field = page.getByLabel('Find a lawn by name or address');
  for (const text of SOUGHT) {
    await field.fill('');
    await page.waitForTimeout(300);
    await field.pressSequentially(text, { delay: 150 });
  }
  await page.waitForTimeout(300);
  const taken = await watched(page, (watches) => watches.searches);
  await field.fill('');
  return [ms('window: a key in the search until its results are drawn', 50, taken)];
}

/** From Enter in a field of a lawn to the word "saved". */
async function timeEdits(page: Page): Promise<readonly Line[]> {
  await lawnRows(page).nth(3).click();
  for (let number = 0; number < EDITS; number += 1) await editNote(page, `note ${number}`);
  const taken = await watched(page, (watches) => watches.saves);
  if (taken.length !== EDITS) throw new Error(`${taken.length} of ${EDITS} edits were seen to be saved`);
  return [ms('window: Enter in a field until it says "saved"', 50, taken)];
}

async function editNote(page: Page, text: string): Promise<void> {
  const field = page.getByLabel('Note', { exact: true });
  await field.fill(text);
  await page.waitForTimeout(400);
  await field.press('Enter');
  await page.waitForTimeout(900);
}

/** What the thread that draws does for an edit in all, the checks of the book that follow it with it. */
async function traceEdit(page: Page): Promise<readonly Line[]> {
  await lawnRows(page).nth(3).click();
  const longest: number[] = [];
  const all: number[] = [];
  for (let time = 0; time < 3; time += 1) {
    const cost = await tasksOf(page, 'an edit', () => editNote(page, `traced ${time}`));
    longest.push(cost.longestMs);
    all.push(cost.sumMs);
  }
  return [
    ms('window: longest task of an edit and what follows it, processor time', 200, longest),
    ms('window: all tasks of an edit and what follows it, processor time', null, all),
  ];
}

/** From the press of the button to the plan on the screen; the first has nothing that is known from an earlier one. */
async function timePlans(page: Page): Promise<readonly Line[]> {
  await goToRoom(page, 'Round');
  const field = page.getByLabel('Seconds to search');
  await field.fill(String(SEARCH_SEC));
  await field.press('Enter');
  const progress = page.getByRole('progressbar', { name: 'Planning' });
  const taken: number[] = [];
  for (let time = 0; time < 4; time += 1) {
    const from = performance.now();
    await page.getByRole('button', { name: /^Plan (this round|again)$/ }).click();
    await progress.waitFor();
    await progress.waitFor({ state: 'detached' });
    taken.push(performance.now() - from);
  }
  return [
    ms(`window: first plan of the day, ${SEARCH_SEC} s of search with it`, 5000, taken.slice(0, 1)),
    ms('window: later plans of the day, the same', 5000, taken.slice(1)),
  ];
}

async function timeRooms(page: Page): Promise<readonly Line[]> {
  const lines: Line[] = [];
  for (const room of ROOMS) {
    const longest: number[] = [];
    for (let time = 0; time < 3; time += 1) {
      await goToRoom(page, room === 'Ground' ? 'Paper' : 'Ground');
      await page.waitForTimeout(1000);
      longest.push((await tasksOf(page, room, () => goToRoom(page, room))).longestMs);
    }
    lines.push(ms(`window: longest task on entering ${room}, processor time`, 200, longest));
  }
  return lines;
}

async function memoryLines({ context, processId }: Desk): Promise<readonly Line[]> {
  const browser = context.browser();
  const host = await heldBy(processId);
  const page = browser === null ? null : await heldByPage(browser);
  const line = (what: string, held: number): Line => ({ what, unit: 'MiB', aim: 1024, figures: [held] });
  return [
    ...(host === null ? [] : [line('memory of the host at the end', host.nowMib), line('… and at most', host.mostMib)]),
    ...(page === null ? [] : [line('memory of the page at the end', page.nowMib), line('… and at most', page.mostMib)]),
  ];
}
