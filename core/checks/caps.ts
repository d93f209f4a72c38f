import { issue } from '../base/index.ts';
import { activeNames, unweighed } from '../round/ledger/index.ts';
import { named, type Rule } from './rule.ts';

/** Caps that cannot do what they are entered for: on an ingredient that no product names, or on nutrients of which some are not counted. */
export const idleCaps: Rule = {
  code: 'cap-idle',
  find: (book) => {
    const known = new Set(activeNames(book).map((each) => each.trim().toLowerCase()));
    const actives = book.caps.filter(
      (each) => each.what === 'active' && !known.has((each.active ?? '').trim().toLowerCase()),
    );
    const nutrients = book.caps.some((each) => each.what !== 'active');
    return [
      ...actives.map(({ id, active }) =>
        issue(
          'warning',
          'cap-idle',
          `cap ${active === undefined || active.trim() === '' ? id : active}`,
          'No product of the shed holds this active ingredient, so the cap holds nothing back. Enter it with the products, spelled alike.',
        ),
      ),
      ...(nutrients ? unweighed(book) : []).map((product) =>
        issue(
          'warning',
          'cap-idle',
          named('product', product),
          'It is measured in fluid ounces and the weight of a gallon is not entered, so its nutrients count against no cap. Enter the weight from the label.',
        ),
      ),
    ];
  },
};
