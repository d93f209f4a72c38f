import { contextBridge, type IpcRendererEvent, ipcRenderer } from 'electron';
import {
  type EventName,
  type Host,
  IPC_CALL,
  IPC_EVENT,
  isChannelName,
  isEventName,
} from '../../core/contract/index.ts';

/**
 * Runs sandboxed in its own world before the page. The page gets two functions, nothing of Electron: calls go only to channels
 * of the contract, and listeners get the payload alone, never Electron's event object.
 */
type Listener = (payload: unknown) => void;
const listeners = new Map<EventName, Set<Listener>>();

ipcRenderer.on(IPC_EVENT, (_event: IpcRendererEvent, name: unknown, payload: unknown) => {
  if (!isEventName(name)) return;
  for (const listener of listeners.get(name) ?? []) listener(payload);
});

function call(name: unknown, request: unknown): Promise<unknown> {
  if (isChannelName(name)) return ipcRenderer.invoke(IPC_CALL, name, request);
  return Promise.resolve({
    ok: false,
    error: {
      code: 'request-invalid',
      where: 'channel',
      detail: 'The host does not know this request.',
      hint: 'Reload the window.',
    },
  });
}

function on(name: unknown, handler: unknown): () => void {
  if (!isEventName(name) || typeof handler !== 'function') return () => undefined;
  const set = listeners.get(name) ?? new Set<Listener>();
  listeners.set(name, set);
  const listener: Listener = (payload) => (handler as Listener)(payload);
  set.add(listener);
  return () => {
    set.delete(listener);
  };
}

contextBridge.exposeInMainWorld('swardway', { call, on } as unknown as Host);
