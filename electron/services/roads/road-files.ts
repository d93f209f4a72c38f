import path from 'node:path';

/** The files that lie beside a book and can be made again: its roads, and the drive times between its places. */
export type RoadFiles = { readonly roads: string; readonly drives: string };

/** "north.swardway" has "north.roads" and "north.drives" beside it. */
export function roadFilesOf(bookFile: string): RoadFiles {
  const base = path.join(path.dirname(bookFile), path.basename(bookFile, path.extname(bookFile)));
  return { roads: `${base}.roads`, drives: `${base}.drives` };
}
