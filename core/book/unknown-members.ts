/** A member that the schema does not know: its path, for instance "properties[3].colour". */
export type UnknownMember = { readonly path: string };

type Members = Record<string, unknown>;

/**
 * Puts back what the schema left out: members of records that it does not know. Both values have the same shape otherwise.
 * A newer version or another tool may have written them; they survive reading and writing.
 *
 * @param raw what was parsed from the file
 * @param parsed what the schema made of it; changed in place, since it belongs to the reader alone
 */
export function keepUnknownMembers(raw: unknown, parsed: unknown, path = ''): readonly UnknownMember[] {
  const found: UnknownMember[] = [];
  visit(raw, parsed, path, found);
  return found;
}

function visit(raw: unknown, parsed: unknown, path: string, found: UnknownMember[]): void {
  if (raw === parsed) {
    return;
  }
  if (Array.isArray(raw) && Array.isArray(parsed)) visitList(raw, parsed, path, found);
  else if (isRecord(raw) && isRecord(parsed)) visitRecord(raw, parsed, path, found);
}

function visitList(raw: readonly unknown[], parsed: readonly unknown[], path: string, found: UnknownMember[]): void {
  if (typeof raw[0] === 'number' || isPositionList(raw)) return;
  for (const [index, item] of raw.entries()) visit(item, parsed[index], `${path}[${index}]`, found);
}

function visitRecord(raw: Members, parsed: Members, path: string, found: UnknownMember[]): void {
  for (const [key, value] of Object.entries(raw)) {
    const place = path === '' ? key : `${path}.${key}`;
    if (Object.hasOwn(parsed, key)) {
      visit(value, parsed[key], place, found);
    } else if (key !== '__proto__' && value !== undefined) {
      parsed[key] = value;
      found.push({ path: place });
    }
  }
}

/** Rings hold nothing that could be unknown, and are most of a book. */
function isPositionList(raw: readonly unknown[]): boolean {
  const first: unknown = raw[0];
  return Array.isArray(first) && typeof first[0] === 'number';
}

function isRecord(value: unknown): value is Members {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
