import { decodeLatin, decodeUtf8, decodeWindows1252 } from '../text/index.ts';
import type { GroundReadOptions } from '../types.ts';

/** How the letters of a table are read. */
export type TableText = {
  readonly decode: (bytes: Uint8Array) => string;
  /** Asked after the reading: what was doubtful about the letters, or null. */
  readonly doubt: () => string | null;
};

/**
 * Language drivers of a .dbf file (byte 29) and the encodings they stand for, by the names of the WHATWG Encoding Standard:
 * dBASE's table of language driver ids as Esri's and GDAL's documentation list it. 0x57 is "the system's own", in practice
 * windows-1252.
 */
const DRIVERS: Readonly<Record<number, string>> = {
  3: 'windows-1252',
  87: 'windows-1252',
  38: 'ibm866',
  101: 'ibm866',
  19: 'shift_jis',
  123: 'shift_jis',
  77: 'gbk',
  122: 'gbk',
  78: 'euc-kr',
  79: 'big5',
  120: 'big5',
  200: 'windows-1250',
  201: 'windows-1251',
  202: 'windows-1254',
  203: 'windows-1253',
  204: 'windows-1257',
};

/**
 * The encoding of a table by its .cpg file, else by its language driver; null where neither says one, and the text of the .cpg
 * file where it says one that is not known.
 */
export function encodingName(cpg: string | null, driver: number): string | null {
  const said = cpg?.trim().toLowerCase() ?? '';
  if (said === '') return DRIVERS[driver] ?? null;
  if (/^(?:utf-?8|65001|cp_?65001)$/.test(said)) return 'utf-8';
  const latin = /^(?:iso)?[-_ ]?8859[-_ ]?(\d{1,2})$/.exec(said)?.[1];
  if (latin !== undefined) return `iso-8859-${latin}`;
  const page = /^(?:ansi|cp|windows|win|ms)?[-_ ]?(\d{3,5})$/.exec(said)?.[1];
  if (page !== undefined) return PAGES[page] ?? (/^125\d$/.test(page) ? `windows-${page}` : said);
  const named = /^ldid\/(\d{1,3})$/.exec(said)?.[1];
  return named === undefined ? said : (DRIVERS[Number(named)] ?? said);
}

const PAGES: Readonly<Record<string, string>> = {
  '866': 'ibm866',
  '932': 'shift_jis',
  '936': 'gbk',
  '949': 'euc-kr',
  '950': 'big5',
  '28591': 'iso-8859-1',
};

/**
 * Reads letters in the named encoding. Where none is named, or the host does not know it, a value that is UTF-8 is read as such
 * and any other as windows-1252; the latter is told afterwards.
 */
export function tableText(name: string | null, hostDecode: GroundReadOptions['decode']): TableText {
  let guessed = false;
  const guess = (bytes: Uint8Array): string => {
    const text = decodeWhole(bytes);
    if (text !== null) return text;
    guessed = true;
    return decodeWindows1252(bytes);
  };
  const doubt = () => {
    if (!guessed) return null;
    const because =
      name === null ? 'The table does not say its encoding' : `The table's encoding "${name.slice(0, 40)}" did not fit`;
    return `${because}; some letters were read as windows-1252. Look at names with accents.`;
  };
  if (name === 'iso-8859-1') return { decode: decodeLatin, doubt };
  if (name === 'windows-1252') return { decode: decodeWindows1252, doubt };
  if (name === null || name === 'utf-8') return { decode: guess, doubt };
  return {
    decode: (bytes) => (isAscii(bytes) ? decodeLatin(bytes) : (hostDecode?.(bytes, name) ?? guess(bytes))),
    doubt,
  };
}

/** UTF-8, also where a field was cut inside its last letter. */
function decodeWhole(bytes: Uint8Array): string | null {
  for (let less = 0; less < 4 && less <= bytes.length; less += 1) {
    const cut = bytes.subarray(0, bytes.length - less);
    // Only the beginning of a letter of several bytes may be cut away.
    if (less > 0 && (bytes[bytes.length - less] ?? 0) < 0x80) return null;
    const text = decodeUtf8(cut);
    if (text !== null) return text;
  }
  return null;
}

function isAscii(bytes: Uint8Array): boolean {
  return bytes.every((byte) => byte < 0x80);
}
