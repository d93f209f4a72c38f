import type { Property } from '../../book/index.ts';
import { geojsonFile } from './geojson-parts.ts';
import { recordsOf } from './members.ts';
import type { WriteOptions } from './options.ts';

/**
 * GeoJSON (RFC 7946) as the measure command and the import read it: a feature for every zone, exclusion and gate, joined by
 * `property`. Stated zones have no geometry but `areaSqFt`.
 */
export function writeGeojson(properties: readonly Property[], { title }: WriteOptions): string {
  return geojsonFile(title, properties.flatMap(recordsOf));
}
