import type { Issue } from '../base/index.ts';
import type { Book, Property } from '../book/index.ts';
import type { Action } from '../edit/index.ts';

/** A safe way to put something right, offered and never done by itself. */
export type Fix = {
  /** What it does, for a button: "Clip to the parcel". */
  readonly label: string;
  /** The edit on the book as it is when somebody asks for it; null where there is nothing to put right any more. */
  readonly action: (book: Book) => Action | null;
};

/** An issue with the lawn it is about and, where there is a safe one, its fix. */
export type Finding = Issue & { readonly propertyId?: string; readonly fix?: Fix };

/** One invariant of a book. `find` never throws; what it finds is listed, and the book stays as it is. */
export type Rule = {
  /** Stable name, kebab-case; the code of its issues. */
  readonly code: string;
  readonly find: (book: Book) => readonly Finding[];
  /**
   * Finds out beforehand, in small steps, what `find` would otherwise find out in one long one, and keeps it: for a window that has to draw
   * between the steps. Absent: `find` is quick in any book.
   */
  readonly prepare?: (book: Book) => Generator<undefined, void, undefined>;
};

/** What a rule needs to know of the book beside one property. */
export type Units = Book['units'];

/**
 * A rule that looks at one property at a time. Properties never change, so what was found in one is kept as long as it lives:
 * after an edit only the changed one is looked at again.
 */
export function propertyRule(code: string, find: (property: Property, units: Units) => readonly Finding[]): Rule {
  const known = {
    us: new WeakMap<Property, readonly Finding[]>(),
    metric: new WeakMap<Property, readonly Finding[]>(),
  };
  const foundIn = (property: Property, units: Units): readonly Finding[] => {
    const of = known[units];
    const before = of.get(property);
    if (before !== undefined) return before;
    const found = find(property, units);
    of.set(property, found);
    return found;
  };
  return {
    code,
    find: (book) => book.properties.flatMap((property) => foundIn(property, book.units)),
    prepare: function* (book) {
      for (const property of book.properties) {
        if (known[book.units].has(property)) continue;
        foundIn(property, book.units);
        yield;
      }
    },
  };
}

/** A record as it is named in issues: "rig Rig North". */
export function named(what: string, record: { readonly id: string; readonly name: string }): string {
  return `${what} ${record.name === '' ? record.id : record.name}`;
}

/** A fix that changes one property; `change` gives null where the property has nothing to put right. */
export function propertyFix(label: string, propertyId: string, change: (property: Property) => Property | null): Fix {
  return {
    label,
    action: (book) => {
      const property = book.properties.find((each) => each.id === propertyId);
      const record = property === undefined ? null : change(property);
      return record === null ? null : { kind: 'put', table: 'properties', record, label };
    },
  };
}

/** A property with one of its drawn zones given another outline. */
export function withOutline(
  property: Property,
  zoneId: string,
  change: (geometry: NonNullable<Property['parcel']>) => NonNullable<Property['parcel']> | null,
): Property | null {
  let changed = false;
  const zones = property.zones.map((zone) => {
    if (zone.id !== zoneId || zone.shape.kind !== 'drawn') return zone;
    const geometry = change(zone.shape.geometry);
    if (geometry === null) return zone;
    changed = true;
    return { ...zone, shape: { ...zone.shape, geometry } };
  });
  return changed ? { ...property, zones } : null;
}
