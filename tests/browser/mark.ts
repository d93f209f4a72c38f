import type { Page } from 'playwright-core';

/** The program's drawing as a PNG of so many pixels a side, clear outside its corners. */
export async function drawMark(page: Page, svg: string, sizePx: number): Promise<Uint8Array> {
  await page.setViewportSize({ width: sizePx, height: sizePx });
  const address = `data:image/svg+xml;base64,${Buffer.from(svg).toString('base64')}`;
  await page.setContent(`<body style="margin:0"><img src="${address}" width="${sizePx}" style="display:block">`);
  return page.screenshot({ omitBackground: true, clip: { x: 0, y: 0, width: sizePx, height: sizePx } });
}
