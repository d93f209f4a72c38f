import type { ApplicationRecord } from '../../book/index.ts';
import { type Draft, differences } from '../../records/index.ts';
import { RECORDS } from '../texts/index.ts';

/** In what the book differs from a kept record by now; '' where it does not. */
export function differencesWords(kept: ApplicationRecord, draft: Draft): string {
  return differences(kept, draft)
    .map(({ words, product, before, after }) =>
      RECORDS.difference(RECORDS.ofProduct(words, product), before || RECORDS.nothing, after || RECORDS.nothing),
    )
    .join('; ');
}
