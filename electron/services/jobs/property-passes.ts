import { Worker } from 'node:worker_threads';
import { err, ok, type Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import type { ReckonedPasses } from '../../../core/contract/index.ts';
import { treatableGround } from '../../../core/measure/index.ts';
import { keepFigures, knownPassesWith } from '../../../core/passes/index.ts';
import { askForAll } from './ask-for-all.ts';
import { gaveNoPlan, workerFault } from './failures.ts';
import type { PassesMessage, PassesOrder } from './messages.ts';

/**
 * Figures of the passes over a property by every head that gets onto its zones, whoever carries it. What is not known yet is reckoned in
 * a thread of its own, and kept in this process too. Settles once, never rejects. Error: `reference-missing`.
 */
export async function reckonPasses(
  workerFile: string,
  book: Book,
  propertyId: string,
): Promise<Result<ReckonedPasses>> {
  const property = book.properties.find((each) => each.id === propertyId);
  if (property === undefined) {
    return err('reference-missing', `property ${propertyId}`, 'There is no such property.', 'Choose another one.');
  }
  const part: Book = { ...book, properties: [property], rounds: [] };
  const known = knownPassesWith(treatableGround);
  askForAll(part, known.passes);
  if (known.isComplete()) return ok({ figures: known.asked() });
  const stopFlag = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  const order: PassesOrder = { passesOf: part, figures: known.asked(), stopFlag };
  const worker = new Worker(workerFile, { workerData: order });
  return new Promise((settle) => {
    const finish = (result: Result<ReckonedPasses>): void => {
      settle(result);
      void worker.terminate();
    };
    worker.on('message', ({ figures }: PassesMessage) => {
      keepFigures(figures);
      finish(ok({ figures }));
    });
    worker.on('error', (error) => finish({ ok: false, error: workerFault(error.message) }));
    worker.on('exit', () => finish(gaveNoPlan()));
  });
}
