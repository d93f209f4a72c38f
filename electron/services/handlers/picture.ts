import { createHash } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import { err, ok, type Result } from '../../../core/base/index.ts';
import type { KeptPicture } from '../../../core/contract/index.ts';
import { readImageHead } from '../../../core/imagery/index.ts';
import { describePlace, fileFailure, isFileError } from '../files/index.ts';
import { type PictureAnswer, pictureAnswer, sameText } from '../imagery/index.ts';
import type { Library, Session } from '../library/index.ts';

/** Larger pictures are refused: 20 MB. */
const LARGEST_PICTURE = 20_000_000;
/** A picture of more pixels takes more memory than a screen should be asked for. */
const MOST_PIXELS = 100_000_000;
const PICTURES_PATH = '/pictures/';
const PICTURE_PATH = /^\/pictures\/([\w-]{16})\/([a-f0-9]{32})$/;

/**
 * Puts a PNG or JPEG into the book file. Fails as the file system does, with 'file-too-large', or with 'format-invalid' for
 * anything else.
 */
export async function addPicture({ entry }: Session, file: string): Promise<Result<KeptPicture>> {
  const where = describePlace(file);
  try {
    const { size } = await stat(file);
    if (size > LARGEST_PICTURE)
      return tooLarge(where, `The picture has ${Math.round(size / 1e6)} MB; at most 20 are kept.`);
    const bytes = await readFile(file);
    const head = readImageHead(bytes);
    if (head === null || head.mediaType === 'image/webp') {
      return err('format-invalid', where, 'This is no PNG or JPEG picture.', 'Save it as PNG or JPEG and try again.');
    }
    const { mediaType, widthPx, heightPx } = head;
    if (widthPx * heightPx > MOST_PIXELS) return tooLarge(where, `The picture has ${widthPx} x ${heightPx} pixels.`);
    const name = createHash('sha256').update(bytes).digest('hex').slice(0, 32);
    const saved = await entry.store.savePicture({ name, mediaType, bytes });
    return saved.ok ? ok({ picture: name, widthPx, heightPx }) : saved;
  } catch (error) {
    if (!isFileError(error)) throw error;
    return fileFailure(error, file);
  }
}

function tooLarge(where: string, detail: string): Result<never> {
  return err('file-too-large', where, detail, 'Save it smaller; 4,000 pixels along an edge are plenty for a lawn.');
}

/** Only who has the book open knows its session, and so the address of its pictures. */
export function picturesAddress({ session }: Session): string {
  return `${PICTURES_PATH}${session}/`;
}

/** The picture of an open book under a path of the host's own origin; null for any other path. */
export async function servePicture(library: Library, addressPath: string): Promise<PictureAnswer | null> {
  const [, name = '', picture = ''] = PICTURE_PATH.exec(addressPath) ?? [];
  const session = picture === '' ? undefined : library.sessions().find((each) => sameText(each.session, name));
  if (session === undefined) return null;
  const read = await session.entry.store.readPicture(picture);
  return read.ok && read.value !== null ? pictureAnswer(read.value.bytes) : null;
}
