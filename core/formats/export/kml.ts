import type { Property } from '../../book/index.ts';
import { kmlFile, kmlFolder, parkingMark, placemark } from './kml-parts.ts';
import { recordsOf } from './members.ts';
import type { WriteOptions } from './options.ts';

/** KML 2.2 (OGC 07-147r2): a folder for every property, a placemark for every zone, exclusion and gate, and where to park. */
export function writeKml(properties: readonly Property[], { title }: WriteOptions): string {
  const folders = properties.map((property) => {
    const { id, name, parking } = property;
    return kmlFolder(name, [parkingMark(name, id, parking), ...recordsOf(property).map(placemark)]);
  });
  return kmlFile(title, folders);
}
