import { err, ok } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import type { ReckonedPasses } from '../../../core/contract/index.ts';
import { treatableGround } from '../../../core/measure/index.ts';
import { keepFigures, knownPassesWith } from '../../../core/passes/index.ts';
import { askForAll } from './ask-for-all.ts';
import { answered, type Errand, sendErrand } from './errand.ts';
import type { PassesMessage, PassesOrder } from './messages.ts';

/**
 * Figures of the passes over a property by every head that gets onto its zones, whoever carries it. What is not known yet is reckoned in
 * a thread of its own, and kept in this process too. Error: `reference-missing`.
 */
export function reckonPasses(workerFile: string, book: Book, propertyId: string): Errand<ReckonedPasses> {
  const property = book.properties.find((each) => each.id === propertyId);
  if (property === undefined) {
    return answered(
      err('reference-missing', `property ${propertyId}`, 'There is no such property.', 'Choose another one.'),
    );
  }
  const part: Book = { ...book, properties: [property], rounds: [] };
  const known = knownPassesWith(treatableGround);
  askForAll(part, known.passes);
  if (known.isComplete()) return answered(ok({ figures: known.asked() }));
  const stopFlag = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  const order: PassesOrder = { passesOf: part, figures: known.asked(), stopFlag };
  return sendErrand(workerFile, order, ({ figures }: PassesMessage) => {
    keepFigures(figures);
    return ok({ figures });
  });
}
