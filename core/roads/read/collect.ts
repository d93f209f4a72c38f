import type { ElementSink, FileHead, Member, Tags } from './elements.ts';
import { damaged, tooMuch } from './fault.ts';
import { type Growing, growing } from './growing.ts';
import { type IdIndex, idIndex } from './id-index.ts';
import { type NodeTags, standingAt } from './node-tags.ts';
import { type RawRestriction, restrictionOf } from './restriction-tags.ts';
import { type RoadTags, roadOf } from './road-tags.ts';

/** What two readings of a file gather: the roads with the nodes they need, by numbers of their own. */
export type Collected = {
  readonly head: FileHead;
  readonly nodes: number;
  readonly ways: number;
  readonly relations: number;
  readonly wayIds: Float64Array;
  readonly wayTags: readonly RoadTags[];
  /** Where the nodes of a way begin in `refs`; one more entry than ways. */
  readonly wayStart: Int32Array;
  readonly refs: Int32Array;
  readonly nodeIds: IdIndex;
  readonly lon: Int32Array;
  readonly lat: Int32Array;
  /** 1 for nodes that the file holds. */
  readonly isThere: Uint8Array;
  readonly standing: ReadonlyMap<number, NodeTags>;
  readonly restrictions: readonly RawRestriction[];
  readonly restrictionsIgnored: number;
  readonly restrictionsViaWay: number;
};

export type Collector = {
  readonly sink: ElementSink;
  /** To be called between the two readings. */
  readonly turn: () => void;
  readonly finish: () => Collected;
};

const HALF_TURN = 1_800_000_000;
/** Roads and points along them at most; beyond, the memory would not do. */
const MOST_ROADS = 2_000_000;
const MOST_REFS = 20_000_000;

export function collector(): Collector {
  const counts = { nodes: 0, ways: 0, relations: 0, ignored: 0, viaWay: 0 };
  const head: FileHead = { writtenBy: '', dataOf: '', owner: null };
  const nodeIds = idIndex();
  const refs = growing();
  const starts = growing();
  const wayIds: number[] = [];
  const wayTags: RoadTags[] = [];
  const shared = new Map<string, RoadTags>();
  const restrictions: RawRestriction[] = [];
  const standing = new Map<number, NodeTags>();
  let nodes = { lon: new Int32Array(0), lat: new Int32Array(0), isThere: new Uint8Array(0) };

  const takeRestriction = (tags: Tags, members: readonly Member[]): void => {
    const reading = restrictionOf(tags, members);
    if (reading.kind === 'ignored') counts.ignored += 1;
    else if (reading.kind === 'via-way') counts.viaWay += 1;
    else restrictions.push(reading.restriction);
  };
  const sink: ElementSink = {
    head: (part) => {
      Object.assign(head, part);
    },
    node: (id, lon, lat, tags) => {
      counts.nodes += 1;
      const at = nodeIds.find(checkedId(id));
      if (at < 0) return;
      if (!(Math.abs(lon) <= HALF_TURN && Math.abs(lat) <= HALF_TURN / 2)) throw damaged(`node ${id} lies nowhere`);
      nodes.lon[at] = lon;
      nodes.lat[at] = lat;
      nodes.isThere[at] = 1;
      const stands = tags.size > 0 ? standingAt(tags) : null;
      if (stands !== null) standing.set(at, stands);
    },
    way: (way) => {
      counts.ways += 1;
      const road = way === null ? null : roadOf(way.tags);
      if (way === null || road === null) return;
      if (wayIds.length === MOST_ROADS || refs.size() + way.refs.length > MOST_REFS) throw tooMuch('too many roads');
      const key = JSON.stringify(road);
      const tags = shared.get(key) ?? road;
      shared.set(key, tags);
      starts.push(refs.size());
      wayIds.push(checkedId(way.id));
      wayTags.push(tags);
      for (const ref of way.refs) refs.push(nodeIds.add(checkedId(ref)));
    },
    relation: (relation) => {
      counts.relations += 1;
      if (relation !== null) takeRestriction(relation.tags, relation.members);
    },
  };
  return {
    sink,
    turn: () => {
      const size = nodeIds.size();
      nodes = { lon: new Int32Array(size), lat: new Int32Array(size), isThere: new Uint8Array(size) };
    },
    finish: () => ({
      head,
      nodes: counts.nodes,
      ways: counts.ways,
      relations: counts.relations,
      wayIds: Float64Array.from(wayIds),
      wayTags,
      wayStart: closed(starts, refs.size()),
      refs: refs.view(),
      nodeIds,
      ...nodes,
      standing,
      restrictions,
      restrictionsIgnored: counts.ignored,
      restrictionsViaWay: counts.viaWay,
    }),
  };
}

function closed(starts: Growing, end: number): Int32Array {
  return Int32Array.from([...starts.view(), end]);
}

function checkedId(id: number): number {
  if (Number.isSafeInteger(id)) return id;
  throw damaged('an element without a proper number');
}
