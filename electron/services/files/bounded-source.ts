import { type FileHandle, open } from 'node:fs/promises';

type Slice = { readonly offset: number; readonly length: number };
type FilledSlice = Slice & { readonly data: ArrayBuffer };

/** Parts of a file, asked for by the reader of a format; of the shape that geotiff takes as its source. */
export type BoundedSource = {
  readonly fileSize: number;
  readonly fetch: (slices: readonly Slice[]) => Promise<ArrayBuffer[]>;
  readonly fetchSlice: (slice: Slice) => Promise<FilledSlice>;
  readonly close: () => Promise<void>;
};

/** A reader may look this far beyond the end, where it gets zeros: it asks for whole blocks. */
const SLACK_BYTES = 64 * 1024;
/** More than this is not read at once. */
const LONGEST_SLICE = 128 * 1024 * 1024;

/**
 * Opens a file for reading in parts. What lies far outside it is refused with a RangeError, where a plain read would first make
 * room for it: a damaged file asks for gigabytes. Rejects with the system's error where it cannot be opened.
 */
export async function openBoundedSource(file: string): Promise<BoundedSource> {
  const handle = await open(file, 'r');
  const { size } = await handle.stat();
  const fetchSlice = async ({ offset, length }: Slice): Promise<FilledSlice> => {
    const isInside = offset >= 0 && length >= 0 && offset + length <= size + SLACK_BYTES && length <= LONGEST_SLICE;
    if (!isInside) throw new RangeError(`bytes ${offset} to ${offset + length} do not lie in a file of ${size}`);
    return { offset, length, data: await readFully(handle, offset, length) };
  };
  return {
    fileSize: size,
    fetchSlice,
    fetch: (slices) => Promise.all(slices.map(async (slice) => (await fetchSlice(slice)).data)),
    close: () => handle.close(),
  };
}

async function readFully(handle: FileHandle, offset: number, length: number): Promise<ArrayBuffer> {
  const bytes = new Uint8Array(length);
  let filled = 0;
  while (filled < length) {
    const { bytesRead } = await handle.read(bytes, filled, length - filled, offset + filled);
    if (bytesRead === 0) break;
    filled += bytesRead;
  }
  return bytes.buffer;
}
