import { describe, expect, test } from 'vitest';
import { connectHost, type Wire } from '../../../core/contract/index.ts';

/** A wire whose other end is the test. */
function testWire() {
  const sent: { readonly id: number; readonly channel: string; readonly request: unknown }[] = [];
  let receive: (text: string) => void = () => undefined;
  let closed: (reason: string) => void = () => undefined;
  const wire: Wire = {
    send: (text) => {
      sent.push(JSON.parse(text));
    },
    onText: (handler) => {
      receive = handler;
    },
    onClosed: (handler) => {
      closed = handler;
    },
  };
  return {
    wire,
    sent,
    say: (message: unknown) => receive(JSON.stringify(message)),
    close: (reason: string) => closed(reason),
  };
}

describe('a host at the other end of a wire', () => {
  test('gives each answer to the request with its number, in whatever order they come', async () => {
    const { wire, sent, say } = testWire();
    const host = connectHost(wire);
    const first = host.call('samples.list', {});
    const second = host.call('book.recent', {});
    expect(sent.map(({ channel }) => channel)).toEqual(['samples.list', 'book.recent']);
    say({ id: sent[1]?.id, result: { ok: true, value: ['second'] } });
    say({ id: sent[0]?.id, result: { ok: true, value: ['first'] } });
    expect(await first).toEqual({ ok: true, value: ['first'] });
    expect(await second).toEqual({ ok: true, value: ['second'] });
  });

  test('tells events to those who listen, and to nobody after they stopped', () => {
    const { wire, say } = testWire();
    const host = connectHost(wire);
    const heard: unknown[] = [];
    const stop = host.on('book.saved', (payload) => heard.push(payload));
    const payload = { session: 'a', revision: 1, savedAt: '' };
    say({ event: 'book.saved', payload });
    say({ event: 'book.changed', payload: { session: 'a', revision: 2 } });
    say({ event: 'no.such.event', payload });
    stop();
    say({ event: 'book.saved', payload });
    expect(heard).toEqual([payload]);
  });

  test('fails open and later requests once the wire is gone, and says so', async () => {
    const { wire, close } = testWire();
    const host = connectHost(wire);
    const lost: string[] = [];
    host.on('host.lost', ({ reason }) => lost.push(reason));
    const open = host.call('app.info', {});
    close('the program was ended');
    expect(await open).toMatchObject({ ok: false, error: { code: 'host-lost' } });
    expect(await host.call('app.info', {})).toMatchObject({ ok: false, error: { code: 'host-lost' } });
    expect(lost).toEqual(['the program was ended']);
  });

  test('passes over answers that nobody waits for', () => {
    const { wire, say } = testWire();
    connectHost(wire);
    expect(() => {
      say({ id: 99, result: { ok: true, value: 1 } });
      say(null);
      say('text');
    }).not.toThrow();
  });
});
