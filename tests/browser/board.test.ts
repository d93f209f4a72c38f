import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { sampleBook } from '../support/samples.ts';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { chooseCommand, type Desk, goToRoom, openDesk, planRound } from './desk.ts';

describeWithChromium('the board of rigs', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk({ words: ['--sample', 'mixed-day'] });
    const { page } = desk;
    await page.getByRole('button', { name: /^Round/ }).waitFor();
    await planRound(page, 2);
    await goToRoom(page, 'Day');
    await page.getByRole('tab', { name: 'Rigs' }).click();
    await page.getByText('Nothing: every rule holds.').waitFor();
  }, 120_000);
  afterAll(async () => {
    await desk?.close();
  });

  const row = (name: string): Locator =>
    desk.page.getByRole('listitem').filter({ hasText: name }).and(desk.page.locator('.board-row'));
  const order = (name: string) => row(name).locator('.board-name').allTextContents();
  const settled = () => expect.poll(() => desk.page.getByText('being reckoned').count(), { timeout: 15_000 }).toBe(0);

  test('shows one date with its rigs as rows, and is sound for those who do not see it', async () => {
    expect(await desk.page.locator('.board-row').count()).toBe(2);
    expect((await order('Rig North')).length + (await order('Rig South')).length).toBe(16);
  });

  test('a stop dragged by mouse stands where it was dropped, and undo puts it back', async () => {
    const { page } = desk;
    const before = await order('Rig North');
    const block = row('Rig North').locator('[data-stop]').nth(1);
    const from = await block.boundingBox();
    const past = await row('Rig North').locator('[data-stop]').nth(4).boundingBox();
    if (from === null || past === null) throw new Error('no blocks');
    await page.mouse.move(from.x + from.width / 2, from.y + 10);
    await page.mouse.down();
    await page.mouse.move(from.x + from.width + 20, from.y + 12, { steps: 3 });
    await page.mouse.move(past.x + past.width * 0.8, past.y + 12, { steps: 5 });
    await page.mouse.up();
    const wanted = [before[0], before[2], before[3], before[4], before[1], ...before.slice(5)];
    await expect.poll(() => order('Rig North')).toEqual(wanted);
    await settled();
    await page.getByText('Nothing: every rule holds.').waitFor();
    await page.getByRole('button', { name: 'Take the last change of the plan back' }).click();
    await expect.poll(() => order('Rig North')).toEqual(before);
  });

  test('a rig that cannot do the lawn refuses it, with the reason of its gate', async () => {
    const { page } = desk;
    const from = await row('Rig North').locator('[data-stop]').first().boundingBox();
    const track = await row('Rig South').locator('.board-track').boundingBox();
    if (from === null || track === null) throw new Error('no blocks');
    await page.mouse.move(from.x + from.width / 2, from.y + 10);
    await page.mouse.down();
    await page.mouse.move(from.x + 40, from.y + 30, { steps: 3 });
    await page.mouse.move(track.x + 120, track.y + 20, { steps: 5 });
    await page.mouse.up();
    await page
      .getByText(/Not moved: Rig South cannot do .*: .*gate \d+ in, machine \d+ in/)
      .first()
      .waitFor();
    await settled();
  });

  const carried = () => desk.page.locator('[data-place]:focus').waitFor();

  test('from the keyboard: taken up, carried by arrows or Tab with each place said, given up, dropped', async () => {
    const { page } = desk;
    const before = await order('Rig North');
    const first = row('Rig North').locator('[data-stop]').first();
    await first.focus();
    await page.keyboard.press('Enter');
    await carried();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    const said = () => page.locator(':focus').getAttribute('aria-label');
    expect(await said()).toBe(`Rig North, place 3 of ${before.length}, before ${before[3]}`);
    await page.keyboard.press('Tab');
    expect(await said()).toBe(`Rig North, place 4 of ${before.length}, before ${before[4]}`);
    await page.keyboard.press('ArrowDown');
    expect(await said()).toMatch(/^Rig South, place \d+ of/);
    await page.keyboard.press('Escape');
    await page.locator('[data-place]').first().waitFor({ state: 'detached' });
    expect(await order('Rig North')).toEqual(before);
    await first.focus();
    await page.keyboard.press('Enter');
    await carried();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    await expect.poll(() => order('Rig North')).toEqual([before[1], before[2], before[0], ...before.slice(3)]);
    await settled();
    await page.getByText('Nothing: every rule holds.').waitFor();
    // The stop keeps the focus where it is now.
    expect(await said()).toContain(`3. ${before[0]}`);
  });

  test('by finger: a stop is carried to another place, and a press selects it', async () => {
    const { page, context } = desk;
    const before = await order('Rig North');
    const hand = await context.newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', x = 0, y = 0) =>
      hand.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x, y }] });
    const blocks = row('Rig North').locator('[data-stop]');
    const [from, past] = [await blocks.nth(0).boundingBox(), await blocks.nth(3).boundingBox()];
    if (from === null || past === null) throw new Error('no blocks');
    await touch('touchStart', from.x + 6, from.y + 12);
    for (const share of [0.2, 0.6, 1])
      await touch('touchMove', from.x + 6 + share * (past.x + past.width * 0.8 - from.x - 6), from.y + 14);
    await page.locator('.board-caret').waitFor();
    await touch('touchEnd');
    await expect.poll(() => order('Rig North')).toEqual([...before.slice(1, 4), before[0], ...before.slice(4)]);
    await settled();
    await page.getByRole('button', { name: 'Take the last change of the plan back' }).click();
    await expect.poll(() => order('Rig North')).toEqual(before);
    const second = await blocks.nth(1).boundingBox();
    if (second === null) throw new Error('no block');
    await touch('touchStart', second.x + 6, second.y + 12);
    await touch('touchEnd');
    await page
      .locator('.board-chosen')
      .filter({ hasText: before[1] ?? '' })
      .waitFor();
  });

  test('a lawn taken out is listed with its reason, and put in again at a place told in words', async () => {
    const { page } = desk;
    const [name = ''] = await order('Rig North');
    await row('Rig North').locator('[data-stop]').first().click();
    await page.getByRole('button', { name: 'Take out' }).click();
    await page.getByText(`${name}: taken out by hand.`).waitFor();
    expect(await order('Rig North')).not.toContain(name);
    await page.getByRole('button', { name: `Put in ${name}` }).click();
    const places = page.getByRole('list', { name: `Places for ${name}, the cheapest first` });
    await places.getByRole('button').first().waitFor();
    expect(await places.getByRole('button').first().textContent()).toMatch(
      /Rig North, .*min.*\$.* more, day done at \d/,
    );
    expect(await accessFaults(page)).toEqual([]);
    await places.getByRole('button').first().click();
    await page.getByText('Every lawn of the round has its day.').waitFor();
    expect(await order('Rig North')).toContain(name);
  });

  test('what is out of order: who can take over, with minutes or the reason', async () => {
    const { page } = desk;
    await page.getByRole('button', { name: 'Out of order…' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('table', { name: 'Who can take over which lawn' }).waitFor();
    expect(await dialog.getByRole('row').nth(1).textContent()).toMatch(
      /no: .*gate \d+ in, machine \d+ in|\d+ min with/,
    );
    await page.keyboard.press('Escape');
  });

  test('who can go: minutes or the reason, by street', async () => {
    const { page } = desk;
    await page.getByRole('tab', { name: 'Who can go' }).click();
    const table = page.getByRole('table', { name: 'Who can go to which lawn' });
    await table.waitFor();
    await page.getByText('16 lawns', { exact: true }).waitFor();
    await page.getByLabel('Street, or a part of the address').fill('saddler');
    const there = sampleBook('mixed-day').properties.filter((each) => each.name.includes('Saddler')).length;
    await page.getByText(new RegExp(`^${there} lawns`)).waitFor();
    expect(await table.getByRole('row').nth(1).textContent()).toMatch(/Saddler Street.*min.*no: .*gate \d+ in/);
    expect(await table.textContent()).toContain('tight gate');
    // Rows that are not drawn are stood for by room of so much each.
    const heights = await table.locator('tbody tr').evaluateAll((rows) => rows.map((each) => each.clientHeight));
    expect(heights.filter((each) => Math.abs(each - 42) > 1)).toEqual([]);
  });

  test('improving from here leaves what is pinned with its rig, and moves it where that pays once it is free', async () => {
    const { page } = desk;
    await page.getByRole('tab', { name: 'Rigs' }).click();
    const lawn = 'Weavers Hall';
    await row('Rig South').locator('[data-stop]').filter({ hasText: lawn }).focus();
    await page.keyboard.press('Enter');
    await carried();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    await expect.poll(() => order('Rig North')).toContain(lawn);
    await settled();
    const improve = page.getByRole('button', { name: 'Improve from here' });
    const improved = async () => {
      await improve.click();
      await expect.poll(() => improve.getAttribute('aria-disabled')).toBe('true');
      await expect.poll(() => improve.getAttribute('aria-disabled'), { timeout: 30_000 }).not.toBe('true');
      await settled();
    };
    const pin = page.getByRole('button', { name: 'Pin', exact: true });
    await pin.click();
    await improved();
    expect(await order('Rig North')).toContain(lawn);
    await pin.click();
    await improved();
    await expect.poll(() => order('Rig South')).toContain(lawn);
  });

  test('a plan that was emptied by hand is brought back', async () => {
    const { page } = desk;
    await page.getByRole('tab', { name: 'Rigs' }).click();
    const blocks = page.locator('[data-stop]');
    for (let left = await blocks.count(); left > 0; left -= 1) {
      await blocks.first().focus();
      await page.keyboard.press('Delete');
      await expect.poll(() => blocks.count(), { timeout: 10_000 }).toBe(left - 1);
    }
    await page.getByText('No stop is left in this plan').waitFor();
    await page.getByText('16 lawns of the round are left out.', { exact: false }).waitFor();
    await page.getByRole('button', { name: 'Take the last change of the plan back' }).click();
    await blocks.first().waitFor();
    expect(await blocks.count()).toBe(1);
  });

  test('a move that makes the day too long is shown, and what is broken is said with the limit and by how much', async () => {
    const { page } = desk;
    await chooseCommand(page, 'Book', 'Start or open a book');
    await page
      .getByRole('button', { name: /one rig \(invented\)/ })
      .first()
      .click();
    await page.waitForFunction(() => document.querySelector('.step')?.textContent?.includes('28 lawns'));
    await planRound(page, 2);
    await goToRoom(page, 'Day');
    await page.getByRole('tab', { name: 'Rigs' }).click();
    await page.getByText('Nothing: every rule holds.').waitFor();
    // This customer allows work from 1 pm on: first in the order, it keeps the rig waiting until then.
    const block = page.locator('[data-stop]').filter({ hasText: '5 Orchard Rise' });
    await block.focus();
    await page.keyboard.press('Enter');
    await carried();
    await page.keyboard.press('Home');
    await page.keyboard.press('Enter');
    const words = /done at \d.*, shift and overtime end at \d.*: \d.* too late\.$/;
    await page.getByRole('listitem').filter({ hasText: words }).waitFor();
    expect(await page.locator('.board-name').first().textContent()).toBe('5 Orchard Rise');
    await page.getByRole('button', { name: 'Take the last change of the plan back' }).click();
    await page.getByText('Nothing: every rule holds.').waitFor();
    expect(desk.complaints).toEqual([]);
  });
});
