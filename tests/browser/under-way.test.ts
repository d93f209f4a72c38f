import { afterAll, beforeAll, expect, test } from 'vitest';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, goToRoom, openDesk, planRound } from './desk.ts';

describeWithChromium('a day under way', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk();
    await goToRoom(desk.page, 'Round');
    await planRound(desk.page, 2);
    await goToRoom(desk.page, 'Day');
  });
  afterAll(async () => {
    await desk?.close();
  });

  test('says how sure it is, and changes its mind with the spread', async () => {
    const { page } = desk;
    await page.getByRole('tab', { name: 'How sure' }).click();
    const words = page.getByText(/^9 days in 10 home by/);
    const usual = await words.textContent();
    expect(await page.getByRole('region', { name: 'When the rig is where' }).getByRole('row').count()).toBe(29);
    const slower = page.getByLabel('driving: on average, times the plan');
    await slower.fill('3');
    await slower.press('Enter');
    await page.waitForFunction((before) => document.querySelector('.how-sure-home')?.textContent !== before, usual);
  });

  test('stops are marked done or left out, what they took is written down, and the rest is planned from here', async () => {
    const { page } = desk;
    await page.getByRole('tab', { name: 'Under way' }).click();
    for (let stop = 0; stop < 3; stop += 1)
      await page
        .getByRole('button', { name: /: done$/ })
        .first()
        .click();
    await page
      .getByRole('button', { name: /: left out$/ })
      .first()
      .click();
    const why = page.getByLabel(/: why it was left out$/);
    await why.fill('gate locked');
    await why.press('Enter');
    await page.getByText('3 stops done, 1 stop left out, 24 stops to come.').waitFor();
    const used = page.getByLabel(/: used, planned/).first();
    await used.fill('9 gal');
    await used.press('Enter');
    await page.getByText(/Check calibration: more than 5 % off/).waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Plan the rest from here' }).click();
    await page.getByText(/^Planned from .*: 24 stops, home .* instead of/).waitFor({ timeout: 60_000 });
    expect(await page.locator('.stop-item').count()).toBe(24);
    await page.getByRole('tab', { name: 'Rigs' }).click();
    await page.getByText('Nothing: every rule holds.').waitFor();
    const names = () => page.locator('.board-name').allTextContents();
    const before = await names();
    expect(before).toHaveLength(24);
    await page.locator('[data-stop]').first().focus();
    await page.keyboard.press('Enter');
    await page.locator('[data-place]:focus').waitFor();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    await expect.poll(names).toEqual([before[1], before[0], ...before.slice(2)]);
    await page.getByText('being reckoned').waitFor({ state: 'detached' });
    expect(await page.locator('.board-lists .stop').count()).toBe(0);
    await page.getByRole('button', { name: 'Take the last change of the plan back' }).click();
    await expect.poll(names).toEqual(before);
    await page.getByRole('tab', { name: 'Under way' }).click();
    await page.getByRole('button', { name: 'Show the day as it was planned' }).click();
    expect(await page.locator('.lawn-label-stop').count()).toBe(28);
  });

  test('a reading of the gauges takes the place of what was reckoned', async () => {
    const { page } = desk;
    const nurse = page.getByLabel('Nurse tank: what is in it');
    await nurse.fill('20 gal');
    await nurse.press('Enter');
    await page.getByText(/^Aboard, read at/).waitFor();
    expect(await nurse.inputValue()).toBe('20 gal');
  });

  test('a lawn that would use up what is left in a tank is offered on the board, and put in', async () => {
    const { page } = desk;
    const hose = page.getByLabel('Hose reel 200 ft: what is in it');
    await hose.fill('30 gal');
    await hose.press('Enter');
    // The rest as it was planned before is shown until the new one is there; meanwhile it cannot be planned once more.
    const planRest = page.getByRole('button', { name: 'Plan the rest from here' });
    const isRefused = () => planRest.getAttribute('aria-disabled');
    await planRest.click();
    await expect.poll(isRefused).toBe('true');
    await expect.poll(isRefused, { timeout: 60_000 }).toBeNull();
    await page.getByRole('button', { name: 'Show the day as it was planned' }).waitFor();
    await page.getByRole('tab', { name: 'Rigs' }).click();
    const blocks = page.locator('[data-stop]');
    await expect.poll(() => blocks.count(), { timeout: 30_000 }).toBe(24);
    await page.getByText('being reckoned').waitFor({ state: 'detached' });
    const name = await blocks.last().locator('.board-name').textContent();
    await blocks.last().focus();
    await page.keyboard.press('Delete');
    await expect.poll(() => blocks.count()).toBe(23);
    const offers = page.getByRole('listitem').filter({ hasText: /gal left in Hose reel 200 ft; .*left out so far/ });
    const offer = offers.filter({ hasText: name ?? '' });
    await offer.getByRole('button', { name: /^Put in: / }).click();
    await expect.poll(() => blocks.count()).toBe(24);
    expect(await page.locator('.board-name').allTextContents()).toContain(name);
    await page.getByRole('tab', { name: 'Under way' }).click();
    await page.getByRole('button', { name: 'Show the day as it was planned' }).click();
  });

  test('a round that is planned again leaves out what is done, and what is not done again', async () => {
    const { page } = desk;
    await page.getByLabel('not again in this round').check();
    await goToRoom(page, 'Round');
    await planRound(page, 2);
    await page.getByText(/recorded as done, or left out for good, and not planned again/).waitFor();
    await goToRoom(page, 'Day');
    await page.getByText('24 stops', { exact: false }).first().waitFor();
    expect(await page.locator('.stop-item').count()).toBe(24);
  });
});
