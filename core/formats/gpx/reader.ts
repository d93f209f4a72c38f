import { err, issue, ok, type Result } from '../../base/index.ts';
import { createTally } from '../tally.ts';
import type { GroundReader, GroundReadOptions, GroundSource, SourceFeature, SourceLayer } from '../types.ts';
import { childrenOf, parseXml, rootName, type XmlElement } from '../xml/index.ts';
import { OWN_FIELDS, RECORD_FIELDS, type ReadRecord, readRoute, readTrack, readWaypoint } from './records.ts';

/** Tracks, routes and waypoints of a satellite receiver. */
export const gpxReader: GroundReader = {
  id: 'gpx',
  title: 'Walked tracks and waypoints (GPX)',
  extensions: ['gpx'],
  looksLike: (bytes) => rootName(bytes) === 'gpx',
  read: async (bytes, fileName, options) => readGpx(bytes, fileName, options),
};

type Kind = {
  readonly layer: string;
  readonly element: string;
  readonly noun: string;
  readonly read: (element: XmlElement, where: string, options: GroundReadOptions) => ReadRecord;
};

const KINDS: readonly Kind[] = [
  { layer: 'Tracks', element: 'trk', noun: 'track', read: (each, where, { walk }) => readTrack(each, where, walk) },
  { layer: 'Routes', element: 'rte', noun: 'route', read: readRoute },
  { layer: 'Waypoints', element: 'wpt', noun: 'waypoint', read: readWaypoint },
];

/**
 * Everything a GPX file of version 1.0 or 1.1 holds, a layer for each kind. Coordinates are longitude and latitude on WGS84 by
 * the schema. Errors: those of `parseXml`, `format-invalid` where the XML is no GPX, `file-too-large`, `cancelled`.
 */
function readGpx(bytes: Uint8Array, where: string, options: GroundReadOptions): Result<GroundSource> {
  const document = parseXml(bytes, where);
  if (!document.ok) return document;
  const root = document.value;
  if (root.name !== 'gpx') {
    const detail = `The file is XML, but its first element is "${root.name.slice(0, 40)}" and not "gpx".`;
    return err('format-invalid', `${where}, line ${root.line}`, detail, 'Choose a GPX file.');
  }
  const tally = createTally(options, where, 0);
  const layers: SourceLayer[] = [];
  for (const kind of KINDS) {
    const features: SourceFeature[] = [];
    for (const [index, element] of childrenOf(root, kind.element).entries()) {
      const place = `${where}, ${kind.noun} ${index + 1} (line ${element.line})`;
      const { feature, positions } = kind.read(element, place, options);
      const ended = tally.add(positions);
      if (ended !== null) return ended;
      features.push(feature);
    }
    if (features.length > 0) layers.push(layerOf(kind.layer, features));
  }
  const empty = issue('warning', 'file-empty', where, 'The file holds no tracks, routes or waypoints.');
  return ok({ formatId: gpxReader.id, layers, issues: layers.length > 0 ? [] : [empty] });
}

function layerOf(name: string, features: readonly SourceFeature[]): SourceLayer {
  const isOwn = features.some((each) => each.attributes.role !== undefined);
  const fields = isOwn ? [...RECORD_FIELDS, ...OWN_FIELDS] : RECORD_FIELDS;
  return { name, coordinates: { kind: 'degrees', from: 'longitude and latitude' }, fields, features };
}
