import { readFile, realpath } from 'node:fs/promises';
import path from 'node:path';

/** A file of the built screens, and what the browser is told that it is. */
export type PageFile = { readonly bytes: Uint8Array; readonly mediaType: string };

const MEDIA_TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
};

/**
 * A file of the built screens by the path of its address; null for anything outside the folder, of an unknown kind, or absent.
 *
 * @param folder the folder of the built screens
 * @param addressPath the path part of the address, percent-encoded, beginning with "/"
 */
export async function readPageFile(folder: string, addressPath: string): Promise<PageFile | null> {
  const name = decodePath(addressPath);
  if (name === null) return null;
  const mediaType = MEDIA_TYPES[path.extname(name).toLowerCase()];
  if (mediaType === undefined) return null;
  const file = path.join(folder, name);
  try {
    // Both sides with links resolved: neither "..", nor a link inside the folder, leads out of it.
    const [inside, real] = await Promise.all([realpath(folder), realpath(file)]);
    if (!real.startsWith(inside + path.sep)) return null;
    return { bytes: await readFile(real), mediaType };
  } catch {
    return null;
  }
}

function decodePath(addressPath: string): string | null {
  try {
    const name = decodeURIComponent(addressPath === '/' ? '/index.html' : addressPath);
    return name.includes('\0') || name.includes('\\') || name.split('/').includes('..') ? null : name;
  } catch {
    return null;
  }
}
