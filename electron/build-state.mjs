/** Tells whether dist is older than what it is made from, and keeps two builds from running at once. */
import { mkdir, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';

const SOURCE_FOLDERS = ['core', 'electron', 'renderer'];
const SOURCE_FILES = ['package.json', 'package-lock.json'];

const modified = async (file) => {
  try {
    return (await stat(file)).mtimeMs;
  } catch {
    return null;
  }
};

/** Every file under a folder, as absolute paths; an absent folder has none. */
const filesUnder = async (folder) => {
  try {
    const entries = await readdir(folder, {
      recursive: true,
      withFileTypes: true,
    });
    return entries.filter((entry) => entry.isFile()).map((entry) => path.join(entry.parentPath, entry.name));
  } catch {
    return [];
  }
};

/**
 * Why a build is needed, or null when the stamp file is younger than every source.
 * Folders count too, so that a deleted or renamed source is noticed.
 */
export const staleReason = async (root, stamp) => {
  const builtAt = await modified(stamp);
  if (builtAt === null) return 'nothing built yet';
  for (const folder of SOURCE_FOLDERS) {
    const files = await filesUnder(path.join(root, folder));
    const folders = new Set(files.map((file) => path.dirname(file)));
    for (const file of [...files, ...folders]) {
      if (((await modified(file)) ?? Number.POSITIVE_INFINITY) > builtAt) {
        return `${path.relative(root, file)} is newer than the last build`;
      }
    }
  }
  for (const file of SOURCE_FILES) {
    if (((await modified(path.join(root, file))) ?? 0) > builtAt) return `${file} is newer than the last build`;
  }
  return null;
};

const LOCK_WAIT_MS = 180_000;
const LOCK_POLL_MS = 200;

const isAlive = (pid) => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
};

/** Creates the lock file with our process id; false when someone who still runs holds it. */
const tryLock = async (lock) => {
  try {
    await writeFile(lock, String(process.pid), { flag: 'wx' });
    return true;
  } catch (error) {
    if (error.code !== 'EEXIST') throw error;
    const holder = Number(await readFile(lock, 'utf8').catch(() => ''));
    if (holder > 0 && !isAlive(holder)) await rm(lock, { force: true });
    return false;
  }
};

/** Runs the work while holding a lock file; waits for another holder, and takes over from a dead one. */
export const withLock = async (lock, work) => {
  await mkdir(path.dirname(lock), { recursive: true });
  const deadline = Date.now() + LOCK_WAIT_MS;
  while (!(await tryLock(lock))) {
    if (Date.now() > deadline) throw new Error(`Another build still runs. If that is wrong, delete ${lock}.`);
    await new Promise((resolve) => setTimeout(resolve, LOCK_POLL_MS));
  }
  try {
    return await work();
  } finally {
    await rm(lock, { force: true });
  }
};
