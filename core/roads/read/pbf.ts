import { createUnpacker, nextBlob } from './blob.ts';
import { readDataBlock, readHeadBlock } from './block.ts';
import type { ElementSink, Reading } from './elements.ts';
import { damaged, RoadFault, stoppedFault } from './fault.ts';
import type { ByteFeed } from './feed.ts';

/** Told after each block: bytes read of the file so far; false ends the reading. */
export type Heed = (bytes: number) => boolean;

/**
 * Reads extracts in the PBF format (OpenStreetMap wiki, "PBF Format", and its fileformat.proto and osmformat.proto). Blocks
 * without nodes are remembered from the first reading and left packed in the second.
 */
export function pbfReader(): (feed: ByteFeed, reading: Reading, sink: ElementSink, heed: Heed) => Promise<void> {
  const withoutNodes = new Set<number>();
  return async (feed, reading, sink, heed) => {
    const unpack = createUnpacker();
    for (let number = 1; ; number += 1) {
      const blob = await nextBlob(feed);
      if (blob === null) {
        if (number === 1) throw damaged('it is empty');
        return;
      }
      if (number === 1 && blob.type !== 'OSMHeader') throw damaged('it does not begin with its header');
      try {
        const isLeftOut = reading === 'nodes' && withoutNodes.has(number);
        if (blob.type === 'OSMHeader') readHeadBlock(unpack(blob.packed), sink);
        else if (blob.type === 'OSMData' && !isLeftOut) {
          const { hasNodes } = readDataBlock(unpack(blob.packed), reading, sink);
          if (!hasNodes) withoutNodes.add(number);
        }
      } catch (fault) {
        if (!(fault instanceof RoadFault)) throw fault;
        throw new RoadFault(fault.code, `${fault.detail.replace(/\.$/, '')} (block ${number}).`, fault.hint);
      }
      if (!heed(feed.taken())) throw stoppedFault();
    }
  };
}
