import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { type Book, writeBook } from '../../core/book/index.ts';
import { calendarOf, workdaysBetween } from '../../core/round/calendar/index.ts';
import { sampleBook } from '../support/samples.ts';
import { goToRoom, openDesk, planRound } from './desk.ts';

type Take = (page: Page, name: string) => Promise<void>;

/** Today in the pictures. */
const TODAY = '2027-03-09';
const WINDY = '2027-03-17';

/** Two weeks with a holiday, days held back, a windy day and promises; and a programme with a split application. */
function pictureBook(): Book {
  const sample = sampleBook('four-day-round');
  const [round] = sample.rounds;
  if (round === undefined) throw new Error('the sample lacks a round');
  const calendar = {
    ...calendarOf(sample),
    rainShare: 0.2,
    noticeDays: 2,
    serviceMin: 30,
    holidays: [{ on: '2027-03-19', name: 'Founders’ day (invented)' }],
  };
  const promised = sample.properties.slice(0, 3).map(({ id }) => ({ propertyId: id, on: '2027-03-18' }));
  const dates = workdaysBetween(calendarOf(sample), '2027-03-15', '2027-03-26');
  const hours = Array.from({ length: 24 }, (_, hour) => ({ hour, windMph: hour < 10 ? 6 : 16, airF: 45 + hour }));
  const step = { treatmentIds: round.treatmentIds, from: '03-10', to: '04-10' };
  return {
    ...sample,
    calendar,
    products: sample.products.map((each) => ({ ...each, label: { ...each.label, mostWindMph: 10 } })),
    rounds: [{ ...round, dates, dueDate: '2027-03-26', promised }],
    weather: [{ id: 'windy', on: WINDY, source: 'forecast (invented)', hours }],
    programmes: [
      {
        id: 'split',
        name: 'Two doses',
        note: '',
        steps: [
          { ...step, id: 'first', name: 'First dose' },
          {
            ...step,
            id: 'second',
            name: 'Second dose',
            from: '05-01',
            to: '05-31',
            after: { stepId: 'first', leastDays: 42, mostDays: 56 },
          },
        ],
      },
    ],
  };
}

/** Pictures of the views Calendar and Programmes for the guide. */
export async function takeCalendarPictures(take: Take): Promise<void> {
  const folder = await mkdtemp(path.join(tmpdir(), 'swardway-calendar-'));
  const file = path.join(folder, 'bramley-fold.json');
  await writeFile(file, writeBook(pictureBook()));
  const desk = await openDesk({ words: [file], height: 960 });
  try {
    const { page } = desk;
    await page.clock.setFixedTime(new Date(`${TODAY}T12:00:00`));
    await goToRoom(page, 'Round');
    await planRound(page, 2);
    await page.locator('.notice').waitFor({ state: 'detached', timeout: 20_000 });
    await page.getByRole('tab', { name: 'Calendar' }).click();
    await page.getByRole('button', { name: /^Wednesday, March 17, 2027/ }).click();
    await take(page, 'guide-calendar-1-days');
    await page.getByRole('tab', { name: 'Programmes' }).click();
    await page.getByRole('button', { name: /Make this season/ }).waitFor();
    await take(page, 'guide-calendar-2-programme');
  } finally {
    await desk.close();
    await rm(folder, { recursive: true, force: true });
  }
}
