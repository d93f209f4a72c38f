import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';

/**
 * The mark in Electron's program file after which its fuses stand: a version byte, a count, and one character for each fuse, '1' on and
 * '0' off. Source: "Electron Fuses", electronjs.org/docs/latest/tutorial/fuses, and the package @electron/fuses.
 */
const MARK = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';

/** The fuses in their order in the program file. Source: FuseV1Options of the package @electron/fuses. */
export const FUSES = [
  'runAsNode',
  'enableCookieEncryption',
  'enableNodeOptionsEnvironmentVariable',
  'enableNodeCliInspectArguments',
  'enableEmbeddedAsarIntegrityValidation',
  'onlyLoadAppFromAsar',
  'loadBrowserProcessSpecificV8Snapshot',
  'grantFileProtocolExtraPrivileges',
] as const;
export type Fuse = (typeof FUSES)[number];

/** As Electron leaves them: what a program has that sets none. */
const AS_SHIPPED = '10110001';

/** A folder that looks to a packager like Electron's own for Linux: a program file that does nothing but has fuses. */
export async function writeStandIn(folder: string): Promise<void> {
  await mkdir(path.join(folder, 'resources'), { recursive: true });
  const program = Buffer.concat([
    Buffer.from('#!/bin/sh\nexit 1\n'),
    Buffer.from(MARK),
    Buffer.from([1, AS_SHIPPED.length]),
    Buffer.from(AS_SHIPPED),
  ]);
  await writeFile(path.join(folder, 'electron'), program, { mode: 0o755 });
  await writeFile(path.join(folder, 'LICENSE'), 'A stand-in for the licence of Electron.\n');
}

/** The fuses of a program file, by name; null where it has none. */
export function readFuses(program: Buffer): Readonly<Record<Fuse, boolean>> | null {
  const at = program.indexOf(MARK);
  if (at < 0) return null;
  const first = at + MARK.length + 2;
  return Object.fromEntries(FUSES.map((name, index) => [name, program[first + index] === 0x31])) as Record<
    Fuse,
    boolean
  >;
}
