import path from 'node:path';
import { ok, type Result } from '../../../core/base/index.ts';
import type { WrittenFile } from '../../../core/contract/index.ts';
import { writeWhole } from '../files/index.ts';
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
  { port }: Context,
  client: Client,
  suggestedName: string,
  make: () => Promise<Result<Uint8Array>> | Result<Uint8Array>,
): Promise<Result<WrittenFile>> {
  const name = path.basename(suggestedName);
  const target = await port.chooseTarget(client, name);
  if (target.kind === 'cancelled') return ok(target);
  const bytes = await make();
  if (!bytes.ok) return bytes;
  if (target.kind === 'path') {
    const written = await writeWhole(target.file, bytes.value);
    return written.ok ? ok({ kind: 'saved', name: path.basename(target.file) }) : written;
  }
  const mediaType = MEDIA_TYPES[path.extname(name).toLowerCase()] ?? 'application/octet-stream';
  return ok({ kind: 'download', name, mediaType, base64: Buffer.from(bytes.value).toString('base64') });
}
