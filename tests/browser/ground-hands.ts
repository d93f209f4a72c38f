import type { Page } from 'playwright-core';

/** A user whose clicks and key presses are counted. */
export type Hands = {
  readonly count: () => number;
  readonly click: (name: string | RegExp, role?: 'button' | 'option' | 'checkbox') => Promise<void>;
  /** Clicks a place of the map, in px from its left upper corner. */
  readonly clickMap: (x: number, y: number) => Promise<void>;
  readonly focus: (label: string) => Promise<void>;
  readonly press: (key: string, times?: number) => Promise<void>;
  readonly type: (text: string) => Promise<void>;
};

export function handsOn(page: Page): Hands {
  let count = 0;
  const mapBox = async () => {
    const box = await page.locator('.map').boundingBox();
    if (box === null) throw new Error('there is no map on the page');
    return box;
  };
  return {
    count: () => count,
    click: async (name, role = 'button') => {
      count += 1;
      await page.getByRole(role, { name, exact: true }).first().click();
    },
    clickMap: async (x, y) => {
      count += 1;
      const box = await mapBox();
      await page.mouse.move(box.x + x - 3, box.y + y - 3);
      await page.mouse.click(box.x + x, box.y + y);
    },
    focus: async (label) => {
      count += 1;
      await page.getByLabel(label, { exact: true }).click();
    },
    press: async (key, times = 1) => {
      count += times;
      for (let time = 0; time < times; time += 1) await page.keyboard.press(key);
    },
    type: async (text) => {
      count += text.length;
      await page.keyboard.type(text);
    },
  };
}

/** Corners on the map, in px from its left upper corner. */
export type Corners = readonly (readonly [x: number, y: number])[];

/** A lawn of 300 by 200 px beside the sample's. */
export const NEW_LAWN: Corners = [
  [420, 570],
  [720, 570],
  [720, 770],
  [420, 770],
];

/** Takes a tool, sets the corners and finishes with Enter. */
export async function drawOutline(hands: Hands, tool: string, corners: Corners): Promise<void> {
  await hands.click(tool);
  for (const [x, y] of corners) await hands.clickMap(x, y);
  await hands.press('Enter');
}

/** How many feet one pixel of the map is, from its scale bar. */
export async function feetPerPixel(page: Page): Promise<number> {
  const plate = page.locator('.scale-plate');
  const feet = Number(/([\d,]+) ft/.exec((await plate.textContent()) ?? '')?.[1]?.replace(',', ''));
  const line = await plate.locator('path').evaluate((path) => path.getBoundingClientRect().width);
  const d = (await plate.locator('path').getAttribute('d')) ?? '';
  const px = Number(/H([\d.]+)V/.exec(d)?.[1]) - 1;
  if (!(feet > 0) || !(px > 0) || !(line > 0)) throw new Error('the scale bar cannot be read');
  return feet / px;
}

/** "3,214 ft²" as a number. */
export function readArea(text: string | null): number {
  const found = /([\d,]+(?:\.\d+)?) ft²/.exec(text ?? '')?.[1];
  if (found === undefined) throw new Error(`no area in "${text}"`);
  return Number(found.replaceAll(',', ''));
}
