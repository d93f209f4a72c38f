import http from 'node:http';
import type { WebSocket } from 'ws';

/** 'open', or the status with which a WebSocket was refused. */
export function answerTo(wire: WebSocket): Promise<string> {
  return new Promise((done) => {
    wire.on('open', () => {
      wire.terminate();
      done('open');
    });
    wire.on('unexpected-response', (_request, response) => done(String(response.statusCode)));
    wire.on('error', (error) => done(error.message));
  });
}

export type Answer = { readonly status: number; readonly headers: http.IncomingHttpHeaders; readonly body: string };

/** Sends a request as it is: a browser would resolve ".." in its path by itself. */
export function ask(port: number, options: http.RequestOptions, content = ''): Promise<Answer> {
  return new Promise((done, fail) => {
    const request = http.request({ host: '127.0.0.1', port, agent: false, ...options }, (response) => {
      let body = '';
      response.on('data', (bytes: Buffer) => {
        body += bytes.toString();
      });
      response.on('end', () => done({ status: response.statusCode ?? 0, headers: response.headers, body }));
    });
    request.on('error', fail);
    request.end(content);
  });
}
