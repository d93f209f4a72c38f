/** One square picture of an icon, as the bytes of a PNG. */
export type IconPicture = { readonly sizePx: number; readonly png: Uint8Array };

/** Sizes of the pictures in an icon for Windows, pixels. */
export const ICO_SIZES = [16, 24, 32, 48, 64, 128, 256] as const;

/**
 * Names of the pictures in an icon for macOS, and their sizes in pixels; a name with twice the pixels of another is for dense screens.
 * Source: "Apple Icon Image format", en.wikipedia.org/wiki/Apple_Icon_Image_format (Apple publishes no page of its own).
 */
export const ICNS_TYPES = [
  ['ic11', 32],
  ['ic12', 64],
  ['ic07', 128],
  ['ic13', 256],
  ['ic08', 256],
  ['ic14', 512],
  ['ic09', 512],
  ['ic10', 1024],
] as const;

/** Sizes of the pictures for Linux, pixels: a file of each. Source: the folders of the hicolor theme, freedesktop.org. */
export const LINUX_SIZES = [16, 32, 48, 64, 128, 256, 512] as const;

const ICO_HEAD = 6;
const ICO_ENTRY = 16;

/**
 * An icon for Windows: a head, a line for each picture, then the pictures.
 * Source: "Icons", learn.microsoft.com/windows/win32/menurc (ICONDIR, ICONDIRENTRY); 0 stands for 256 pixels.
 */
export function toIco(pictures: readonly IconPicture[]): Uint8Array {
  const head = Buffer.alloc(ICO_HEAD + ICO_ENTRY * pictures.length);
  head.writeUInt16LE(1, 2);
  head.writeUInt16LE(pictures.length, 4);
  let at = head.length;
  for (const [index, { sizePx, png }] of pictures.entries()) {
    const line = ICO_HEAD + ICO_ENTRY * index;
    head.writeUInt8(sizePx % 256, line);
    head.writeUInt8(sizePx % 256, line + 1);
    head.writeUInt16LE(1, line + 4);
    head.writeUInt16LE(32, line + 6);
    head.writeUInt32LE(png.length, line + 8);
    head.writeUInt32LE(at, line + 12);
    at += png.length;
  }
  return Buffer.concat([head, ...pictures.map(({ png }) => png)]);
}

/** An icon for macOS: a head with the length of the whole, then each picture after its name and length. */
export function toIcns(pictures: readonly IconPicture[]): Uint8Array {
  const blocks = ICNS_TYPES.flatMap(([type, sizePx]) => {
    const found = pictures.find((each) => each.sizePx === sizePx);
    return found === undefined ? [] : [block(type, found.png)];
  });
  return block('icns', Buffer.concat(blocks));
}

function block(type: string, bytes: Uint8Array): Buffer {
  const head = Buffer.alloc(8);
  head.write(type, 'latin1');
  head.writeUInt32BE(head.length + bytes.length, 4);
  return Buffer.concat([head, bytes]);
}
