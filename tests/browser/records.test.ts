import { afterAll, beforeAll, expect, test } from 'vitest';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, goToRoom, openDesk, planRound } from './desk.ts';

describeWithChromium('records and notices', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk();
    await goToRoom(desk.page, 'Round');
    await planRound(desk.page, 2);
    await goToRoom(desk.page, 'Day');
    await desk.page.getByRole('tab', { name: 'Under way' }).click();
  });
  afterAll(async () => {
    await desk?.close();
  });

  const sheet = () => desk.page.frameLocator('iframe.paper-page');

  test('what was read on site goes into the visit', async () => {
    const { page } = desk;
    for (let stop = 0; stop < 2; stop += 1)
      await page
        .getByRole('button', { name: /: done$/ })
        .first()
        .click();
    for (const [label, text] of [
      ['Wind', '5 mph'],
      ['Wind from', 'NW'],
      ['Air temperature', '58'],
      ['Sky', 'clear'],
    ] as const) {
      const field = page.getByLabel(label, { exact: true });
      await field.fill(text);
      await field.press('Enter');
    }
    expect(await page.getByLabel('Wind from', { exact: true }).inputValue()).toBe('315° NW');
    const wrong = page.getByLabel('Wind from', { exact: true });
    await wrong.fill('sideways');
    await wrong.press('Enter');
    await page.getByText('"sideways" cannot be read as a bearing.', { exact: false }).waitFor();
    await wrong.press('Escape');
    expect(await accessFaults(page)).toEqual([]);
  });

  test('records are kept, stay when other steps are undone, and are corrected by another version', async () => {
    const { page } = desk;
    await goToRoom(page, 'Paper');
    await page.getByRole('option', { name: 'Application records' }).click();
    await page.getByText(/28 stops, 0 kept, 2 done and not kept, 26 not written down yet/).waitFor();
    await sheet().getByText('Not kept yet.', { exact: false }).first().waitFor();
    await page.getByRole('button', { name: 'Keep 2 records' }).click();
    await page.getByText(/2 kept, 0 done and not kept/).waitFor();
    await sheet().getByText('Kept in the book: version 1', { exact: false }).first().waitFor();
    expect(await accessFaults(page)).toEqual([]);
    // The newest step that can be undone is what was typed before.
    await page.keyboard.press('Control+z');
    await page.getByText(/2 kept, 1 of them otherwise by now/).waitFor();
    const withdrawn = page.getByRole('button', { name: 'Keep a corrected version' });
    await page.getByLabel('Why it is corrected or withdrawn').fill('sky not looked at');
    await withdrawn.click();
    await page.getByText(/2 kept, 0 done and not kept/).waitFor();
    await sheet().getByText('Kept in the book: version 2', { exact: false }).waitFor();
    await page.getByRole('option', { name: 'Record versions' }).click();
    await sheet().getByText('sky not looked at').first().waitFor();
  });

  test("the user's own text is written beside its sheet, and HTML in it is text", async () => {
    const { page } = desk;
    await page.getByRole('option', { name: 'Notices' }).click();
    await sheet().getByText('Questions before or after', { exact: false }).first().waitFor();
    const text = page.getByLabel(/^Text of Notice/);
    await text.fill('Dear {customer}: <b>{date}</b> {colour}');
    await text.blur();
    await sheet().getByText('<b>Tuesday, March 16, 2027</b> {colour}', { exact: false }).first().waitFor();
    await sheet().getByText('has the field {colour}', { exact: false }).waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole('option', { name: 'Signs to post' }).click();
    await sheet().getByText('LAWN TREATED', { exact: false }).first().waitFor();
    expect(desk.complaints).toEqual([]);
  });

  test('the sheets of the office are all there', async () => {
    const { page } = desk;
    for (const [name, words] of [
      ['Round summary', 'What to order'],
      ['Fleet comparison', 'There are no two fleets'],
      ['Season ledger', 'What went and will go down'],
      ['Calibration record', 'No calibration is kept'],
    ] as const) {
      await page.getByRole('option', { name }).click();
      await sheet().getByText(words, { exact: false }).first().waitFor();
    }
  });
});
