import { useEffect, useState } from 'react';
import { AddressDialog } from '../addresses/index.ts';
import { useCommandKeys } from '../commands/index.ts';
import type { NoHost } from '../host/index.ts';
import { takeDroppedFile, useBook, useHost, useView } from '../stores/index.ts';
import { appWords } from '../texts/app/index.ts';
import { commonWords } from '../texts/index.ts';
import { Tour } from '../tour/index.ts';
import { boot } from './boot.ts';
import { ContextMenu } from './context-menu.tsx';
import { Header } from './header.tsx';
import { ImportDialog } from './import/import-dialog.tsx';
import { useKeptFocus } from './kept-focus.ts';
import { Announcements } from './notices.tsx';
import { Overlays } from './overlays.tsx';
import { RoomView } from './room-view.tsx';
import { Welcome } from './welcome.tsx';

type BootState = 'starting' | 'ready' | NoHost;

/** StrictMode mounts twice; the host is looked for once. */
let booting: Promise<NoHost | null> | null = null;

/** The whole window. */
export function App() {
  const [state, setState] = useState<BootState>('starting');
  useEffect(() => {
    booting ??= boot();
    booting.then(
      (fault) => setState(fault ?? 'ready'),
      () => setState({ kind: 'refused' }),
    );
  }, []);
  useAppearance();
  useCommandKeys();
  useDroppedFiles();
  useKeptFocus();
  const open = useBook((book) => book.open !== null);
  return (
    <div className="window">
      {state === 'starting' && <p className="starting quiet">{appWords.app.opening}</p>}
      {typeof state === 'object' && <NoHostPage fault={state} />}
      {state === 'ready' && (open ? <Desk /> : <Welcome />)}
      {state === 'ready' && <ImportDialog />}
      <Tour />
      <Overlays />
      <ContextMenu />
      <Announcements />
    </div>
  );
}

function Desk() {
  const room = useView((view) => view.room);
  const name = useBook((book) => book.open?.book.name ?? '');
  useTitle(appWords.app.title(commonWords.rooms[room], name));
  return (
    <>
      <Header />
      <RoomView room={room} />
      <AddressDialog />
    </>
  );
}

/** The title of the window, by which it is found among others. */
function useTitle(title: string): void {
  useEffect(() => {
    document.title = title;
    return () => {
      document.title = commonWords.program;
    };
  }, [title]);
}

function useAppearance(): void {
  const appearance = useHost((host) => host.settings.appearance);
  useEffect(() => {
    const root = document.documentElement;
    if (appearance === 'system') delete root.dataset.theme;
    else root.dataset.theme = appearance;
  }, [appearance]);
}

/** A file dropped anywhere on the window is opened or previewed. */
function useDroppedFiles(): void {
  useEffect(() => {
    const accept = (event: DragEvent) => {
      if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
    };
    const drop = (event: DragEvent) => {
      const file = event.dataTransfer?.files[0];
      if (file === undefined) return;
      event.preventDefault();
      takeDroppedFile(file).catch(() => undefined);
    };
    window.addEventListener('dragover', accept);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', accept);
      window.removeEventListener('drop', drop);
    };
  }, []);
}

function NoHostPage({ fault }: { readonly fault: NoHost }) {
  return (
    <main className="starting">
      <h1>{commonWords.program}</h1>
      <p>{fault.kind === 'no-token' ? appWords.app.noKey : appWords.app.noAnswer}</p>
    </main>
  );
}
