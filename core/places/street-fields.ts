/** What is asked of a street file, and the names that files give it, in capitals without marks. */
const FIELD_NAMES = {
  street: ['FULLNAME', 'STREET', 'FULLSTREET', 'STREETNAME', 'STNAME', 'ROADNAME', 'NAME'],
  leftFrom: ['LFROMADD', 'LFROMHN', 'LFROM', 'FROMADDRL', 'LFADD', 'LEFTFROM', 'FROMLEFT'],
  leftTo: ['LTOADD', 'LTOHN', 'LTO', 'TOADDRL', 'LTADD', 'LEFTTO', 'TOLEFT'],
  rightFrom: ['RFROMADD', 'RFROMHN', 'RFROM', 'FROMADDRR', 'RFADD', 'RIGHTFROM', 'FROMRIGHT'],
  rightTo: ['RTOADD', 'RTOHN', 'RTO', 'TOADDRR', 'RTADD', 'RIGHTTO', 'TORIGHT'],
  zipLeft: ['ZIPL', 'ZIPLEFT', 'LZIP', 'LEFTZIP', 'POSTCODEL'],
  zipRight: ['ZIPR', 'ZIPRIGHT', 'RZIP', 'RIGHTZIP', 'POSTCODER'],
} as const;

type FieldName = keyof typeof FIELD_NAMES;

/** A reader of one feature's fields, whatever the file calls them; undefined for what is not there. */
export function fieldReader(properties: unknown): (name: FieldName) => unknown {
  const fields = new Map<string, unknown>();
  if (typeof properties === 'object' && properties !== null) {
    for (const [name, value] of Object.entries(properties)) {
      fields.set(name.toUpperCase().replace(/[^A-Z]/g, ''), value);
    }
  }
  return (name) => {
    const known = FIELD_NAMES[name].find((each) => fields.has(each));
    return known === undefined ? undefined : fields.get(known);
  };
}

/** A house number from a figure or the beginning of a text; null for none. City files write -1 or 0 where there is none. */
export function houseNumber(value: unknown): number | null {
  const number = typeof value === 'number' ? value : Number.parseInt(String(value ?? ''), 10);
  return Number.isInteger(number) && number > 0 && number < 1_000_000 ? number : null;
}

/** Five figures of a ZIP; empty where there is none. */
export function zipOf(value: unknown): string {
  return /^\d{5}/.exec(String(value ?? '').trim())?.[0] ?? '';
}
