import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeWithChromium } from './chromium.ts';
import { type Desk, goToRoom, openDesk } from './desk.ts';

describeWithChromium('two fleets on the same round', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk({ words: ['--sample', 'mixed-day'] });
    await desk.page.getByRole('option').first().waitFor();
  });
  afterAll(async () => {
    await desk?.close();
  });

  test('are planned one after the other and stand side by side, with what each leaves out and why', async () => {
    const { page } = desk;
    await goToRoom(page, 'Round');
    const seconds = page.getByLabel('Seconds to search');
    await seconds.fill('1');
    await seconds.press('Enter');
    await page.getByRole('tab', { name: 'Fleets' }).click();
    const fleets = page.getByRole('region', { name: 'Fleets' });
    for (let count = 0; count < 2; count += 1) await page.getByRole('button', { name: 'Add a fleet' }).click();
    // The sample's narrow gates keep the wide machine of Rig South out: without Rig North those lawns are left.
    await fleets.getByRole('checkbox', { name: 'Rig North' }).nth(1).uncheck();
    await page.getByRole('button', { name: 'Plan both' }).click();
    const compared = page.getByRole('region', { name: 'As it is against Fleet 2' });
    const row = (name: string) => compared.getByRole('row', { name: new RegExp(`^${name}`) });
    await row('lawns left out').waitFor({ timeout: 120_000 });
    const figures = async (name: string) => await row(name).getByRole('cell').allTextContents();
    expect((await figures('rig days')).slice(0, 2)).toEqual(['2', '1']);
    const [none, some, more] = await figures('lawns left out');
    expect(none).toBe('0');
    expect(Number(some)).toBeGreaterThan(0);
    expect(more).toBe(`${some} more`);
    await compared.getByText(/The two do not do the same work/).waitFor();
    const left = compared.getByRole('listitem');
    expect(await left.count()).toBe(Number(some));
    expect(await left.first().textContent()).toMatch(/gate \d+ in, machine \d+ in|cannot reach/);
    expect(desk.complaints).toEqual([]);
  });
});
