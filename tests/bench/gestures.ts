import type { Page } from 'playwright-core';
import { goToRoom } from '../browser/desk.ts';

/** Something that somebody does in the window, and what has to be there before it is done. */
export type Gesture = { readonly name: string; readonly act: (page: Page) => Promise<void> };

const ROUND_VIEWS = ['When', 'Calendar', 'Programmes', 'Season', 'Buy', 'Fleets', 'Plan'] as const;
const DAY_VIEWS = ['Rigs', 'Who can go', 'How sure', 'Morning', 'Under way', 'Levels'] as const;

const room = (name: string): Gesture => ({ name: `enter ${name}`, act: (page) => goToRoom(page, name) });
const view = (of: string, name: string): Gesture => ({
  name: `${of}: ${name}`,
  act: (page) => page.getByRole('tab', { name, exact: true }).click(),
});

/** Letters in a field that filters. */
function typed(name: string, label: string, text: string): Gesture {
  return { name, act: (page) => page.getByLabel(label).pressSequentially(text, { delay: 60 }) };
}

function cleared(label: string): Gesture {
  return { name: '', act: (page) => page.getByLabel(label).fill('') };
}

async function planAgain(page: Page): Promise<void> {
  const field = page.getByLabel('Seconds to search');
  await field.fill('2');
  await field.press('Enter');
  await page.getByRole('button', { name: 'Plan again' }).click();
  const progress = page.getByRole('progressbar', { name: 'Planning' });
  await progress.waitFor();
  await progress.waitFor({ state: 'detached', timeout: 300_000 });
}

/** Every room, every view of Round and Day, and what is done most in them. Nameless ones only lead to the next. */
export const GESTURES: readonly Gesture[] = [
  room('Ground'),
  typed('Ground: type two letters into the filter', 'Find a lawn by name or address', 'la'),
  cleared('Find a lawn by name or address'),
  { name: 'Ground: choose a lawn', act: (page) => page.locator('[role=option]').nth(2).click() },
  { name: 'Ground: choose the next lawn by key', act: (page) => page.keyboard.press('ArrowDown') },
  room('Shed'),
  room('Round'),
  ...ROUND_VIEWS.flatMap((name) => [
    view('Round', name),
    ...(name === 'Season'
      ? [
          { name: '', act: (page: Page) => page.getByLabel('Find a lawn in the ledger').waitFor({ timeout: 60_000 }) },
          typed('Round: type two letters into the filter of Season', 'Find a lawn in the ledger', 'la'),
          { name: 'Round: choose a lawn of Season', act: (page: Page) => page.locator('[role=option]').nth(2).click() },
        ]
      : []),
  ]),
  {
    name: 'Round: choose the other round',
    act: (page) => page.locator('.round-list .list-button:not(.list-button-chosen)').first().click(),
  },
  { name: '', act: (page) => page.locator('.round-list .list-button').first().click() },
  {
    name: 'Round: an edit (wet ground)',
    act: (page) => page.getByText('the ground counts as wet').click(),
  },
  { name: 'Round: undo', act: (page) => page.keyboard.press('Control+z') },
  {
    name: 'Round: plan again for two seconds, and take the plan in',
    act: planAgain,
  },
  room('Day'),
  { name: 'Day: choose a stop', act: (page) => page.locator('.stop-item').nth(3).click() },
  {
    name: 'Day: another day',
    act: async (page) => {
      await page.getByLabel('Date', { exact: true }).selectOption({ index: 0 });
      await page
        .getByLabel('Rig', { exact: true })
        .selectOption({ index: 1 })
        .catch(() => undefined);
    },
  },
  ...DAY_VIEWS.flatMap((name) => [
    view('Day', name),
    ...(name === 'Who can go'
      ? [
          {
            name: '',
            act: (page: Page) => page.getByRole('table', { name: 'Who can go' }).waitFor({ timeout: 60_000 }),
          },
          typed('Day: type two letters into the filter of Who can go', 'Street, or a part of the address', 'la'),
        ]
      : []),
  ]),
  room('Paper'),
  room('Ground'),
];
