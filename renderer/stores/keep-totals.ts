import type { Book, Property } from '../../core/book/index.ts';
import type { Action } from '../../core/edit/index.ts';
import { withPastMeasure } from '../../core/measure/index.ts';
import { measureOf } from './measures.ts';

/**
 * The edit with the earlier total of its lawn kept, where it changes the ground of one property: by hand on the map, in a
 * table, or by a fix. An edit that brings a date or an earlier total of its own stays as it is.
 */
export function keepTotals(book: Book, action: Action, today: string): Action {
  if (action.kind !== 'put' || action.table !== 'properties') return action;
  const after = action.record as Property;
  const before = book.properties.find((each) => each.id === after.id) ?? null;
  if (before !== null && (isSameGround(before, after) || bringsItsOwn(before, after))) return action;
  const record = isMeasurable(after) ? withPastMeasure(before, after, today, measureOf) : after;
  return record === after ? action : { ...action, record };
}

function isSameGround(before: Property, after: Property): boolean {
  return before.zones === after.zones && before.exclusions === after.exclusions;
}

function bringsItsOwn(before: Property, after: Property): boolean {
  return before.measuredOn !== after.measuredOn || before.pastMeasures !== after.pastMeasures;
}

/** A record that no schema has seen yet is left to the edit, which refuses it with its reason. */
function isMeasurable(property: Property): boolean {
  return Array.isArray(property.zones) && Array.isArray(property.exclusions);
}
