import { randomBytes } from 'node:crypto';
import { protocol } from 'electron';
import { contentSecurityPolicy, pageHeaders, readPageFile } from '../services/page/index.ts';
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

/** Serves the built screens and pages to be printed under app://. Everything else is "not found". */
export function servePages(pageFolder: string): PrintPages {
  const waiting = new Map<string, string>();
  protocol.handle(PAGE_SCHEME, async (request) => {
    const { host, pathname } = new URL(request.url);
    if (host === PRINT_HOST) return printPage(waiting.get(pathname.slice(1)));
    const file = isOwnPage(request.url) && request.method === 'GET' ? await readPageFile(pageFolder, pathname) : null;
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
