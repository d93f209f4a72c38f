import { issue } from '../base/index.ts';
import { alteredVersions } from '../records/index.ts';
import type { Rule } from './rule.ts';

/** Application records that are not as they were written: another program, or somebody with an editor, was at the book. */
export const alteredRecords: Rule = {
  code: 'record-altered',
  find: (book) =>
    alteredVersions(book).map(({ record, how }) => {
      const what =
        how === 'changed'
          ? 'It was changed since it was written, outside of this program.'
          : 'The version before it is no longer in the book.';
      const message = `${what} Hold it against a copy of the book from before, and write a corrected version that says what happened.`;
      return issue('warning', 'record-altered', `application record ${record.id}`, message);
    }),
};
