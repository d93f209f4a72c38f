import { createRandom, type Random } from '../../core/base/index.ts';

type Change = (bytes: Uint8Array, random: Random) => Uint8Array;

/** Longest piece that is taken out, doubled or moved. */
const LONGEST_PIECE = 2000;

/** Texts that numbers of a file are replaced with. */
const ODD_NUMBERS = [
  '1e308',
  '-1e308',
  '99999999999999999999',
  'NaN',
  'Infinity',
  '-0',
  '0',
  '1e-320',
  '-181',
  '91',
  '2147483648',
  '4294967295',
  '0x10',
  '1,5',
  '',
];

/** Pieces that mean something to one format or another. */
const ODD_PIECES = [
  '<',
  '>',
  '"',
  "'",
  '&',
  '&lt;',
  '&#0;',
  ']]>',
  '<!--',
  '<!DOCTYPE a>',
  '\0',
  '\r',
  '\n',
  ';',
  ',',
  '(',
  ')',
];

function pieceOf(bytes: Uint8Array, random: Random): readonly [start: number, end: number] {
  const start = random.below(bytes.length + 1);
  const length = random.below(Math.min(LONGEST_PIECE, bytes.length - start) + 1);
  return [start, start + length];
}

function spliced(bytes: Uint8Array, start: number, end: number, piece: Uint8Array): Uint8Array {
  const result = new Uint8Array(bytes.length - (end - start) + piece.length);
  result.set(bytes.subarray(0, start));
  result.set(piece, start);
  result.set(bytes.subarray(end), start + piece.length);
  return result;
}

const ascii = (text: string): Uint8Array => Uint8Array.from(text, (character) => character.charCodeAt(0));
const pick = <Item>(items: readonly Item[], random: Random): Item => items[random.below(items.length)] as Item;

/** Where a number stands in the bytes, from a random place on; null where there is none. */
function numberAt(bytes: Uint8Array, random: Random): readonly [start: number, end: number] | null {
  const isDigit = (byte: number | undefined) => byte !== undefined && byte >= 0x30 && byte <= 0x39;
  const from = random.below(bytes.length + 1);
  const start = bytes.findIndex((byte, at) => at >= from && isDigit(byte));
  if (start < 0) return null;
  let end = start;
  while (isDigit(bytes[end]) || bytes[end] === 0x2e) end += 1;
  return [start, end];
}

const CHANGES: readonly Change[] = [
  /** One bit. */
  (bytes, random) => {
    const at = random.below(bytes.length);
    return bytes.map((byte, index) => (index === at ? byte ^ (1 << random.below(8)) : byte));
  },
  /** One byte. */
  (bytes, random) => {
    const at = random.below(bytes.length);
    const value = pick([0, 1, 0x7f, 0x80, 0xff, random.below(256)], random);
    return bytes.map((byte, index) => (index === at ? value : byte));
  },
  /** Cut short. */
  (bytes, random) => bytes.slice(0, random.below(bytes.length + 1)),
  /** A piece taken out. */
  (bytes, random) => spliced(bytes, ...pieceOf(bytes, random), new Uint8Array(0)),
  /** A piece doubled. */
  (bytes, random) => {
    const [start, end] = pieceOf(bytes, random);
    return spliced(bytes, end, end, bytes.slice(start, end));
  },
  /** A piece moved somewhere else. */
  (bytes, random) => {
    const [start, end] = pieceOf(bytes, random);
    const rest = spliced(bytes, start, end, new Uint8Array(0));
    const at = random.below(rest.length + 1);
    return spliced(rest, at, at, bytes.slice(start, end));
  },
  /** Random bytes put in. */
  (bytes, random) => {
    const at = random.below(bytes.length + 1);
    const noise = Uint8Array.from({ length: 1 + random.below(40) }, () => random.below(256));
    return spliced(bytes, at, at, noise);
  },
  /** A number replaced. */
  (bytes, random) => {
    const place = numberAt(bytes, random);
    return place === null ? bytes : spliced(bytes, ...place, ascii(pick(ODD_NUMBERS, random)));
  },
  /** A meaningful piece put in, sometimes very often. */
  (bytes, random) => {
    const at = random.below(bytes.length + 1);
    const times = random.below(20) === 0 ? 5000 : 1 + random.below(3);
    return spliced(bytes, at, at, ascii(pick(ODD_PIECES, random).repeat(times)));
  },
];

/** A file changed in one to four ways. The same bytes and seed always give the same file. */
export function mutate(bytes: Uint8Array, seed: number): Uint8Array {
  const random = createRandom(seed);
  let result = bytes;
  for (let count = 1 + random.below(4); count > 0; count -= 1) {
    if (result.length > 0) result = pick(CHANGES, random)(result, random);
  }
  return result;
}
