/** What kind of picture some bytes are, and how large. */
export type ImageHead = {
  readonly mediaType: 'image/png' | 'image/jpeg' | 'image/webp';
  readonly widthPx: number;
  readonly heightPx: number;
};

/**
 * Looks at the first bytes of a picture: PNG (ISO/IEC 15948), JPEG (ITU-T T.81) or WebP (RFC 9649). What a name or a server
 * says of it is not asked.
 *
 * @returns null for anything else, and where the size cannot be found
 */
export function readImageHead(bytes: Uint8Array): ImageHead | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const head = pngHead(view) ?? jpegHead(view) ?? webpHead(view);
  return head !== null && head.widthPx > 0 && head.heightPx > 0 ? head : null;
}

function hasText(view: DataView, offset: number, text: string): boolean {
  if (view.byteLength < offset + text.length) return false;
  return [...text].every((sign, index) => view.getUint8(offset + index) === sign.charCodeAt(0));
}

function pngHead(view: DataView): ImageHead | null {
  if (view.byteLength < 24 || !hasText(view, 0, '\x89PNG\r\n\x1a\n') || !hasText(view, 12, 'IHDR')) return null;
  return { mediaType: 'image/png', widthPx: view.getUint32(16), heightPx: view.getUint32(20) };
}

/** Markers without a length: fill bytes, restarts, start and end of the picture. */
const isBare = (marker: number): boolean => marker === 0xff || (marker >= 0xd0 && marker <= 0xd9) || marker === 1;
/** Start of a frame; 0xc4, 0xc8 and 0xcc in the same range are tables. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

function jpegHead(view: DataView): ImageHead | null {
  if (!hasText(view, 0, '\xff\xd8\xff')) return null;
  let at = 2;
  while (at + 9 < view.byteLength) {
    if (view.getUint8(at) !== 0xff) return null;
    const marker = view.getUint8(at + 1);
    if (isFrame(marker)) {
      return { mediaType: 'image/jpeg', heightPx: view.getUint16(at + 5), widthPx: view.getUint16(at + 7) };
    }
    const length = view.getUint16(at + 2);
    if (!isBare(marker) && length < 2) return null;
    at += marker === 0xff ? 1 : isBare(marker) ? 2 : 2 + length;
  }
  return null;
}

function webpHead(view: DataView): ImageHead | null {
  if (view.byteLength < 30 || !hasText(view, 0, 'RIFF') || !hasText(view, 8, 'WEBP')) return null;
  const mediaType = 'image/webp';
  if (hasText(view, 12, 'VP8X')) return { mediaType, widthPx: uint24(view, 24) + 1, heightPx: uint24(view, 27) + 1 };
  if (hasText(view, 12, 'VP8L')) {
    const bits = view.getUint32(21, true);
    return { mediaType, widthPx: (bits & 0x3fff) + 1, heightPx: ((bits >>> 14) & 0x3fff) + 1 };
  }
  if (!hasText(view, 12, 'VP8 ')) return null;
  return { mediaType, widthPx: view.getUint16(26, true) & 0x3fff, heightPx: view.getUint16(28, true) & 0x3fff };
}

function uint24(view: DataView, offset: number): number {
  return view.getUint16(offset, true) + view.getUint8(offset + 2) * 65_536;
}
