/**
 * Words of street names and the short forms they are kept under. Short forms of street types and directions are those of the
 * postal addressing standard of the United States (USPS Publication 28, appendix C1 and section 233, from memory).
 */

const TYPES: Readonly<Record<string, readonly string[]>> = {
  aly: ['alley', 'ally'],
  ave: ['avenue', 'av', 'aven'],
  blvd: ['boulevard', 'boul'],
  br: ['branch', 'brnch'],
  cir: ['circle', 'circ', 'crcl'],
  cres: ['crescent', 'crsent'],
  ct: ['court', 'crt'],
  cv: ['cove'],
  dr: ['drive', 'drv', 'driv'],
  expy: ['expressway', 'expr'],
  ext: ['extension', 'extn'],
  grn: ['green'],
  hill: ['hl'],
  hts: ['heights', 'ht'],
  hwy: ['highway', 'hiway', 'hway'],
  ln: ['lane'],
  loop: ['loops'],
  mews: [],
  park: ['pk', 'prk'],
  path: ['paths'],
  pike: ['pikes'],
  pkwy: ['parkway', 'parkwy', 'pky', 'pkway'],
  pl: ['place'],
  plz: ['plaza', 'plza'],
  pt: ['point'],
  rd: ['road'],
  rdg: ['ridge'],
  row: [],
  run: [],
  sq: ['square', 'sqr'],
  st: ['street', 'str', 'strt'],
  ter: ['terrace', 'terr'],
  tpke: ['turnpike', 'tpk', 'trnpk', 'turnpk'],
  trl: ['trail', 'tr'],
  walk: ['walks'],
  way: ['wy'],
  xing: ['crossing', 'crssng'],
};

const DIRECTIONS: Readonly<Record<string, readonly string[]>> = {
  n: ['north'],
  s: ['south'],
  e: ['east'],
  w: ['west'],
  ne: ['northeast'],
  nw: ['northwest'],
  se: ['southeast'],
  sw: ['southwest'],
};

/** Words inside names that people write in two ways. */
const NAME_WORDS: Readonly<Record<string, readonly string[]>> = {
  mt: ['mount'],
  mtn: ['mountain'],
  st: ['saint'],
  ft: ['fort'],
  dr: ['doctor'],
  jr: ['junior'],
  and: ['&'],
};

const ORDINALS: readonly string[] = [
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
  'eleventh',
  'twelfth',
  'thirteenth',
  'fourteenth',
  'fifteenth',
  'sixteenth',
  'seventeenth',
  'eighteenth',
  'nineteenth',
  'twentieth',
];

function turned(table: Readonly<Record<string, readonly string[]>>): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(table).flatMap(([short, others]) => [short, ...others].map((word) => [word, short] as const)),
  );
}

const TYPE_OF = turned(TYPES);
const DIRECTION_OF = turned(DIRECTIONS);
const NAME_WORD_OF = turned(NAME_WORDS);

/** "avenue" and "av" are "ave"; null for a word that is no street type. */
export function streetType(word: string): string | null {
  return TYPE_OF.get(word) ?? null;
}

/** "north" is "n"; null for a word that is no direction. */
export function direction(word: string): string | null {
  return DIRECTION_OF.get(word) ?? null;
}

/** One form for a word of a name: "mount" is "mt", "third" is "3rd", "3" stays. */
export function nameWord(word: string): string {
  const ordinal = ORDINALS.indexOf(word);
  return ordinal >= 0 ? ordinalFigure(ordinal + 1) : (NAME_WORD_OF.get(word) ?? word);
}

function ordinalFigure(number: number): string {
  const ending = number > 3 && number < 21 ? 'th' : (['th', 'st', 'nd', 'rd'][number % 10] ?? 'th');
  return `${number}${ending}`;
}
