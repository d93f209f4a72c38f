import {
  connectHost,
  type Host,
  OPENING_KEY,
  OPENING_PATH,
  TOKEN_KEY,
  TOKEN_PREFIX,
  WIRE_PATH,
  WIRE_PROTOCOL,
  type Wire,
} from '../../core/contract/index.ts';

declare global {
  interface Window {
    /** Put there by the desktop shell; absent in a browser. */
    readonly swardway?: Host;
  }
}

/** Why there is no host, in words for the page. */
export type NoHost = { readonly kind: 'no-token' } | { readonly kind: 'refused' };
export type HostFound = { readonly kind: 'host'; readonly host: Host } | NoHost;

/** The desktop shell's host where there is one, else the loopback host that served this page. */
export async function findHost(): Promise<HostFound> {
  if (window.swardway !== undefined) return { kind: 'host', host: window.swardway };
  const token = await takeToken();
  if (token === null) return { kind: 'no-token' };
  const wire = await openWire(token);
  return wire === null ? { kind: 'refused' } : { kind: 'host', host: connectHost(wire) };
}

/** Moves the token, or the code that stands for it, out of the address, so that it is not copied along with it, and keeps it for a reload. */
async function takeToken(): Promise<string | null> {
  const fragment = new URLSearchParams(window.location.hash.slice(1));
  const code = fragment.get(OPENING_KEY);
  const token = fragment.get(TOKEN_KEY) ?? (code === null ? null : await redeem(code));
  if (token === null) return window.sessionStorage.getItem(TOKEN_KEY);
  window.sessionStorage.setItem(TOKEN_KEY, token);
  fragment.delete(TOKEN_KEY);
  fragment.delete(OPENING_KEY);
  const rest = fragment.toString();
  window.history.replaceState(null, '', `${window.location.pathname}${rest === '' ? '' : `#${rest}`}`);
  return token;
}

async function redeem(code: string): Promise<string | null> {
  const answer = await fetch(OPENING_PATH, { method: 'POST', body: code }).catch(() => null);
  return answer?.ok === true ? answer.text() : null;
}

function openWire(token: string): Promise<Wire | null> {
  const address = new URL(WIRE_PATH, window.location.href);
  address.protocol = address.protocol === 'https:' ? 'wss:' : 'ws:';
  address.hash = '';
  const socket = new WebSocket(address, [WIRE_PROTOCOL, `${TOKEN_PREFIX}${token}`]);
  return new Promise((settle) => {
    socket.addEventListener('open', () => settle(wireOver(socket)), { once: true });
    socket.addEventListener('error', () => settle(null), { once: true });
  });
}

function wireOver(socket: WebSocket): Wire {
  return {
    send: (text) => socket.send(text),
    onText: (receive) => {
      socket.addEventListener('message', (event) => {
        if (typeof event.data === 'string') receive(event.data);
      });
    },
    onClosed: (closed) => {
      socket.addEventListener('close', () => closed('the connection was closed'), { once: true });
    },
  };
}
