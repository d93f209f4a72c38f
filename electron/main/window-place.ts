import type { BrowserWindow, Rectangle } from 'electron';
import * as v from 'valibot';
import type { JsonFile } from '../services/settings/index.ts';

const placeSchema = v.object({
  x: v.number(),
  y: v.number(),
  width: v.pipe(v.number(), v.minValue(300)),
  height: v.pipe(v.number(), v.minValue(200)),
  maximized: v.boolean(),
});
export type WindowPlace = Readonly<v.InferOutput<typeof placeSchema>>;

/** At least this much of the window must lie on a screen that exists, pixels. */
const LEAST_VISIBLE = 100;

/** Where the window was, if that is still on a screen; else null. */
export async function readPlace(file: JsonFile, screens: readonly Rectangle[]): Promise<WindowPlace | null> {
  const parsed = v.safeParse(placeSchema, await file.read());
  return parsed.success && isVisible(parsed.output, screens) ? parsed.output : null;
}

/** True where enough of a rectangle lies on one of the screens to be seen and taken hold of. */
export function isVisible(place: Rectangle, screens: readonly Rectangle[]): boolean {
  const shared = (from: number, length: number, start: number, extent: number): number =>
    Math.min(from + length, start + extent) - Math.max(from, start);
  return screens.some(
    (screen) =>
      shared(place.x, place.width, screen.x, screen.width) >= LEAST_VISIBLE &&
      shared(place.y, place.height, screen.y, screen.height) >= LEAST_VISIBLE,
  );
}

/** Remembers the place when the window closes. Returns what resolves once the last place is on the disk, or could not be written. */
export function keepPlace(window: BrowserWindow, file: JsonFile): () => Promise<unknown> {
  let writing: Promise<unknown> = Promise.resolve();
  window.on('close', () => {
    const place: WindowPlace = { ...window.getNormalBounds(), maximized: window.isMaximized() };
    writing = file.write(place);
  });
  return () => writing;
}
