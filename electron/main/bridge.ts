import { randomBytes } from 'node:crypto';
import { type IpcMainInvokeEvent, ipcMain, type WebContents } from 'electron';
import { err, type Result } from '../../core/base/index.ts';
import { IPC_CALL, IPC_EVENT } from '../../core/contract/index.ts';
import type { Client, Services } from '../services/index.ts';
import { isOwnPage } from './address.ts';

/** Joins windows to the services: each page that is loaded is a client of its own, whose books close when it goes. */
export type Bridge = {
  readonly attach: (contents: WebContents) => void;
  readonly contentsOf: (client: Client) => WebContents | null;
};

export function createBridge(services: () => Services): Bridge {
  const clients = new Map<WebContents, Client>();

  const greet = (contents: WebContents): void => {
    const client: Client = {
      id: randomBytes(12).toString('base64url'),
      send: (name, payload) => {
        if (!contents.isDestroyed()) contents.send(IPC_EVENT, name, payload);
      },
    };
    clients.set(contents, client);
    services().connect(client);
  };
  const part = (contents: WebContents): void => {
    const client = clients.get(contents);
    clients.delete(contents);
    if (client !== undefined) void services().disconnect(client.id);
  };

  ipcMain.handle(IPC_CALL, (event, channel: unknown, request: unknown): Promise<Result<unknown>> | Result<never> => {
    const client = clients.get(event.sender);
    if (client === undefined || !fromOwnPage(event)) {
      services().log('warn', 'window', 'foreign-call-refused');
      return err('not-allowed', 'window', 'This page may not use the program.', 'Close this page.');
    }
    return services().call(client, channel, request);
  });
  return {
    attach: (contents) => {
      greet(contents);
      contents.on('did-start-navigation', (details) => {
        if (!details.isMainFrame || details.isSameDocument) return;
        part(contents);
        greet(contents);
      });
      contents.on('destroyed', () => part(contents));
    },
    contentsOf: (client) => [...clients].find(([, known]) => known.id === client.id)?.[0] ?? null,
  };
}

/** Only the window's top frame, and only while it shows our own page, may call. */
function fromOwnPage(event: IpcMainInvokeEvent): boolean {
  const frame = event.senderFrame;
  return frame !== null && frame === event.sender.mainFrame && isOwnPage(frame.url);
}
