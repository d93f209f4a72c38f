import { geojsonFile } from '../geojson-parts.ts';
import { kmlFile, kmlFolder, placemark } from '../kml-parts.ts';
import { dayRecords } from './records.ts';
import type { PlanSource, PlanWriteOptions } from './source.ts';

/** GeoJSON (RFC 7946): a feature for every route, stop, piece of work, refill and fill point; `role` tells which. */
export function writePlanGeojson(source: PlanSource, { title }: PlanWriteOptions): string {
  return geojsonFile(
    title,
    dayRecords(source).flatMap(({ records }) => records),
  );
}

/** KML 2.2: the same, a folder for every day of a rig. */
export function writePlanKml(source: PlanSource, { title }: PlanWriteOptions): string {
  return kmlFile(
    title,
    dayRecords(source).map(({ name, records }) => kmlFolder(name, records.map(placemark))),
  );
}
