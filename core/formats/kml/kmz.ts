import { err, type Issue, issue, ok, type Result } from '../../base/index.ts';
import type { GroundReadOptions, GroundSource } from '../types.ts';
import { openZip, type ZipEntry } from '../zip/index.ts';
import { readKml } from './source.ts';

const depthOf = (name: string): number => name.split('/').length;

/**
 * Everything the main file of a KMZ archive holds: doc.kml, or whatever its first KML file is called (OGC 12-007r2, annex C).
 * Errors: those of `openZip` and `readKml`; `format-invalid` where there is no KML inside.
 */
export function readKmz(bytes: Uint8Array, where: string, options: GroundReadOptions): Result<GroundSource> {
  const archive = openZip(bytes, where, options.limits);
  if (!archive.ok) return archive;
  const candidates = kmlEntries(archive.value.entries);
  const [main, ...others] = candidates;
  if (main === undefined) {
    return err('format-invalid', where, 'The archive holds no KML file.', 'Choose a KMZ file, or export again as KML.');
  }
  const content = main.unpack();
  if (!content.ok) return content;
  const source = readKml(content.value, `${where}, ${main.name}`, where, options);
  if (!source.ok) return source;
  return ok({ ...source.value, issues: [...source.value.issues, ...otherIssues(others, where)] });
}

/** A file doc.kml first, then those nearest to the top, in the archive's order. */
function kmlEntries(entries: readonly ZipEntry[]): readonly ZipEntry[] {
  const rank = ({ name }: ZipEntry): number => (name.toLowerCase() === 'doc.kml' ? 0 : depthOf(name));
  return entries.filter((each) => /\.kml$/i.test(each.name)).toSorted((left, right) => rank(left) - rank(right));
}

function otherIssues(others: readonly ZipEntry[], where: string): readonly Issue[] {
  return others.map((each) => {
    const message = `The archive holds another KML file, ${each.name.slice(0, 80)}. It was left out; unpack it to read it.`;
    return issue('warning', 'file-left-out', where, message);
  });
}
