import path from 'node:path';
import { err, ok, type Result } from '../../../core/base/index.ts';
import type { WrittenFile } from '../../../core/contract/index.ts';
import { describePlace, writeWhole } from '../files/index.ts';
import type { Client } from '../host-port.ts';
import type { Context } from './context.ts';

const MEDIA_TYPES: Readonly<Record<string, string>> = {
  '.json': 'application/json',
  '.geojson': 'application/geo+json',
  '.csv': 'text/csv',
  '.gpx': 'application/gpx+xml',
  '.ics': 'text/calendar',
  '.kml': 'application/vnd.google-earth.kml+xml',
  '.html': 'text/html',
  '.txt': 'text/plain',
  '.pdf': 'application/pdf',
};

/** Asks where a file should go, makes it, and writes it there or hands it to the page. Nothing is made after a cancel. */
export async function deliver(
  { port, library }: Context,
  client: Client,
  suggestedName: string,
  make: () => Promise<Result<Uint8Array>> | Result<Uint8Array>,
): Promise<Result<WrittenFile>> {
  const name = path.basename(suggestedName);
  const target = await port.chooseTarget(client, name);
  if (target.kind === 'cancelled') return ok(target);
  if (target.kind === 'download') return handToPage(name, make);
  if (await library.isOpen(target.file)) return bookInTheWay(target.file);
  const bytes = await make();
  if (!bytes.ok) return bytes;
  const written = await writeWhole(target.file, bytes.value);
  return written.ok ? ok({ kind: 'saved', name: path.basename(target.file) }) : written;
}

/** The bytes of a file for the page, which writes it. */
export async function handToPage(
  name: string,
  make: () => Promise<Result<Uint8Array>> | Result<Uint8Array>,
): Promise<Result<WrittenFile>> {
  const bytes = await make();
  if (!bytes.ok) return bytes;
  const mediaType = MEDIA_TYPES[path.extname(name).toLowerCase()] ?? 'application/octet-stream';
  return ok({ kind: 'download', name, mediaType, base64: Buffer.from(bytes.value).toString('base64') });
}

function bookInTheWay(file: string): Result<never> {
  const detail = 'This file is a book that is open, so nothing was written over it.';
  return err('not-allowed', describePlace(file), detail, 'Choose another name.');
}
