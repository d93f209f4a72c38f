import { readFile } from 'node:fs/promises';
import type { Browser } from 'playwright-core';

const KIB_PER_MIB = 1024;

/** What a process holds now, and the most that it ever held, MiB; null where the system does not tell. */
export type Held = { readonly nowMib: number; readonly mostMib: number };

export async function heldBy(processId: number): Promise<Held | null> {
  const status = await readFile(`/proc/${processId}/status`, 'utf8').catch(() => null);
  if (status === null) return null;
  const kib = (name: string): number =>
    Number(new RegExp(`^${name}:\\s+(\\d+) kB`, 'm').exec(status)?.[1] ?? Number.NaN);
  return { nowMib: kib('VmRSS') / KIB_PER_MIB, mostMib: kib('VmHWM') / KIB_PER_MIB };
}

/** The process of the page: of the browser's drawing processes the one that holds most. */
export async function heldByPage(browser: Browser): Promise<Held | null> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  const pages = processInfo.filter(({ type }) => type === 'renderer');
  const held = (await Promise.all(pages.map(({ id }) => heldBy(id)))).filter((each) => each !== null);
  return held.reduce<Held | null>((most, each) => (most === null || each.nowMib > most.nowMib ? each : most), null);
}
