import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { type Book, writeBook } from '../../core/book/index.ts';
import { SHEETS } from '../../core/reports/index.ts';
import { type Desk, type DeskWishes, doCommand, goToRoom, openDesk, planRound } from './desk.ts';
import { dropFile } from './drop.ts';
import { handsOn } from './ground-hands.ts';
import { seasonBook } from './season-book.ts';
import { withTwoFleets } from './two-fleets.ts';

/**
 * Every room, view, tab and dialog of the program, in an order in which each is reached from the one before it. What holds
 * everywhere is tried by walking through this list once.
 */
export type Place = {
  readonly name: string;
  /** Shows it. */
  readonly go: (page: Page) => Promise<unknown>;
  /** Leaves it, where the next place cannot be reached from it. */
  readonly leave?: (page: Page) => Promise<unknown>;
};

/** The invented day of two rigs with a season, and two fleets to compare: no view is empty that could be full. */
const fullBook = (): Book => withTwoFleets(seasonBook('mixed-day'));

/** Opens the program with the book that the list is about. */
export async function openPlaces(wishes: DeskWishes = {}): Promise<Desk> {
  const folder = await mkdtemp(path.join(tmpdir(), 'swardway-places-'));
  const file = path.join(folder, 'places.json');
  await writeFile(file, writeBook(fullBook()));
  const desk = await openDesk({ words: [file], ...wishes });
  const close = async () => {
    await desk.close();
    await rm(folder, { recursive: true, force: true });
  };
  return { ...desk, close };
}

const LAWNS = `name,lat,lon,turf area (acres),gate
Burdock 1,40.05,-89.43,0.25,36
Burdock 2,40.06,-89.43,lots,36
`;

const LAWN = 'Weavers Hall';
const pressEscape = (page: Page) => page.keyboard.press('Escape');
const closeDialog = async (page: Page) => {
  await pressEscape(page);
  await page.getByRole('dialog').waitFor({ state: 'detached' });
};
const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).first().click();
const tab = (page: Page, name: string) => page.getByRole('tab', { name, exact: true }).click();

async function drawSomeCorners(page: Page): Promise<void> {
  await page.getByRole('option', { name: LAWN }).click();
  await page.keyboard.press('Alt+9');
  await press(page, 'Draw a zone');
  const hands = handsOn(page);
  const box = await page.locator('.map').boundingBox();
  const [middle, below] = [(box?.width ?? 0) / 2, (box?.height ?? 0) / 2];
  for (const [x, y] of [
    [middle - 60, below + 20],
    [middle + 60, below + 20],
    [middle + 60, below + 90],
  ] as const)
    await hands.clickMap(x, y);
  await page.getByRole('region', { name: 'Being drawn' }).getByText('3 corners').waitFor();
}

/** A dialog with this title, which Esc closes. */
function dialogPlace(name: string, title: string, open: Place['go']): Place {
  const go = async (page: Page) => {
    await open(page);
    await page.getByRole('dialog', { name: title }).waitFor();
  };
  return { name, go, leave: closeDialog };
}

const GROUND: readonly Place[] = [
  { name: 'Ground', go: (page) => goToRoom(page, 'Ground') },
  {
    name: 'Ground: the menu',
    go: (page) => page.getByRole('button', { name: 'Menu' }).press('Enter'),
    leave: pressEscape,
  },
  dialogPlace('Ground: commands', 'Find a command', (page) => page.keyboard.press('Control+k')),
  dialogPlace('Ground: keys', 'Keys', (page) => page.keyboard.press('?')),
  dialogPlace('Ground: about', 'Swardway', (page) => doCommand(page, 'about')),
  dialogPlace('Ground: backups', 'Backups of this book', (page) => doCommand(page, 'backups')),
  dialogPlace('Ground: addresses', 'Find places by address', (page) => doCommand(page, 'find places')),
  {
    name: 'Ground: import, contents',
    go: async (page) => {
      await dropFile(page, 'burdock.csv', LAWNS);
      await page.getByRole('dialog', { name: 'burdock.csv' }).getByRole('button', { name: 'Next' }).waitFor();
    },
  },
  { name: 'Ground: import, fields', go: (page) => press(page, 'Next') },
  {
    name: 'Ground: import, changes',
    go: async (page) => {
      await press(page, 'Next');
      await page.getByRole('listbox', { name: 'Records' }).waitFor();
    },
    leave: closeDialog,
  },
  {
    name: 'Ground: a lawn',
    go: (page) => page.getByRole('option', { name: LAWN }).click(),
  },
  dialogPlace('Ground: behind the map', 'Behind the map', (page) => press(page, /^Behind the map/)),
  { name: 'Ground: being drawn', go: drawSomeCorners },
  {
    name: 'Ground: thrown away?',
    go: (page) => page.getByRole('region', { name: 'Being drawn' }).getByRole('button', { name: 'Throw away' }).click(),
    leave: pressEscape,
  },
  {
    name: 'Ground: set aside',
    go: pressEscape,
    leave: (page) => page.getByRole('button', { name: /^Go on with/ }).click(),
  },
  {
    name: 'Ground: finished',
    go: (page) => page.keyboard.press('Enter'),
    leave: async (page) => {
      await page.keyboard.press('Control+z');
    },
  },
];

const SHELVES = [
  'Hand methods',
  'Rigs',
  'Fill points',
  'Products',
  'Mixes',
  'Treatments',
  'Applicators',
  'Money and driving',
  'Roads',
  'Machines',
];
const SHED: readonly Place[] = [
  { name: 'Shed', go: (page) => goToRoom(page, 'Shed') },
  ...SHELVES.map((shelf) => ({
    name: `Shed: ${shelf}`,
    go: async (page: Page) => {
      await page.getByRole('option', { name: shelf }).click();
    },
  })),
];

const ROUND_VIEWS = ['When', 'Calendar', 'Programmes', 'Season', 'Buy', 'Fleets', 'Plan'];
const ROUND: readonly Place[] = [
  {
    name: 'Day: nothing is planned',
    go: (page) => goToRoom(page, 'Day'),
  },
  {
    name: 'Round: planning',
    go: async (page) => {
      await goToRoom(page, 'Round');
      await press(page, /^Plan this round$/);
      await page.getByText(/best so far: ./).waitFor();
    },
    leave: async (page) => {
      await page.keyboard.press('Control+.');
      await planRound(page, 1);
    },
  },
  ...ROUND_VIEWS.map((view) => ({
    name: `Round: ${view}`,
    go: (page: Page) => tab(page, view),
  })),
];

const DAY_VIEWS = ['Rigs', 'Who can go', 'How sure', 'Morning', 'Under way', 'Levels'];
const DAY: readonly Place[] = [
  {
    name: 'Day',
    go: async (page) => {
      await goToRoom(page, 'Day');
      await page.getByRole('slider').waitFor();
      await page.keyboard.press('Alt+ArrowDown');
    },
  },
  {
    name: 'Day: levels as a table',
    go: (page) => press(page, 'as a table'),
    leave: (page) => press(page, 'as a table'),
  },
  ...DAY_VIEWS.map((view) => ({
    name: `Day: ${view}`,
    go: async (page: Page) => {
      await tab(page, view);
      if (view === 'Rigs') await page.getByText('Nothing: every rule holds.').waitFor();
    },
  })),
  {
    name: 'Day: out of order',
    go: async (page) => {
      await tab(page, 'Rigs');
      await press(page, 'Out of order…');
      await page.getByRole('dialog').getByRole('table').waitFor();
    },
    leave: closeDialog,
  },
];

const PAPER: readonly Place[] = [
  { name: 'Paper', go: (page) => goToRoom(page, 'Paper') },
  ...[...SHEETS.map((sheet) => sheet.name), 'Files'].map((name) => ({
    name: `Paper: ${name}`,
    go: async (page: Page) => {
      await page
        .getByRole('listbox', { name: 'Sheets' })
        .getByRole('option')
        .filter({ has: page.getByText(name, { exact: true }) })
        .click();
      if (name !== 'Files') await page.locator('iframe').waitFor();
    },
  })),
];

const START: Place = {
  name: 'Welcome',
  go: async (page) => {
    await doCommand(page, 'start or open');
    await page.getByRole('heading', { name: 'Swardway' }).waitFor();
  },
};

const inTour = (page: Page) => page.getByRole('region', { name: 'Tour' });
/** The panel of the tour is the same in every step; the first points into a list, the fourth at the ribbon. */
const TOUR: readonly Place[] = [
  {
    name: 'Tour: first step',
    go: async (page) => {
      await doCommand(page, 'take the tour');
      await inTour(page).getByText('Step 1 of 6').waitFor();
    },
  },
  {
    name: 'Tour: where it runs out',
    go: async (page) => {
      for (let step = 1; step < 4; step += 1) await inTour(page).getByRole('button', { name: 'Next' }).click();
      await inTour(page).getByText('Step 4 of 6').waitFor();
    },
    leave: (page) => inTour(page).getByRole('button', { name: 'Leave the tour' }).click(),
  },
];

/** Begins after the welcome page. */
const EMPTY: readonly Place[] = [
  {
    name: 'Empty book: Ground',
    go: async (page) => {
      await page.getByLabel('Name of the new book').fill('Nothing yet');
      await page.keyboard.press('Enter');
      await page.getByRole('heading', { name: 'No lawns yet' }).waitFor();
    },
  },
  ...['Shed', 'Round', 'Day', 'Paper'].map((room) => ({
    name: `Empty book: ${room}`,
    go: async (page: Page) => {
      await goToRoom(page, room);
      await page.locator('.empty:visible').first().waitFor();
    },
  })),
];

export const PLACES: readonly Place[] = [...GROUND, ...SHED, ...ROUND, ...DAY, ...PAPER, ...TOUR, START, ...EMPTY];
