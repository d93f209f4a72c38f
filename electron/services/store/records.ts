import type { Book } from '../../../core/book/index.ts';
import { TABLES, type TableName } from '../../../core/edit/index.ts';
import type { Connection, Row } from './connection.ts';

/** The lists of a book whose records are stored one by one: its tables. */
export const COLLECTIONS = TABLES;
export type Collection = TableName;

/** What has to be written so that the stored book becomes another one. */
export type Change =
  | { readonly kind: 'put-member'; readonly name: string; readonly json: string }
  | { readonly kind: 'drop-member'; readonly name: string }
  | { readonly kind: 'put-record'; readonly collection: Collection; readonly slot: string; readonly json: string }
  | { readonly kind: 'drop-record'; readonly collection: Collection; readonly slot: string }
  | { readonly kind: 'put-listing'; readonly collection: Collection; readonly slots: readonly string[] };

const isCollection = (name: string): name is Collection => COLLECTIONS.some((each) => each === name);
type Item = { readonly id: string };

/** A slot for each record: its id, numbered from the second one where a faulty book has an id twice. */
function slotted(items: readonly Item[]): ReadonlyMap<string, Item> {
  const slots = new Map<string, Item>();
  for (const item of items) {
    let slot = item.id;
    for (let count = 2; slots.has(slot); count += 1) slot = `${item.id}#${count}`;
    slots.set(slot, item);
  }
  return slots;
}

/** What differs between two books. Parts that are the same object in both are not looked into. `before` null: everything. */
export function changesBetween(before: Book | null, after: Book): readonly Change[] {
  const changes: Change[] = [];
  for (const collection of COLLECTIONS) {
    if (before === null || before[collection] !== after[collection]) {
      changes.push(...collectionChanges(collection, before?.[collection] ?? null, after[collection]));
    }
  }
  const old: Readonly<Record<string, unknown>> = before ?? {};
  for (const [name, value] of Object.entries(after)) {
    if (!isCollection(name) && value !== undefined && old[name] !== value) {
      changes.push({ kind: 'put-member', name, json: JSON.stringify(value) });
    }
  }
  const now: Readonly<Record<string, unknown>> = after;
  for (const name of Object.keys(old)) {
    if (!isCollection(name) && now[name] === undefined) changes.push({ kind: 'drop-member', name });
  }
  return changes;
}

function collectionChanges(collection: Collection, before: readonly Item[] | null, after: readonly Item[]): Change[] {
  const old = slotted(before ?? []);
  const now = slotted(after);
  const changes: Change[] = [];
  const oldSlots = [...old.keys()];
  const slots = [...now.keys()];
  if (before === null || oldSlots.length !== slots.length || slots.some((slot, at) => slot !== oldSlots[at])) {
    changes.push({ kind: 'put-listing', collection, slots });
  }
  for (const [slot, item] of now) {
    if (old.get(slot) !== item) changes.push({ kind: 'put-record', collection, slot, json: JSON.stringify(item) });
  }
  for (const slot of oldSlots) {
    if (!now.has(slot)) changes.push({ kind: 'drop-record', collection, slot });
  }
  return changes;
}

/** Writes the changes; call it inside a transaction. */
export async function writeChanges(connection: Connection, changes: readonly Change[]): Promise<void> {
  for (const change of changes) await writeChange(connection, change);
}

function writeChange(connection: Connection, change: Change): Promise<void> {
  switch (change.kind) {
    case 'put-member':
      return connection.run('INSERT OR REPLACE INTO member (name, json) VALUES (?, ?)', [change.name, change.json]);
    case 'drop-member':
      return connection.run('DELETE FROM member WHERE name = ?', [change.name]);
    case 'put-record':
      return connection.run('INSERT OR REPLACE INTO record (kind, slot, json) VALUES (?, ?, ?)', [
        change.collection,
        change.slot,
        change.json,
      ]);
    case 'drop-record':
      return connection.run('DELETE FROM record WHERE kind = ? AND slot = ?', [change.collection, change.slot]);
    case 'put-listing':
      return connection.run(
        'INSERT INTO listing (kind, slots) VALUES (?, ?) ON CONFLICT (kind) DO UPDATE SET slots = excluded.slots',
        [change.collection, JSON.stringify(change.slots)],
      );
  }
}

export type StoredText =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'damaged'; readonly detail: string };

/** Puts the JSON form of the stored book together from its rows, without reading the records themselves. */
export async function readBookText(connection: Connection): Promise<StoredText> {
  const members = await connection.all('SELECT name, json FROM member ORDER BY name');
  const listings = await connection.all('SELECT kind, slots FROM listing');
  const records = await connection.all('SELECT kind, slot, json FROM record');
  const bySlot = new Map(records.map((row) => [recordKey(String(row.kind), String(row.slot)), String(row.json)]));
  const parts = members.map((row) => `${JSON.stringify(row.name)}:${String(row.json)}`);
  for (const listing of listings) {
    const list = listText(listing, bySlot);
    if (list.kind === 'damaged') return list;
    parts.push(list.text);
  }
  if (bySlot.size > 0) return { kind: 'damaged', detail: `${bySlot.size} records are in no list` };
  return { kind: 'text', text: `{${parts.join(',')}}` };
}

/** Takes the records of one list out of the map, so that what is left over is noticed. */
function listText(listing: Row, bySlot: Map<string, string>): StoredText {
  const kind = String(listing.kind);
  const texts: string[] = [];
  for (const slot of JSON.parse(String(listing.slots)) as readonly string[]) {
    const key = recordKey(kind, slot);
    const json = bySlot.get(key);
    if (json === undefined) return { kind: 'damaged', detail: `record ${slot} of ${kind} is missing` };
    bySlot.delete(key);
    texts.push(json);
  }
  return { kind: 'text', text: `${JSON.stringify(kind)}:[${texts.join(',')}]` };
}

const recordKey = (kind: string, slot: string): string => `${kind}\n${slot}`;
