import { timingSafeEqual } from 'node:crypto';
import { readImageHead } from '../../../core/imagery/index.ts';
import { TILES_PATH } from './describe.ts';
import type { Imagery } from './imagery.ts';
import { writePng } from './png.ts';

/** An answer to a page's wish for a picture. */
export type PictureAnswer = {
  readonly status: 200 | 404 | 502;
  readonly bytes: Uint8Array;
  readonly mediaType: string;
};

/** One clear pixel, for ground that a background does not cover: a gap is no failure. */
const clearPixel = writePng(new Uint8Array(4), 1, 1);
const TILE_PATH = /^\/tiles\/([\w-]{32})\/([a-z0-9-]{1,60})\/(\d{1,2})\/(\d{1,8})\/(\d{1,8})$/;

/** The picture under a path of the host's own origin; null where the path is none of a tile, or bears a wrong key. */
export async function serveTile(imagery: Imagery, addressPath: string): Promise<PictureAnswer | null> {
  if (!addressPath.startsWith(TILES_PATH)) return null;
  const [, key = '', id = '', z, x, y] = TILE_PATH.exec(addressPath) ?? [];
  if (!sameText(key, imagery.key)) return null;
  const read = await imagery.tile(id, { z: Number(z), x: Number(x), y: Number(y) });
  if (!read.ok) return words(502, `${read.error.where}: ${read.error.detail}`);
  return pictureAnswer(read.value ?? (await clearPixel));
}

/** The bytes of a picture as an answer; 502 where they are none that a page can show. */
export function pictureAnswer(bytes: Uint8Array): PictureAnswer {
  const head = readImageHead(bytes);
  return head === null ? words(502, 'not a picture') : { status: 200, bytes, mediaType: head.mediaType };
}

function words(status: 404 | 502, text: string): PictureAnswer {
  return { status, bytes: Buffer.from(`${text}\n`), mediaType: 'text/plain; charset=utf-8' };
}

/** Compares in a time that does not depend on how much of the text agrees. */
export function sameText(shown: string, expected: string): boolean {
  const [a, b] = [Buffer.from(shown), Buffer.from(expected)];
  return a.byteLength === b.byteLength && timingSafeEqual(a, b);
}
