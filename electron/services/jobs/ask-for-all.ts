import type { Book } from '../../../core/book/index.ts';
import { farthestFt, measureProperty, standsFor } from '../../../core/measure/index.ts';
import type { PassesOf } from '../../../core/passes/index.ts';
import { fitTable } from '../../../core/reach/index.ts';

/** Asks for the passes that any table or quote about the properties of a book may need. */
export function askForAll(book: Book, passes: PassesOf): void {
  const measures = book.properties.map((each) => measureProperty(each));
  for (const treatment of book.treatments) {
    fitTable(book, measures, treatment, null, { farthestFt, stands: standsFor, treatedSqFt: () => 0, passes });
  }
}
