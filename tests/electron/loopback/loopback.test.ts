import { mkdtempSync, rmSync } from 'node:fs';
import { request } from 'node:http';
import { connect } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { JobDone, JobProgress, OpenBook, ResponseOf } from '../../../core/contract/index.ts';
import { judgePlan } from '../../../core/plan/judge/index.ts';
import { buildIfStale } from '../../support/build-first.ts';
import { problemOf } from '../../support/samples.ts';
import { joinHost, knock, type RunningHost, startHost } from './host.ts';

let home = '';
let running: RunningHost;

beforeAll(async () => {
  buildIfStale();
  home = mkdtempSync(path.join(tmpdir(), 'swardway-home-'));
  running = await startHost(home);
}, 60_000);

afterAll(async () => {
  await running?.stop();
  rmSync(home, { recursive: true, force: true });
});

type Answer = {
  readonly status: number;
  readonly headers: Record<string, string | string[] | undefined>;
  readonly body: string;
};

function ask(target: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Answer> {
  return new Promise((done, fail) => {
    const asked = request({ host: '127.0.0.1', port: running.port, path: target, method, headers }, (response) => {
      let body = '';
      response.setEncoding('utf8').on('data', (piece: string) => {
        body += piece;
      });
      response.on('end', () => done({ status: response.statusCode ?? 0, headers: response.headers, body }));
    });
    asked.on('error', fail);
    asked.end();
  });
}

describe('the loopback host', () => {
  test('says in one plain line where it is, with a token of 32 bytes', () => {
    expect(running.printed()).toMatch(/^.*http:\/\/127\.0\.0\.1:\d+\/#token=[\w-]{43}$/m);
    expect(running.printed()).not.toMatch(/at .*\.c?js:\d+/);
  });

  test('serves the screens with a policy that runs no foreign script', async () => {
    const { status, headers, body } = await ask('/');
    expect(status).toBe(200);
    expect(body).toContain('<div id="root">');
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("script-src 'self';");
    expect(policy).toContain("default-src 'none'");
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['cross-origin-opener-policy']).toBe('same-origin');
  });

  test.each([
    ['/../package.json'],
    ['/..%2f..%2fpackage.json'],
    ['/%2e%2e/%2e%2e/package.json'],
    ['/assets/../../electron/main.cjs'],
    ['/..\\..\\package.json'],
    ['/%00'],
    ['/%'],
  ])('gives nothing outside the screens: %s', async (target) => {
    const { status, body } = await ask(target);
    expect([403, 404]).toContain(status);
    expect(body.length).toBeLessThan(100);
  });

  test('refuses a request that names another host, and methods that change things', async () => {
    expect((await ask('/', { Host: 'evil.example' })).status).toBe(403);
    expect((await ask('/', { Host: `localhost:${running.port}` })).status).toBe(403);
    expect((await ask('/', {}, 'POST')).status).toBe(405);
  });

  test('cannot be reached from any other address of this machine', async (context) => {
    const others = Object.values(networkInterfaces()).flatMap((list) =>
      (list ?? []).filter((each) => !each.internal && each.family === 'IPv4'),
    );
    if (others.length === 0) context.skip('this machine has no address but the loopback one');
    for (const { address } of others) {
      const reached = await new Promise<boolean>((done) => {
        const socket = connect({ host: address, port: running.port, timeout: 1500 });
        socket
          .once('connect', () => done(true))
          .once('error', () => done(false))
          .once('timeout', () => done(false));
        setTimeout(() => socket.destroy(), 1600);
      });
      expect(reached).toBe(false);
    }
  });
});

describe('its wire opens only to its own page', () => {
  test.each([
    ['a wrong token', { token: 'x'.repeat(43) }],
    ['a token that is too short', { token: 'x' }],
    ['another origin', { origin: 'http://evil.example' }],
    ['the name localhost as origin', { origin: 'http://localhost' }],
    ['another host name', { host: 'evil.example' }],
    ['another path', { path: '/other' }],
    ['another protocol', { protocol: 'chat' }],
  ])('%s is refused with 403', async (_name, how) => {
    expect(await knock(running, how)).toBe(403);
  });

  test('what is no request of the contract ends the line', async () => {
    const socket = await knock(running);
    if (typeof socket === 'number') throw new Error('refused');
    const closed = new Promise<number>((done) => socket.once('close', (code) => done(code)));
    socket.send('{"id":0}');
    expect(await closed).toBe(1008);
  });
});

function must<T>(
  answer:
    | { readonly ok: true; readonly value: T }
    | { readonly ok: false; readonly error: { readonly detail: string } },
): T {
  if (!answer.ok) throw new Error(answer.error.detail);
  return answer.value;
}

describe('a screen at the other end', () => {
  test('opens a sample, stores an edit, plans it with progress, and finds all of it again', {
    timeout: 60_000,
  }, async () => {
    const { host, leave } = await joinHost(running);
    const samples = must(await host.call('samples.list', {}));
    expect(samples.map((each) => each.sampleId)).toContain('residential-day');
    const opened: OpenBook = must(await host.call('book.openSample', { sampleId: 'residential-day' }));
    expect(opened.book.properties.length).toBe(28);

    const record = { ...opened.book.rigs[0]!, name: 'Rig Renamed' };
    const { session, token } = opened;
    const saved = must(
      await host.call('book.apply', {
        session,
        action: { kind: 'put', table: 'rigs', record },
        baseRevision: opened.revision,
      }),
    );
    expect(saved.revision).toBe(opened.revision + 1);
    const stale = await host.call('book.apply', {
      session,
      action: { kind: 'put', table: 'rigs', record },
      baseRevision: opened.revision,
    });
    expect(stale).toMatchObject({ ok: false, error: { code: 'book-changed' } });

    const progress: JobProgress[] = [];
    host.on('job.progress', (each) => progress.push(each));
    const finished = new Promise<JobDone>((done, fail) => {
      host.on('job.done', done);
      host.on('job.failed', (each) => fail(new Error(each.error.detail)));
    });
    must(await host.call('job.startPlan', { session, roundId: 'spring', seed: 1, seconds: 1.5 }));
    const { plan, cancelled } = await finished;
    expect(cancelled).toBe(false);
    expect(plan.totals.stops).toBe(28);
    expect(plan.days[0]?.rigName).toBe('Rig Renamed');
    expect(progress.length).toBeGreaterThan(2);
    for (const step of new Set(progress.map((each) => each.step))) {
      const done = progress.filter((each) => each.step === step).map((each) => each.done);
      expect(done, step).toEqual(done.toSorted((left, right) => left - right));
    }
    // First the passes over the lawns are reckoned, then the search begins.
    expect(progress.at(0)?.step).not.toBe('Placing stops and refills');
    expect(progress.at(-1)?.step).toBe('Placing stops and refills');
    const verdict = judgePlan(problemOf({ ...opened.book, rigs: [record] }), plan);
    expect(verdict.violations).toEqual([]);

    must(await host.call('book.close', { session }));
    const again: OpenBook = must((await host.call('book.open', { token })) as { ok: true; value: OpenBook });
    expect(again.book.rigs[0]?.name).toBe('Rig Renamed');
    expect(again.plans[0]?.plan.totals.stops).toBe(28);
    leave();
  });

  test('stops a long plan at once and keeps the best so far', { timeout: 60_000 }, async () => {
    const { host, leave } = await joinHost(running);
    const opened: ResponseOf<'book.openSample'> = must(
      await host.call('book.openSample', { sampleId: 'four-day-round' }),
    );
    const finished = new Promise<JobDone>((done) => void host.on('job.done', done));
    const improving = new Promise<void>((done) => {
      host.on('job.progress', (each) => {
        if (each.step === 'Placing stops and refills' && each.done > 0) done();
      });
    });
    const { jobId } = must(
      await host.call('job.startPlan', { session: opened.session, roundId: 'spring', seed: 1, seconds: 300 }),
    );
    await improving;
    must(await host.call('job.cancel', { jobId }));
    const { plan, cancelled } = await finished;
    expect(cancelled).toBe(true);
    expect(plan.totals.stops).toBeGreaterThan(0);
    leave();
  });

  test('is told what was wrong with a request, by code', async () => {
    const { host, leave } = await joinHost(running);
    const call = host.call as unknown as (name: string, request: unknown) => Promise<unknown>;
    expect(await call('book.burn', {})).toMatchObject({ ok: false, error: { code: 'request-invalid' } });
    expect(await call('book.apply', { session: 1 })).toMatchObject({ ok: false, error: { code: 'request-invalid' } });
    expect(await call('book.read', { session: 'none' })).toMatchObject({ ok: false });
    leave();
  });
});

test('ends cleanly when it is told to', async () => {
  const other = await startHost(path.join(home, 'second'), [], 'dist/electron/start.cjs');
  expect(await other.stop()).toBe(0);
  expect(other.printed()).toMatch(/browser/);
  expect(other.printed()).not.toMatch(/Error| {4}at /);
});
