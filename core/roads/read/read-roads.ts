import { NEVER_STOP, ok, type Result } from '../../base/index.ts';
import type { RoadMap } from '../types.ts';
import { buildMap } from './build.ts';
import { collector } from './collect.ts';
import type { ElementSink, Reading } from './elements.ts';
import { damaged, RoadFault, refusal } from './fault.ts';
import { type ByteFeed, feedOf } from './feed.ts';
import { type Heed, pbfReader } from './pbf.ts';
import type { ReadRoadsOptions, RoadSource } from './types.ts';
import { readXml } from './xml.ts';

type Reader = (feed: ByteFeed, reading: Reading, sink: ElementSink, heed: Heed) => Promise<void>;

/**
 * Reads the roads of an OpenStreetMap extract, .osm.pbf or .osm; which of them it is, its first bytes tell. Errors:
 * `format-invalid` for a damaged file and for one without roads, `format-unknown` for packings and features that are not read
 * and for other files, `file-too-large`, `not-allowed` for document types, `cancelled`.
 */
export async function readRoads(source: RoadSource, options: ReadRoadsOptions): Promise<Result<RoadMap>> {
  const { where, signal = NEVER_STOP, onProgress } = options;
  const total = source instanceof Uint8Array ? source.length : (options.totalBytes ?? 0);
  try {
    const reader = await readerFor(source);
    const gather = collector();
    for (const [round, reading] of (['ways', 'nodes'] as const).entries()) {
      if (reading === 'nodes') gather.turn();
      await reader(feedOf(source), reading, gather.sink, (bytes) => {
        const done = Math.min(2 * total, round * total + bytes);
        onProgress?.({ step: reading === 'ways' ? 'roads' : 'points of roads', done, total: 2 * total, bestSoFar: '' });
        return !signal.stopped();
      });
    }
    return ok(buildMap(gather.finish()));
  } catch (fault) {
    if (!(fault instanceof RoadFault)) throw fault;
    return refusal(fault, where);
  }
}

async function readerFor(source: RoadSource): Promise<Reader> {
  const start = await feedOf(source).any();
  if (start === null) throw damaged('it is empty');
  const [first, second] = start;
  const isBom = first === 0xef || first === 0xfe || first === 0xff;
  const isBlank = first === 0x20 || first === 0x09 || first === 0x0a || first === 0x0d;
  if (first === 0x3c || isBom || isBlank) return readXml;
  const packing = first === 0x1f && second === 0x8b ? 'gzip' : first === 0x42 && second === 0x5a ? 'bzip2' : null;
  if (packing !== null) {
    const detail = `The file is packed with ${packing}.`;
    throw new RoadFault('format-unknown', detail, 'Unpack it first, or take the extract as .osm.pbf.');
  }
  if (first === 0) return pbfReader();
  const hint = 'Choose an extract of OpenStreetMap (.osm.pbf or .osm).';
  throw new RoadFault('format-unknown', 'The file is no extract of OpenStreetMap.', hint);
}
