import { Worker } from 'node:worker_threads';
import { err, ok, type Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import type { PassDrawing } from '../../../core/contract/index.ts';
import { directionOptions, passHeadOf } from '../../../core/passes/index.ts';
import { gaveNoPlan, workerFault } from './failures.ts';
import type { DrawMessage, DrawOrder, DrawWish } from './messages.ts';

/** Which passes a screen asks for. */
export type DrawRequest = {
  readonly propertyId: string;
  readonly zoneId: string;
  readonly machineId: string;
  readonly headId: string;
};

/**
 * Lays the passes of a head over a zone in a thread of its own. Settles once, never rejects. A picture of null: the zone has no
 * outline with turf. Errors: `reference-missing` where book, zone or head is not there, `nothing-to-do` where the book does not say
 * how the head is driven, and those of the passes.
 */
export async function drawPasses(workerFile: string, book: Book, asked: DrawRequest): Promise<Result<PassDrawing>> {
  const wish = wishOf(book, asked);
  if (!wish.ok) return wish;
  const order: DrawOrder = { draw: wish.value, stopFlag: new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT) };
  const worker = new Worker(workerFile, { workerData: order });
  return new Promise((settle) => {
    const finish = (result: Result<PassDrawing>): void => {
      settle(result);
      void worker.terminate();
    };
    worker.on('message', ({ result }: DrawMessage) => finish(result));
    worker.on('error', (error) => finish({ ok: false, error: workerFault(error.message) }));
    worker.on('exit', () => finish(gaveNoPlan()));
  });
}

function wishOf(book: Book, { propertyId, zoneId, machineId, headId }: DrawRequest): Result<DrawWish> {
  const property = book.properties.find((each) => each.id === propertyId);
  const zone = property?.zones.find((each) => each.id === zoneId);
  if (property === undefined || zone === undefined) {
    return err(
      'reference-missing',
      `property ${propertyId}, zone ${zoneId}`,
      'There is no such zone.',
      'Choose another one.',
    );
  }
  const machine = book.machines.find((each) => each.id === machineId);
  const head = machine?.heads.find((each) => each.id === headId);
  if (machine === undefined || head === undefined) {
    return err(
      'reference-missing',
      `machine ${machineId}, head ${headId}`,
      'There is no such head.',
      'Choose another one.',
    );
  }
  const where = `${zone.name}, ${machine.name}, ${head.name}`;
  const passHead = passHeadOf(head);
  if (passHead === null) {
    const hint = 'Say in the Shed how it is driven: overlap, trim passes and turns.';
    return err('nothing-to-do', where, 'The book does not say how this head is driven.', hint);
  }
  return ok({
    property,
    zoneId,
    head: passHead,
    options: directionOptions(zone, head.passes ?? null),
    slopeDeg: zone.slopeDeg,
    where,
  });
}
