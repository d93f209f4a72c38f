import { decodeLatin } from '../text/index.ts';
import type { GroundReader } from '../types.ts';
import { rootName } from '../xml/index.ts';
import { isZip } from '../zip/index.ts';
import { readKmz } from './kmz.ts';
import { readKml } from './source.ts';

/** Names of an archive's files stand in its table of contents at the end. */
const TAIL_BYTES = 100_000;

/** KML files and KMZ archives. */
export const kmlReader: GroundReader = {
  id: 'kml',
  title: 'Outlines and places (KML, KMZ)',
  extensions: ['kml', 'kmz'],
  looksLike: (bytes) => {
    if (!isZip(bytes)) return rootName(bytes) === 'kml';
    return /\.kml/i.test(decodeLatin(bytes.subarray(Math.max(0, bytes.length - TAIL_BYTES))));
  },
  read: async (bytes, fileName, options) =>
    isZip(bytes) ? readKmz(bytes, fileName, options) : readKml(bytes, fileName, fileName, options),
};
