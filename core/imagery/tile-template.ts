import { err, ok, type Result } from '../base/index.ts';
import type { TileAt } from './mercator.ts';

/** The address of a set of tiles, read. */
export type TileTemplate = {
  /** The machine that is asked, with its port where one is named. */
  readonly host: string;
  /** Protocol and host: what a redirect may not leave. */
  readonly origin: string;
  readonly addressOf: (tile: TileAt) => string;
};

const SHAPE = /^(https?):\/\/([a-z0-9.-]+(?::\d{1,5})?)(\/[^\s\\]*)$/i;
const LOCAL = /^(127\.0\.0\.1|localhost)(:\d+)?$/;

/**
 * Reads an address like `https://tiles.example.org/{z}/{x}/{y}.png`; `{-y}` counts rows from the south. Plain http is taken
 * only for a server on this machine. Names and passwords in the address are refused.
 *
 * @returns fails with 'format-invalid', saying what is missing
 */
export function readTileTemplate(text: string): Result<TileTemplate> {
  const found = SHAPE.exec(text.trim());
  const [, protocol = '', hostText = '', rest = ''] = found ?? [];
  const host = hostText.toLowerCase();
  if (found === null) return refused('It is no web address.');
  if (protocol.toLowerCase() === 'http' && !LOCAL.test(host)) return refused('The address has to begin with https.');
  for (const part of ['{z}', '{x}']) {
    if (rest.split(part).length !== 2) return refused(`The address has to hold ${part} once.`);
  }
  if (rest.split('{y}').length + rest.split('{-y}').length !== 3) return refused('The address has to hold {y} once.');
  if (/[{}]/.test(rest.replace(/\{(z|x|-?y)\}/g, ''))) return refused('It holds a part in braces that is not known.');
  const origin = `${protocol.toLowerCase()}://${host}`;
  return ok({ host, origin, addressOf: (tile) => origin + fill(rest, tile) });
}

function fill(path: string, { z, x, y }: TileAt): string {
  return path
    .replace('{z}', String(z))
    .replace('{x}', String(x))
    .replace('{y}', String(y))
    .replace('{-y}', String(2 ** z - 1 - y));
}

function refused(detail: string): Result<never> {
  const hint = 'Write it like https://tiles.example.org/{z}/{x}/{y}.png.';
  return err('format-invalid', 'address of tiles', detail, hint);
}
