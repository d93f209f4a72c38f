import { err, ok, type Result } from '../../base/index.ts';
import type { ReadLimits } from '../types.ts';
import { openZip, type ZipEntry } from '../zip/index.ts';

/** The files of one layer inside an archive. */
export type LayerFiles = {
  /** Its name without folders and ending. */
  readonly name: string;
  readonly shp: ZipEntry;
  readonly dbf: ZipEntry | null;
  readonly prj: ZipEntry | null;
  readonly cpg: ZipEntry | null;
};

/** Copies of file names that some systems put into archives. */
const JUNK = /(?:^|[/\\])(?:__MACOSX[/\\]|\._)/;
const REMEDY = 'Put the .shp file together with its .dbf and .prj of the same name into one ZIP archive.';

/** The layers of an archive in the order of their .shp files. Errors: those of `openZip`; `format-invalid` without a .shp. */
export function findLayers(bytes: Uint8Array, where: string, limits: ReadLimits): Result<readonly LayerFiles[]> {
  const archive = openZip(bytes, where, limits);
  if (!archive.ok) return archive;
  const entries = archive.value.entries.filter((each) => !JUNK.test(each.name));
  const byName = new Map(entries.map((each) => [each.name.toLowerCase(), each]));
  const layers = entries.flatMap((shp): LayerFiles[] => {
    if (!/\.shp$/i.test(shp.name)) return [];
    const stem = shp.name.slice(0, -4);
    const beside = (ending: string) => byName.get(`${stem}.${ending}`.toLowerCase()) ?? null;
    const cpg = beside('cpg') ?? beside('cst');
    return [{ name: stem.split(/[/\\]/).pop() ?? stem, shp, dbf: beside('dbf'), prj: beside('prj'), cpg }];
  });
  return layers.length > 0 ? ok(layers) : noShape(entries, where);
}

function noShape(entries: readonly ZipEntry[], where: string): Result<never> {
  const inner = entries.find((each) => /\.(?:zip|kmz)$/i.test(each.name));
  if (inner === undefined) return err('format-invalid', where, 'The archive holds no .shp file.', REMEDY);
  return err('format-unknown', where, 'The archive holds archives.', 'Unpack it and choose one of those inside.');
}

/** Part of a shapefile on its own: outlines without their table and their coordinates' meaning. */
export function refuseLoose(where: string): Result<never> {
  return err('format-unknown', where, 'This is one part of a shapefile only.', REMEDY);
}
