import type { Host } from '../../core/contract/index.ts';
import { findHost, type NoHost } from '../host/index.ts';
import {
  bookChangedElsewhere,
  checkInBackground,
  groundProgress,
  measureInBackground,
  openAtStart,
  openToken,
  planDone,
  planFailed,
  planProgress,
  restorePanels,
  roadsProgress,
  showError,
  useBook,
  useHost,
} from '../stores/index.ts';
import { appWords } from '../texts/app/index.ts';

/** Finds the host, reads what it is and what the user set, and follows what it tells. Null when all is well. */
export async function boot(): Promise<NoHost | null> {
  restorePanels();
  const found = await findHost();
  if (found.kind !== 'host') return found;
  const { host } = found;
  useHost.setState({ host });
  follow(host);
  followBook();
  followChecks();
  const [info, settings] = await Promise.all([host.call('app.info', {}), host.call('settings.read', {})]);
  if (settings.ok) useHost.setState({ settings: settings.value });
  if (!info.ok) {
    showError(info.error);
    return null;
  }
  useHost.setState({ info: info.value });
  await openAtStart(info.value);
  return null;
}

function follow(host: Host): void {
  host.on('job.progress', planProgress);
  host.on('job.done', planDone);
  host.on('job.failed', planFailed);
  host.on('ground.progress', groundProgress);
  host.on('roads.progress', roadsProgress);
  host.on('book.changed', ({ session, revision }) => bookChangedElsewhere(session, revision));
  host.on('book.wanted', ({ token }) => {
    openToken(token).catch(() => undefined);
  });
  host.on('host.lost', ({ reason }) => {
    useHost.setState({ lost: reason });
    showError({
      code: 'host-lost',
      where: appWords.boot.program,
      detail: appWords.boot.connectionGone,
      hint: appWords.boot.connectionGoneAdvice,
    });
  });
}

/** Measures the lawns again whenever the book changes; lawns that stayed the same cost nothing. */
function followBook(): void {
  let before = useBook.getState().open?.book.properties;
  useBook.subscribe(({ open }) => {
    const properties = open?.book.properties;
    if (properties === before) return;
    before = properties;
    measureInBackground(open?.book ?? null);
  });
}

/** Checks the book again whenever it changes. */
function followChecks(): void {
  let before = useBook.getState().open?.book;
  useBook.subscribe(({ open }) => {
    if (open?.book === before) return;
    before = open?.book;
    checkInBackground(open?.book ?? null);
  });
}
