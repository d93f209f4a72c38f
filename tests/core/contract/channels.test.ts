import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import {
  CHANNEL_NAMES,
  channels,
  connectHost,
  EVENT_NAMES,
  isChannelName,
  isEventName,
} from '../../../core/contract/index.ts';

describe('the contract', () => {
  test.each(CHANNEL_NAMES)('%s checks its request and never throws', (name) => {
    const schema = channels[name].request as v.GenericSchema;
    expect(v.safeParse(schema, { nonsense: true }).success).toBe(false);
    fc.assert(
      fc.property(fc.anything(), (request) => {
        v.safeParse(schema, request);
      }),
      { numRuns: 50 },
    );
  });

  test('knows its own names and no others', () => {
    expect(isChannelName('book.apply')).toBe(true);
    for (const name of ['toString', '__proto__', 'book.burn', 7, null]) expect(isChannelName(name)).toBe(false);
    for (const name of EVENT_NAMES) expect(isEventName(name)).toBe(true);
    expect(isEventName('constructor')).toBe(false);
  });
});

describe('a host at the end of a line', () => {
  function line() {
    const sent: { readonly id: number; readonly channel: string }[] = [];
    let receive: (text: string) => void = () => undefined;
    let close: (reason: string) => void = () => undefined;
    const host = connectHost({
      send: (text) => sent.push(JSON.parse(text) as { id: number; channel: string }),
      onText: (handler) => {
        receive = handler;
      },
      onClosed: (handler) => {
        close = handler;
      },
    });
    return {
      host,
      sent,
      receive: (message: unknown) => receive(JSON.stringify(message)),
      close: (reason: string) => close(reason),
    };
  }

  test('gives each answer to its own question, in any order', async () => {
    const { host, sent, receive } = line();
    const first = host.call('samples.list', {});
    const second = host.call('book.recent', {});
    receive({ id: sent[1]?.id, result: { ok: true, value: ['second'] } });
    receive({ id: sent[0]?.id, result: { ok: true, value: ['first'] } });
    expect([await first, await second]).toEqual([
      { ok: true, value: ['first'] },
      { ok: true, value: ['second'] },
    ]);
  });

  test('fails every open question when the line goes, and tells listeners', async () => {
    const { host, close } = line();
    let reason = '';
    host.on('host.lost', (lost) => {
      reason = lost.reason;
    });
    const open = host.call('samples.list', {});
    close('cable');
    expect(await open).toMatchObject({ ok: false, error: { code: 'host-lost' } });
    expect(await host.call('samples.list', {})).toMatchObject({ ok: false, error: { code: 'host-lost' } });
    expect(reason).toBe('cable');
  });

  test('stops telling a listener that has gone', () => {
    const { host, receive } = line();
    let heard = 0;
    const stop = host.on('book.saved', () => {
      heard += 1;
    });
    const event = { event: 'book.saved', payload: { session: 's', revision: 1, savedAt: '' } };
    receive(event);
    stop();
    receive(event);
    expect(heard).toBe(1);
  });
});
