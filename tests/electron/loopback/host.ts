import { type ChildProcess, spawn } from 'node:child_process';
import path from 'node:path';
import { WebSocket } from 'ws';
import { connectHost, type Host, TOKEN_PREFIX, WIRE_PATH, WIRE_PROTOCOL } from '../../../core/contract/index.ts';

/** The built loopback host, running in a process of its own. */
export type RunningHost = {
  readonly address: string;
  readonly port: number;
  readonly token: string;
  readonly process: ChildProcess;
  /** Everything that it printed so far. */
  readonly printed: () => string;
  readonly stop: () => Promise<number | null>;
};

/** Starts a bundle, dist/electron/loopback.cjs unless another is named, with its files in a folder of the test's. */
export function startHost(
  home: string,
  words: readonly string[] = [],
  bundle = 'dist/electron/loopback.cjs',
): Promise<RunningHost> {
  const child = spawn(process.execPath, [path.resolve(bundle), '--no-open', ...words], {
    env: { ...process.env, SWARDWAY_HOME: home, DISPLAY: '', WAYLAND_DISPLAY: '' },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let text = '';
  const ended = new Promise<number | null>((done) => child.once('exit', (code) => done(code)));
  return new Promise((done, fail) => {
    const timer = setTimeout(() => {
      child.kill('SIGKILL');
      fail(new Error(`no address after 20 s; it printed: ${text}`));
    }, 20_000);
    const read = (piece: string): void => {
      text += piece;
      const found = /http:\/\/127\.0\.0\.1:(\d+)\/#token=([\w-]+)/.exec(text);
      if (found === null) return;
      clearTimeout(timer);
      const [address, port, token = ''] = found;
      const stop = (): Promise<number | null> => {
        child.kill('SIGTERM');
        return ended;
      };
      done({ address, port: Number(port), token, process: child, printed: () => text, stop });
    };
    child.stdout.setEncoding('utf8').on('data', read);
    child.stderr.setEncoding('utf8').on('data', read);
    void ended.then((code) => {
      clearTimeout(timer);
      fail(new Error(`it ended with ${code} and printed: ${text}`));
    });
  });
}

export type Knock = {
  readonly token?: string;
  readonly origin?: string;
  readonly host?: string;
  readonly path?: string;
  readonly protocol?: string;
};

/** Tries to open the WebSocket; the socket, or the HTTP status of the refusal. */
export function knock(running: RunningHost, how: Knock = {}): Promise<WebSocket | number> {
  const own = `http://127.0.0.1:${running.port}`;
  const protocols = [how.protocol ?? WIRE_PROTOCOL, `${TOKEN_PREFIX}${how.token ?? running.token}`];
  const socket = new WebSocket(`ws://127.0.0.1:${running.port}${how.path ?? WIRE_PATH}`, protocols, {
    headers: { Host: how.host ?? `127.0.0.1:${running.port}` },
    origin: how.origin ?? own,
  });
  return new Promise((done, fail) => {
    socket.once('open', () => done(socket));
    socket.once('unexpected-response', (_request, response) => {
      response.destroy();
      done(response.statusCode ?? 0);
    });
    socket.once('error', (error) => fail(error));
  });
}

/** A screen at the other end of the wire, without a browser. */
export async function joinHost(running: RunningHost): Promise<{ readonly host: Host; readonly leave: () => void }> {
  const socket = await knock(running);
  if (typeof socket === 'number') throw new Error(`refused with ${socket}`);
  const host = connectHost({
    send: (text) => socket.send(text),
    onText: (receive) => socket.on('message', (data) => receive(String(data))),
    onClosed: (closed) => socket.on('close', (_code, reason) => closed(String(reason))),
  });
  return { host, leave: () => socket.close() };
}
