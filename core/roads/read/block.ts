import { text, words } from './blob.ts';
import { type ElementSink, type Member, NO_TAGS, type Reading, type Tags } from './elements.ts';
import { damaged, RoadFault } from './fault.ts';
import { readUnsigned, readZigzag, WireReader } from './wire.ts';

/** Features that a file may demand of its reader and that this one has. */
const KNOWN_FEATURES: readonly string[] = ['OsmSchema-V0.6', 'DenseNodes'];

/** The first block: refuses what it demands and is not read here. */
export function readHeadBlock(bytes: Uint8Array, sink: ElementSink): void {
  const head = new WireReader(bytes);
  while (head.next()) {
    if (head.field === 4) {
      const feature = text(head.content());
      if (!KNOWN_FEATURES.includes(feature)) throw unknownFeature(feature);
    } else if (head.field === 16) sink.head({ writtenBy: words(head.content()) });
    else if (head.field === 32) sink.head({ dataOf: isoOf(head.signed()) });
    else head.skip();
  }
}

function unknownFeature(name: string): RoadFault {
  const detail = `The extract demands "${name.slice(0, 60)}", which is not read.`;
  return new RoadFault('format-unknown', detail, 'Get a plain extract without history, or convert it with osmium.');
}

/** Seconds since 1970 as ISO 8601; empty where it is no moment. */
function isoOf(seconds: number): string {
  const date = new Date(seconds * 1000);
  return seconds > 0 && Number.isFinite(date.getTime()) ? date.toISOString() : '';
}

/** Blocks of real files hold some 8,000 elements; more strings, groups and members than these are a trap. */
const MOST_STRINGS = 1_000_000;
const MOST_GROUPS = 10_000;
const MOST_MEMBERS = 1_000;

type Block = {
  readonly string: (index: number) => string;
  /** From the file's units to steps of 1e-7 degrees. */
  readonly step: (value: number, isLat: boolean) => number;
};

/** A block of nodes, ways and relations. Tells whether it holds nodes, so that the second reading may leave it out. */
export function readDataBlock(bytes: Uint8Array, reading: Reading, sink: ElementSink): { readonly hasNodes: boolean } {
  const groups: WireReader[] = [];
  const strings: Uint8Array[] = [];
  let [granularity, latOffset, lonOffset] = [100, 0, 0];
  const outer = new WireReader(bytes);
  while (outer.next()) {
    if (outer.field === 1) readStrings(outer.message(), strings);
    else if (outer.field === 2) {
      if (groups.length === MOST_GROUPS) throw damaged('a block holds too many groups');
      groups.push(outer.message());
    } else if (outer.field === 17) granularity = outer.number();
    else if (outer.field === 19) latOffset = outer.signed();
    else if (outer.field === 20) lonOffset = outer.signed();
    else outer.skip();
  }
  const known: string[] = [];
  const block: Block = {
    string: (index) => {
      const letters = strings[index];
      if (letters === undefined) throw damaged('a tag leads beyond the table of strings');
      known[index] ??= text(letters);
      return known[index];
    },
    step: (value, isLat) => Math.round(((isLat ? latOffset : lonOffset) + granularity * value) / 100),
  };
  let hasNodes = false;
  for (const group of groups) {
    while (group.next()) {
      const isNode = group.field === 1 || group.field === 2;
      hasNodes ||= isNode;
      if (isNode !== (reading === 'nodes')) group.skip();
      else if (group.field === 1) readNode(group.message(), block, sink);
      else if (group.field === 2) readDense(group.message(), block, sink);
      else if (group.field === 3) readWay(group.message(), block, sink);
      else if (group.field === 4) readRelation(group.message(), block, sink);
      else group.skip();
    }
  }
  return { hasNodes };
}

function readStrings(table: WireReader, strings: Uint8Array[]): void {
  while (table.next()) {
    if (strings.length > MOST_STRINGS) throw damaged('a block holds too many strings');
    if (table.field === 1) strings.push(table.content());
    else table.skip();
  }
}

function readNode(node: WireReader, block: Block, sink: ElementSink): void {
  const keys: number[] = [];
  const values: number[] = [];
  let [id, lat, lon] = [Number.NaN, Number.NaN, Number.NaN];
  while (node.next()) {
    if (node.field === 1) id = node.zigzag();
    else if (node.field === 2) node.numbers(keys, readUnsigned);
    else if (node.field === 3) node.numbers(values, readUnsigned);
    else if (node.field === 8) lat = node.zigzag();
    else if (node.field === 9) lon = node.zigzag();
    else node.skip();
  }
  sink.node(id, block.step(lon, false), block.step(lat, true), tagsOf(keys, values, block));
}

function readDense(dense: WireReader, block: Block, sink: ElementSink): void {
  const ids: number[] = [];
  const lats: number[] = [];
  const lons: number[] = [];
  const pairs: number[] = [];
  while (dense.next()) {
    if (dense.field === 1) dense.numbers(ids, readZigzag);
    else if (dense.field === 8) dense.numbers(lats, readZigzag);
    else if (dense.field === 9) dense.numbers(lons, readZigzag);
    else if (dense.field === 10) dense.numbers(pairs, readUnsigned);
    else dense.skip();
  }
  if (lats.length !== ids.length || lons.length !== ids.length) throw damaged('nodes without coordinates');
  let [id, lat, lon, pair] = [0, 0, 0, 0];
  for (let at = 0; at < ids.length; at += 1) {
    id += ids[at] as number;
    lat += lats[at] as number;
    lon += lons[at] as number;
    let tags: Map<string, string> | null = null;
    while (pair < pairs.length && pairs[pair] !== 0) {
      const value = pairs[pair + 1];
      if (value === undefined) throw damaged('a tag without its value');
      tags ??= new Map();
      tags.set(block.string(pairs[pair] as number), block.string(value));
      pair += 2;
    }
    pair += 1;
    sink.node(id, block.step(lon, false), block.step(lat, true), tags ?? NO_TAGS);
  }
}

function readWay(way: WireReader, block: Block, sink: ElementSink): void {
  const keys: number[] = [];
  const values: number[] = [];
  const refs: number[] = [];
  let id = Number.NaN;
  while (way.next()) {
    if (way.field === 1) id = way.signed();
    else if (way.field === 2) way.numbers(keys, readUnsigned);
    else if (way.field === 3) way.numbers(values, readUnsigned);
    else if (way.field === 8) way.numbers(refs, readZigzag);
    else way.skip();
  }
  if (!keys.some((key) => block.string(key) === 'highway')) {
    sink.way(null);
    return;
  }
  for (let at = 1; at < refs.length; at += 1) refs[at] = (refs[at] as number) + (refs[at - 1] as number);
  sink.way({ id, refs, tags: tagsOf(keys, values, block) });
}

const MEMBER_KINDS = ['node', 'way', 'relation'] as const;

function readRelation(relation: WireReader, block: Block, sink: ElementSink): void {
  const keys: number[] = [];
  const values: number[] = [];
  const roles: number[] = [];
  const ids: number[] = [];
  const kinds: number[] = [];
  while (relation.next()) {
    if (relation.field === 2) relation.numbers(keys, readUnsigned);
    else if (relation.field === 3) relation.numbers(values, readUnsigned);
    else if (relation.field === 8) relation.numbers(roles, readUnsigned);
    else if (relation.field === 9) relation.numbers(ids, readZigzag);
    else if (relation.field === 10) relation.numbers(kinds, readUnsigned);
    else relation.skip();
  }
  const tags = tagsOf(keys, values, block);
  if (tags.get('type')?.startsWith('restriction') !== true) {
    sink.relation(null);
    return;
  }
  if (roles.length !== ids.length || kinds.length !== ids.length) throw damaged('members without their roles');
  if (ids.length > MOST_MEMBERS) {
    sink.relation({ tags, members: [] });
    return;
  }
  let id = 0;
  const members = ids.map((step, at): Member => {
    id += step;
    const kind = MEMBER_KINDS[kinds[at] as number];
    if (kind === undefined) throw damaged('a member of an unknown kind');
    return { kind, id, role: block.string(roles[at] as number) };
  });
  sink.relation({ tags, members });
}

function tagsOf(keys: readonly number[], values: readonly number[], block: Block): Tags {
  if (keys.length === 0) return NO_TAGS;
  if (keys.length !== values.length) throw damaged('tags without their values');
  return new Map(keys.map((key, at) => [block.string(key), block.string(values[at] as number)]));
}
