import { err, type Issue, issue, ok, type Result } from '../../base/index.ts';
import { createTally } from '../tally.ts';
import type { GroundReadOptions, GroundSource, SourceFeature, SourceLayer } from '../types.ts';
import { parseXml } from '../xml/index.ts';
import { readFieldTypes } from './attributes.ts';
import { type KmlBystander, type KmlFolder, readFolders } from './layers.ts';
import { readPlacemark } from './placemark.ts';

const MOST_BYSTANDERS = 20;

/**
 * Everything a KML text holds: a layer for each document and folder with placemarks of its own. Coordinates are longitude
 * and latitude on WGS84 by the standard (OGC 12-007r2, section 6.4). Errors: those of `parseXml`, `format-invalid` where the
 * XML is no KML, `file-too-large`, `cancelled`.
 *
 * @param fileName names the placemarks that lie in no named document or folder
 */
export function readKml(
  bytes: Uint8Array,
  where: string,
  fileName: string,
  options: GroundReadOptions,
): Result<GroundSource> {
  const document = parseXml(bytes, where);
  if (!document.ok) return document;
  const root = document.value;
  if (!['kml', 'Document', 'Folder', 'Placemark'].includes(root.name)) {
    const detail = `The file is XML, but its first element is "${root.name.slice(0, 40)}" and not "kml".`;
    return err('format-invalid', `${where}, line ${root.line}`, detail, 'Choose a KML file.');
  }
  const { folders, bystanders } = readFolders(root, fileName.replace(/\.[^.]*$/, ''));
  const types = readFieldTypes(root);
  const total = folders.reduce((sum, folder) => sum + folder.placemarks.length, 0);
  const tally = createTally(options, where, total);
  const layers: SourceLayer[] = [];
  for (const folder of folders) {
    const features: SourceFeature[] = [];
    for (const [index, placemark] of folder.placemarks.entries()) {
      const { feature, positions } = readPlacemark(placemark, placeOf(where, folder, index, placemark.line), types);
      const ended = tally.add(positions);
      if (ended !== null) return ended;
      features.push(feature);
    }
    layers.push(layerOf(folder.name, features));
  }
  const issues = [...bystanderIssues(bystanders, where), ...emptyIssues(total, where)];
  return ok({ formatId: 'kml', layers, issues });
}

function placeOf(where: string, folder: KmlFolder, index: number, line: number): string {
  return `${where}, ${folder.name}, placemark ${index + 1} (line ${line})`;
}

function layerOf(name: string, features: readonly SourceFeature[]): SourceLayer {
  const fields = new Set(features.flatMap((each) => Object.keys(each.attributes)));
  return { name, coordinates: { kind: 'degrees', from: 'longitude and latitude' }, fields: [...fields], features };
}

const WHAT: Readonly<Record<string, string>> = {
  GroundOverlay: 'a picture laid on the ground, whose frame is no lawn',
  ScreenOverlay: 'a picture on the screen',
  PhotoOverlay: 'a photo',
  NetworkLink: 'a link to another file, which is not opened; its region is no lawn',
  Tour: 'a tour',
};

function bystanderIssues(bystanders: readonly KmlBystander[], where: string): readonly Issue[] {
  const shown = bystanders.slice(0, MOST_BYSTANDERS).map((each) => {
    const name = each.name === '' ? '' : ` "${each.name}"`;
    const message = `${each.kind}${name} is ${WHAT[each.kind] ?? 'no outline'}. It was left out.`;
    return issue('warning', 'not-an-outline', `${where}, line ${each.line}`, message);
  });
  const rest = bystanders.length - shown.length;
  if (rest === 0) return shown;
  return [...shown, issue('warning', 'not-an-outline', where, `${rest} more pictures and links were left out.`)];
}

function emptyIssues(count: number, where: string): readonly Issue[] {
  return count > 0 ? [] : [issue('warning', 'file-empty', where, 'The file holds no placemarks.')];
}
