import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openDesk } from '../../../../electron/services/roads/index.ts';

const PATIENCE_MS = 200;

/** A thread that never answers, or one that takes four times the patience but looks every 10 ms whether it is to stop. */
const WORKER = `
const { parentPort, workerData } = require('node:worker_threads');
const flags = new Int32Array(workerData.reins);
parentPort.on('message', ({ id }) => {
  if (workerData.where === 'stuck.roads') for (;;);
  const timer = setInterval(() => Atomics.add(flags, 1, 1), 10);
  setTimeout(() => {
    clearInterval(timer);
    parentPort.postMessage({ id, result: { ok: true, value: 'answered' } });
  }, ${4 * PATIENCE_MS});
});`;

let folder = '';
let workerFile = '';
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-desk-'));
  workerFile = path.join(folder, 'worker.cjs');
  await writeFile(workerFile, WORKER);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

describe('a thread that answers about roads', () => {
  it('is given up when it is stuck: whoever waits is told, and so is whoever keeps it', async () => {
    let ended = 0;
    const onEnd = (): void => {
      ended += 1;
    };
    const desk = openDesk(workerFile, 'stuck.roads', { patienceMs: PATIENCE_MS, onEnd });
    const [first, second] = await Promise.all([desk.ask({ kind: 'about' }), desk.ask({ kind: 'about' })]);
    for (const told of [first, second]) {
      expect(told).toMatchObject({ ok: false, error: { code: 'internal', where: 'stuck.roads' } });
      expect(told.ok ? '' : told.error.detail).toContain('does not answer');
    }
    expect(ended).toBe(1);
    expect(await desk.ask({ kind: 'about' })).toEqual(first);
  });

  it('may take its time as long as it gives signs of life', async () => {
    const desk = openDesk(workerFile, 'slow.roads', { patienceMs: PATIENCE_MS });
    expect(await desk.ask({ kind: 'about' })).toEqual({ ok: true, value: 'answered' });
    desk.end();
  });
});
