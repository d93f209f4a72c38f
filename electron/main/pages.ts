import { randomBytes } from 'node:crypto';
import { protocol } from 'electron';
import type { Services } from '../services/index.ts';
import { contentSecurityPolicy, pageHeaders, pictureHeaders, readPageFile } from '../services/page/index.ts';
import { isOwnPage, PAGE_SCHEME, PRINT_HOST } from './address.ts';

/** Must run before the app is ready. */
export function declareScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: PAGE_SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
}

const PRINT_POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:";

/** Pages that wait to be printed, by an id that cannot be guessed. */
export type PrintPages = {
  readonly add: (html: string) => { readonly address: string; readonly remove: () => void };
};

/** A tile or picture by the path of its address; null for any other path. */
export type PictureOf = Services['picture'];

/** Serves the built screens, the pictures of the map and pages to be printed under app://. Everything else is "not found". */
export function servePages(pageFolder: string, pictureOf: PictureOf): PrintPages {
  const waiting = new Map<string, string>();
  protocol.handle(PAGE_SCHEME, async (request) => {
    const { host, pathname } = new URL(request.url);
    if (host === PRINT_HOST) return printPage(waiting.get(pathname.slice(1)));
    if (!isOwnPage(request.url) || request.method !== 'GET') return notFound();
    const picture = await pictureOf(pathname);
    if (picture !== null) {
      const headers = pictureHeaders(picture.mediaType, picture.status === 200);
      return new Response(Buffer.from(picture.bytes), { status: picture.status, headers });
    }
    const file = await readPageFile(pageFolder, pathname);
    if (file === null) return notFound();
    return new Response(Buffer.from(file.bytes), { headers: pageHeaders(file.mediaType, contentSecurityPolicy()) });
  });
  return {
    add: (html) => {
      const id = randomBytes(16).toString('hex');
      waiting.set(id, html);
      return { address: `${PAGE_SCHEME}://${PRINT_HOST}/${id}`, remove: () => waiting.delete(id) };
    },
  };
}

function printPage(html: string | undefined): Response {
  return html === undefined
    ? notFound()
    : new Response(html, { headers: pageHeaders('text/html; charset=utf-8', PRINT_POLICY) });
}

function notFound(): Response {
  const headers = pageHeaders('text/plain; charset=utf-8', contentSecurityPolicy());
  return new Response('Not found\n', { status: 404, headers });
}
