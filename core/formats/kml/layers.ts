import { createNamer } from '../own-names.ts';
import { fieldOf, type XmlElement } from '../xml/index.ts';

/** The placemarks that lie directly in one document or folder. */
export type KmlFolder = { readonly name: string; readonly placemarks: readonly XmlElement[] };

/** Something of a file that has a place but is no outline. */
export type KmlBystander = { readonly kind: string; readonly name: string; readonly line: number };

export type KmlContent = { readonly folders: readonly KmlFolder[]; readonly bystanders: readonly KmlBystander[] };

/** Pictures, views and links. Their regions are rectangles on the ground, which must not pass for lawns. */
const BYSTANDERS = ['GroundOverlay', 'ScreenOverlay', 'PhotoOverlay', 'NetworkLink', 'Tour'];
const HOLDERS = ['kml', 'Document', 'Folder', 'Create', 'Delete', 'Change', 'Update', 'NetworkLinkControl'];

/** Sorts the content of a file by folder, in the order of the file. */
export function readFolders(root: XmlElement, fallback: string): KmlContent {
  const folders: KmlFolder[] = [];
  const bystanders: KmlBystander[] = [];
  const visit = (holder: XmlElement, path: readonly string[]): void => {
    const placemarks =
      holder.name === 'Placemark' ? [holder] : holder.children.filter((each) => each.name === 'Placemark');
    if (placemarks.length > 0) folders.push({ name: path.join(' / ') || fallback, placemarks });
    for (const child of holder.children) {
      if (BYSTANDERS.includes(child.name)) bystanders.push(bystander(child));
      else if (HOLDERS.includes(child.name)) visit(child, [...path, ...ownName(child)]);
    }
  };
  visit(root, ownName(root));
  return { folders: withOwnNames(folders), bystanders };
}

function ownName(holder: XmlElement): readonly string[] {
  const name = oneLine(fieldOf(holder, 'name') ?? '');
  return name === '' || holder.name === 'Placemark' ? [] : [name];
}

function bystander(element: XmlElement): KmlBystander {
  return { kind: element.name, name: oneLine(fieldOf(element, 'name') ?? ''), line: element.line };
}

/** Two folders of one name become two layers with names of their own. */
function withOwnNames(folders: readonly KmlFolder[]): readonly KmlFolder[] {
  const own = createNamer();
  return folders.map((folder) => ({ ...folder, name: own(folder.name) }));
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim().slice(0, 120);
}
