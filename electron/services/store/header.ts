import { open } from 'node:fs/promises';

/** What the first bytes of a file tell, without SQLite touching it. */
export type FileHeader =
  | { readonly kind: 'sqlite'; readonly applicationId: number; readonly userVersion: number }
  | { readonly kind: 'other' };

const MAGIC = 'SQLite format 3\0';
const HEADER_BYTES = 100;
/** Byte offsets in the header: "Database File Format", sections 1.3.15 and 1.3.17, sqlite.org/fileformat2.html. */
const USER_VERSION_AT = 60;
const APPLICATION_ID_AT = 68;

/** Rejects with the file system's own error when the file cannot be read. */
export async function readHeader(file: string): Promise<FileHeader> {
  const handle = await open(file, 'r');
  try {
    const bytes = Buffer.alloc(HEADER_BYTES);
    const { bytesRead } = await handle.read(bytes, 0, HEADER_BYTES, 0);
    if (bytesRead < HEADER_BYTES || bytes.toString('latin1', 0, MAGIC.length) !== MAGIC) return { kind: 'other' };
    return {
      kind: 'sqlite',
      applicationId: bytes.readInt32BE(APPLICATION_ID_AT),
      userVersion: bytes.readInt32BE(USER_VERSION_AT),
    };
  } finally {
    await handle.close();
  }
}
