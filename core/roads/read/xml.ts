import { SaxesParser, type SaxesTagPlain } from 'saxes';
import { words } from './blob.ts';
import { type ElementSink, type FileHead, type Member, NO_TAGS, type Reading } from './elements.ts';
import { damaged, RoadFault, stoppedFault } from './fault.ts';
import type { ByteFeed } from './feed.ts';
import type { Heed } from './pbf.ts';

/** Characters handed to String.fromCharCode at a time. */
const CHUNK = 8192;
const MOST_DEPTH = 8;
const KINDS = ['node', 'way', 'relation'] as const;

type Open = {
  readonly kind: 'node' | 'way' | 'relation';
  readonly id: number;
  readonly lon: number;
  readonly lat: number;
  readonly isGone: boolean;
  readonly refs: number[];
  readonly members: Member[];
  tags: Map<string, string> | null;
};

/**
 * Reads extracts in the XML format (OpenStreetMap wiki, "OSM XML"). All that is used of them is ASCII, so that bytes are taken
 * for letters one by one, whatever the encoding says; UTF-16 is refused.
 */
export async function readXml(feed: ByteFeed, reading: Reading, sink: ElementSink, heed: Heed): Promise<void> {
  const parser = new SaxesParser({ xmlns: false });
  let depth = 0;
  let isBegun = false;
  let open: Open | null = null;
  parser.on('error', (error) => {
    throw damaged(`it is no sound XML, ${error.message.replace(/\.$/, '')}`);
  });
  parser.on('doctype', () => {
    throw new RoadFault(
      'not-allowed',
      'The extract defines a document type, which is not allowed.',
      'Export it again.',
    );
  });
  parser.on('opentag', (tag) => {
    depth += 1;
    if (depth > MOST_DEPTH) throw damaged('elements lie too deep inside each other');
    if (!isBegun) {
      if (tag.name !== 'osm') throw notAnExtract(tag.name);
      isBegun = true;
      sink.head({ writtenBy: wordsOf(tag.attributes.generator), owner: ownerOf(tag.attributes) });
      return;
    }
    const kind = KINDS.find((each) => each === tag.name);
    if (kind !== undefined) open = begun(tag, kind);
    else if (open !== null) addPart(open, tag);
  });
  parser.on('closetag', (tag) => {
    depth -= 1;
    if (open === null || tag.name !== open.kind) return;
    handOn(open, reading, sink);
    open = null;
  });
  for (;;) {
    const bytes = await feed.any();
    if (bytes === null) break;
    if (!isBegun && (bytes[0] === 0xfe || bytes[0] === 0xff || bytes[1] === 0)) throw damaged('it is in UTF-16');
    for (let at = 0; at < bytes.length; at += CHUNK) parser.write(letters(bytes.subarray(at, at + CHUNK)));
    if (!heed(feed.taken())) throw stoppedFault();
  }
  parser.close();
  if (!isBegun) throw damaged('it is empty');
}

function letters(bytes: Uint8Array): string {
  // A byte order mark would be three letters of its own.
  const start = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  return String.fromCharCode(...bytes.subarray(start));
}

function notAnExtract(name: string): RoadFault {
  const detail = `The file is XML of another kind: it begins with <${name.slice(0, 40)}>, not <osm>.`;
  return new RoadFault('format-unknown', detail, 'Choose an extract of OpenStreetMap (.osm.pbf or .osm).');
}

/** The members `copyright` and `license` of the first element name another owner than OpenStreetMap, or none. */
function ownerOf({ copyright, license }: Readonly<Record<string, string>>): FileHead['owner'] {
  if (copyright === undefined || copyright === '' || /openstreetmap/i.test(copyright)) return null;
  return { attribution: wordsOf(copyright), licence: wordsOf(license) };
}

/** Words that people read, from letters that are bytes of UTF-8. */
function wordsOf(letters = ''): string {
  return words(Uint8Array.from(letters, (letter) => letter.charCodeAt(0)));
}

function begun({ attributes }: SaxesTagPlain, kind: Open['kind']): Open {
  return {
    kind,
    id: Number(attributes.id ?? Number.NaN),
    lon: Math.round(Number(attributes.lon ?? Number.NaN) * 1e7),
    lat: Math.round(Number(attributes.lat ?? Number.NaN) * 1e7),
    isGone: attributes.visible === 'false' || attributes.action === 'delete',
    refs: [],
    members: [],
    tags: null,
  };
}

function addPart(open: Open, { name, attributes }: SaxesTagPlain): void {
  if (name === 'tag') {
    open.tags ??= new Map();
    open.tags.set(attributes.k ?? '', attributes.v ?? '');
  } else if (name === 'nd') open.refs.push(Number(attributes.ref ?? Number.NaN));
  else if (name === 'member') {
    const kind = KINDS.find((each) => each === attributes.type);
    if (kind === undefined) throw damaged('a member of an unknown kind');
    open.members.push({ kind, id: Number(attributes.ref ?? Number.NaN), role: attributes.role ?? '' });
  }
}

function handOn(open: Open, reading: Reading, sink: ElementSink): void {
  if (open.isGone || (open.kind === 'node') !== (reading === 'nodes')) return;
  const tags = open.tags ?? NO_TAGS;
  if (open.kind === 'node') sink.node(open.id, open.lon, open.lat, tags);
  else if (open.kind === 'way') sink.way(tags.has('highway') ? { id: open.id, refs: open.refs, tags } : null);
  else {
    const isRestriction = tags.get('type')?.startsWith('restriction') === true;
    sink.relation(isRestriction ? { tags, members: open.members } : null);
  }
}
