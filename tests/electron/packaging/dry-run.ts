import { execFile } from 'node:child_process';
import { copyFile, cp, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { BUNDLES, PACKAGE_FOLDER, packaging } from '../../../electron/packaging/config.ts';
import { joinHost, startHost } from '../loopback/host.ts';
import { extractArchive, listArchive } from './archive.ts';
import { missingFrom, strangersIn } from './contents.ts';
import { driveProgram } from './drive-program.ts';
import { readFuses, writeStandIn } from './stand-in.ts';

/**
 * Packages the program for Linux around a stand-in for Electron, which need not be fetched, and tries the result: its fuses are set, its
 * archive holds what runs and nothing else, and the program in it opens a sample, reads a file and plans a day, away from this checkout
 * and its packages. Run as `npm run package:dry`. It cannot show that Electron itself starts.
 */
const begun = performance.now();
const work = await mkdtemp(path.join(tmpdir(), 'swardway-package-'));
try {
  const standIn = path.join(work, 'electron');
  await writeStandIn(standIn);
  const packing = ['electron/tools/run.mjs', 'electron/packaging/package.ts', '--folder', '--electron', standIn];
  await promisify(execFile)(process.execPath, packing, { maxBuffer: 16 * 1024 * 1024 });
  const folder = path.resolve(PACKAGE_FOLDER, 'linux-unpacked');
  await checkFuses(path.join(folder, 'swardway'));
  await checkContents(path.join(folder, 'resources/app.asar'));
  await tryProgram(path.join(folder, 'resources'), path.join(work, 'resources'), path.join(work, 'home'));
  console.log(`The package holds what it needs, and runs (${((performance.now() - begun) / 1000).toFixed(1)} s).`);
} finally {
  await rm(work, { recursive: true, force: true });
}

async function checkFuses(program: string): Promise<void> {
  const fuses = readFuses(await readFile(program));
  for (const [name, wanted] of Object.entries(packaging.electronFuses ?? {})) {
    const found = fuses?.[name as keyof typeof fuses];
    if (found !== wanted) throw new Error(`the fuse ${name} is ${found}, not ${wanted}`);
  }
  console.log(`fuses: ${JSON.stringify(fuses)}`);
}

async function checkContents(archive: string): Promise<void> {
  const files = await listArchive(archive);
  const sources = await Promise.all(BUNDLES.map((name) => readFile(`dist/electron/${name}.cjs`, 'utf8')));
  const names = files.map(({ name }) => name);
  const missing = missingFrom(names, sources);
  if (missing.length > 0) throw new Error(`missing: ${missing.join(', ')}`);
  const strangers = strangersIn(names);
  if (strangers.length > 0) throw new Error(`not needed: ${strangers.join(', ')}`);
  const loose = files.filter(({ name }) => name.endsWith('.node')).filter(({ unpacked }) => !unpacked);
  if (loose.length > 0) throw new Error('the binary of the driver lies inside the archive');
  const bytes = files.reduce((sum, { size }) => sum + size, 0);
  console.log(`archive: ${files.length} files, ${(bytes / 1e6).toFixed(1)} MB`);
}

/** The loopback host is no part of the package: it is laid into the unpacked archive to use what lies there. */
async function tryProgram(packed: string, resources: string, home: string): Promise<void> {
  const program = path.join(resources, 'app.asar');
  await extractArchive(path.join(packed, 'app.asar'), program);
  await cp(path.join(packed, 'sample-routes'), path.join(resources, 'sample-routes'), { recursive: true });
  const bundle = path.join(program, 'dist/electron/loopback.cjs');
  await copyFile('dist/electron/loopback.cjs', bundle);
  const running = await startHost(home, [], bundle);
  const { host, leave } = await joinHost(running);
  const lines = await driveProgram(host, running.address).catch(async (error: unknown) => {
    await running.stop();
    throw error;
  });
  leave();
  const code = await running.stop();
  if (code !== 0) throw new Error(`the program ended with ${code}`);
  for (const line of lines) console.log(line);
}
