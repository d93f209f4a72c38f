import { readdir, readFile, realpath, statfs } from 'node:fs/promises';
import path from 'node:path';

/** What kind of folder a book lies in: 'shared' folders have no log that can be trusted. `words` end "The book lies …". */
export type PlaceOfBook = { readonly kind: 'own' } | { readonly kind: 'shared'; readonly words: string };

/** What of the system is looked at; a test puts its own in. */
export type PlaceSource = {
  readonly platform: string;
  /** Type number of the file system of a folder, or null. */
  readonly systemType: (folder: string) => Promise<number | null>;
  /** Names inside a folder. */
  readonly namesIn: (folder: string) => Promise<readonly string[]>;
  /** The table of mounted file systems, or an empty text. */
  readonly mounts: () => Promise<string>;
};

const REAL_SOURCE: PlaceSource = {
  platform: process.platform,
  systemType: async (folder) => (await statfs(folder).catch(() => null))?.type ?? null,
  namesIn: (folder) => readdir(folder).catch(() => []),
  mounts: () => readFile('/proc/self/mounts', 'utf8').catch(() => ''),
};

/** Type numbers of network file systems as `statfs` gives them: statfs(2), Linux man-pages 6.7. */
const NETWORK_TYPES: ReadonlyMap<number, string> = new Map([
  [0x6969, 'NFS'],
  [0x517b, 'SMB'],
  [0xfe534d42, 'SMB'],
  [0xff534d42, 'SMB'],
  [0x01021997, '9P'],
  [0x73757245, 'Coda'],
  [0x5346414f, 'AFS'],
  [0x00c36400, 'Ceph'],
]);
/** Any file system that a program serves; which one, the table of mounts tells. */
const FUSE_TYPE = 0x65735546;
const NETWORK_MOUNT =
  /^(nfs4?|cifs|smb3?|smbfs|9p|afs|ceph|glusterfs|davfs2?|fuse\.(sshfs|rclone|davfs2?|s3fs|gcsfuse|glusterfs|curlftpfs|gvfsd-fuse))$/;

/** Files and folders that programs which copy a folder between machines put at its top. */
const SYNC_MARKS: readonly string[] = [
  '.dropbox',
  '.dropbox.cache',
  '.stfolder',
  '.sync',
  '.owncloudsync.log',
  '.csync_journal.db',
  '.tmp.drivedownload',
];
/** Usual names of such folders, where no mark is left. */
const SYNC_NAMES =
  /^(dropbox|onedrive|google ?drive|my drive|icloud ?drive|mobile documents|nextcloud|owncloud|syncthing|pcloud ?drive)\b/i;

/**
 * Finds out whether a book lies on a network drive or in a folder that another program keeps equal to one elsewhere. There SQLite's
 * write-ahead log must not be used: "Write-Ahead Logging", part 1, sqlite.org/wal.html (all processes must be on the same machine).
 */
export async function placeOfBook(file: string, source: PlaceSource = REAL_SOURCE): Promise<PlaceOfBook> {
  const real = await realpath(path.dirname(file)).catch(() => path.resolve(path.dirname(file)));
  const network = await networkOf(real, source);
  if (network !== null) return { kind: 'shared', words: `on a network drive (${network})` };
  for (let folder = real; ; folder = path.dirname(folder)) {
    const parent = path.dirname(folder);
    if (parent === folder) return { kind: 'own' };
    const isMarked = SYNC_NAMES.test(path.basename(folder)) || (await source.namesIn(folder)).some(isSyncMark);
    if (isMarked)
      return {
        kind: 'shared',
        words: `in a folder that is kept the same on several machines (${path.basename(folder)})`,
      };
  }
}

function isSyncMark(name: string): boolean {
  return SYNC_MARKS.includes(name.toLowerCase());
}

async function networkOf(folder: string, source: PlaceSource): Promise<string | null> {
  if (source.platform === 'win32') return /^[\\/]{2}[^?.]/.test(folder) ? 'SMB' : null;
  const type = await source.systemType(folder);
  if (type === null) return null;
  // Some systems give the number as a signed one of 32 bits.
  const known = NETWORK_TYPES.get(type < 0 ? type + 2 ** 32 : type);
  if (known !== undefined) return known;
  if (type !== FUSE_TYPE) return null;
  const served = typeOfMount(await source.mounts(), folder);
  return served !== null && NETWORK_MOUNT.test(served) ? served.replace(/^fuse\./, '') : null;
}

/** Type of the mount that holds a folder: the longest mount point above it. Spaces are written \040 there (proc(5)). */
function typeOfMount(mounts: string, folder: string): string | null {
  let best: { point: string; type: string } | null = null;
  for (const line of mounts.split('\n')) {
    const [, written = '', type = ''] = line.split(' ');
    const point = written.replaceAll('\\040', ' ');
    const inside = folder === point || folder.startsWith(point.endsWith('/') ? point : `${point}/`);
    if (point !== '' && inside && point.length >= (best?.point.length ?? 0)) best = { point, type };
  }
  return best?.type ?? null;
}
