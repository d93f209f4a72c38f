import { app, type Session, type WebContents } from 'electron';
import type { Log } from '../services/index.ts';
import { isOwnPage, PAGE_SCHEME } from './address.ts';

/** The one permission a page may have: putting text on the clipboard. */
const ALLOWED_PERMISSIONS = ['clipboard-sanitized-write'];
const LOCAL_SCHEMES = [`${PAGE_SCHEME}:`, 'devtools:', 'data:', 'blob:'];

/** Refuses permissions and every request that would leave the machine. */
export function lockSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, permission, decide) =>
    decide(ALLOWED_PERMISSIONS.includes(permission)),
  );
  session.setPermissionCheckHandler((_contents, permission) => ALLOWED_PERMISSIONS.includes(permission));
  session.webRequest.onBeforeRequest((details, decide) => {
    decide({ cancel: !LOCAL_SCHEMES.includes(schemeOf(details.url)) });
  });
}

function schemeOf(address: string): string {
  try {
    return new URL(address).protocol;
  } catch {
    return '';
  }
}

/** Keeps every page, now and later, where it is: no other address, no second window, no guest page. */
export function lockContents(log: Log): void {
  app.on('web-contents-created', (_event, contents: WebContents) => {
    const stay = (event: { readonly preventDefault: () => void }, address: string): void => {
      if (isOwnPage(address)) return;
      event.preventDefault();
      log('warn', 'window', 'navigation-refused', { scheme: schemeOf(address) });
    };
    contents.on('will-navigate', stay);
    contents.on('will-redirect', stay);
    contents.on('will-attach-webview', (event) => event.preventDefault());
    contents.setWindowOpenHandler(({ url }) => {
      log('warn', 'window', 'new-window-refused', { scheme: schemeOf(url) });
      return { action: 'deny' };
    });
  });
}
