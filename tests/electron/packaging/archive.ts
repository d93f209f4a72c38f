import { copyFile, mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';

/** Entries of the archive's head: a folder has files, a file has its size and where it lies. */
type Entry = {
  readonly files?: Readonly<Record<string, Entry>>;
  readonly size?: number;
  /** From the end of the head, bytes, in decimal; absent for a file that lies beside the archive. */
  readonly offset?: string;
  readonly unpacked?: boolean;
};
export type ArchiveFile = { readonly name: string; readonly size: number; readonly unpacked: boolean };

type Head = { readonly root: Entry; readonly bodyAt: number };

/** Source of the form: "Format" of the asar project, github.com/electron/asar. Two pickled lengths, then JSON, then the files. */
function readHead(archive: Buffer): Head {
  const headSize = archive.readUInt32LE(4);
  const textSize = archive.readUInt32LE(12);
  return { root: JSON.parse(archive.toString('utf8', 16, 16 + textSize)) as Entry, bodyAt: 8 + headSize };
}

function walk(entry: Entry, name: string): readonly (readonly [string, Entry])[] {
  if (entry.files === undefined) return [[name, entry]];
  return Object.entries(entry.files).flatMap(([part, each]) => walk(each, name === '' ? part : `${name}/${part}`));
}

/** Every file of an archive, by its path inside. */
export async function listArchive(file: string): Promise<readonly ArchiveFile[]> {
  const { root } = readHead(await readFile(file));
  return walk(root, '').map(([name, { size = 0, unpacked = false }]) => ({ name, size, unpacked }));
}

/** Writes every file of an archive into a folder, those beside it included. Only names inside the folder are written. */
export async function extractArchive(file: string, folder: string): Promise<void> {
  const archive = await readFile(file);
  const { root, bodyAt } = readHead(archive);
  for (const [name, { size = 0, offset, unpacked }] of walk(root, '')) {
    const target = path.join(folder, name);
    if (!target.startsWith(folder + path.sep)) throw new Error(`${name} would lie outside ${folder}`);
    await mkdir(path.dirname(target), { recursive: true });
    if (unpacked === true) await copyFile(path.join(`${file}.unpacked`, name), target);
    else await writeFile(target, archive.subarray(bodyAt + Number(offset), bodyAt + Number(offset) + size));
  }
}
