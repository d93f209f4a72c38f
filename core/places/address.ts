import { direction, nameWord, streetType } from './street-words.ts';

/** A street name in parts, each in its short form. */
export type StreetName = {
  /** Direction before the name: "n"; empty where there is none. */
  readonly before: string;
  /** The name's words in one form, "mt auburn". */
  readonly name: string;
  /** "st", "ave"; empty where there is none. */
  readonly type: string;
  /** Direction after the type. */
  readonly after: string;
};

/** An address as it can be looked up. */
export type Address = {
  readonly number: number;
  readonly street: StreetName;
  /** Words that ended in a point, "mass." for a longer name. */
  readonly shortened: readonly string[];
  /** Five figures; null where the address has none. */
  readonly zip: string | null;
};

const UNIT_WORDS = ['apt', 'apartment', 'unit', 'ste', 'suite', 'rm', 'room', 'fl', 'floor', 'bldg', 'lot', 'rear'];
/** House numbers that differ by more are two addresses, or one with a hyphen of its own. */
const WIDEST_PAIR = 120;

/**
 * Reads "12-16 N Third Street Apt 2, Springfield 01103". Unit, letters of a house number, words in brackets and everything
 * behind a comma or slash but the ZIP are dropped. Of a pair of numbers the middle one of the same side is taken.
 *
 * @returns null where there is no house number or no street
 */
export function readAddress(text: string): Address | null {
  const zip = /(?:^|\D)(\d{5})(?:-\d{4})?\s*$/.exec(text)?.[1] ?? null;
  for (const part of text.replace(/\([^)]*\)|\s1\/2(?=\s)/g, ' ').split(/[,;/\n]/)) {
    const found = /^\s*(\d{1,6})[a-z]?(?:\s*-\s*(\d{1,6})[a-z]?)?\s+(.+)$/i.exec(part);
    if (found === null) continue;
    const words = streetWords(found[3] ?? '');
    const street = readStreetName(words.join(' '));
    if (street === null) continue;
    const shortened = words.filter((word) => word.endsWith('.') && word.length > 3).map((word) => word.slice(0, -1));
    return { number: middleNumber(Number(found[1]), found[2]), street, shortened, zip };
  }
  return null;
}

function middleNumber(first: number, secondText: string | undefined): number {
  const second = secondText === undefined ? first : Number(secondText);
  if (second <= first || second - first > WIDEST_PAIR) return first;
  return first + 2 * Math.round((second - first) / 4);
}

/** The words up to a unit. */
function streetWords(text: string): readonly string[] {
  const words = text
    .toLowerCase()
    .replace(/#.*$/, '')
    .split(/\s+/)
    .filter((word) => word !== '');
  const unit = words.findIndex((word, index) => index > 0 && UNIT_WORDS.includes(word.replace(/\W/g, '')));
  return unit < 0 ? words : words.slice(0, unit);
}

/** A street name in parts; null where nothing is left of it. */
export function readStreetName(text: string): StreetName | null {
  const words = text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}&\s-]/gu, '')
    .split(/[\s-]+/)
    .filter((word) => word !== '');
  const after = words.length > 1 ? takeLast(words, direction) : '';
  const type = words.length > 1 ? takeLast(words, streetType) : '';
  const before = words.length > 1 ? takeFirst(words, direction) : '';
  const name = words.map(nameWord).join(' ');
  return name === '' ? null : { before, name, type, after };
}

function takeLast(words: string[], reading: (word: string) => string | null): string {
  const found = reading(words.at(-1) ?? '');
  if (found !== null) words.pop();
  return found ?? '';
}

function takeFirst(words: string[], reading: (word: string) => string | null): string {
  const found = reading(words[0] ?? '');
  if (found !== null) words.shift();
  return found ?? '';
}
