import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import {
  ICNS_TYPES,
  ICO_SIZES,
  type IconPicture,
  LINUX_SIZES,
  toIcns,
  toIco,
} from '../../electron/packaging/icon-files.ts';
import { openBrowser } from './chromium.ts';
import { drawMark } from './mark.ts';

/** Writes the program's icons from its one drawing, renderer/mark.svg; run as `npm run icons` at the project's root. */
const folder = path.resolve('electron/packaging/icons');
const svg = readFileSync(path.resolve('renderer/mark.svg'), 'utf8');
const browser = await openBrowser();
const page = await browser.newPage();
const pictures = new Map<number, IconPicture>();
for (const sizePx of new Set([...ICO_SIZES, ...LINUX_SIZES, ...ICNS_TYPES.map(([, size]) => size)])) {
  pictures.set(sizePx, { sizePx, png: await drawMark(page, svg, sizePx) });
}
await browser.close();

const of = (sizes: readonly number[]): readonly IconPicture[] => sizes.flatMap((size) => pictures.get(size) ?? []);
rmSync(folder, { recursive: true, force: true });
mkdirSync(path.join(folder, 'linux'), { recursive: true });
for (const { sizePx, png } of of(LINUX_SIZES)) writeFileSync(path.join(folder, `linux/${sizePx}x${sizePx}.png`), png);
writeFileSync(path.join(folder, 'swardway.ico'), toIco(of(ICO_SIZES)));
writeFileSync(path.join(folder, 'swardway.icns'), toIcns([...pictures.values()]));
console.log('electron/packaging/icons');
