/**
 * A short fingerprint of a JSON-like value: 16 hexadecimal digits from two 32-bit FNV-1a passes over its canonical text
 * (object keys sorted). Used to tell whether a plan still belongs to its problem; it is no protection against forgery.
 * FNV-1a offset basis and prime: G. Fowler, L. C. Noll, K.-P. Vo (from memory).
 */
export function fingerprint(value: unknown): string {
  const text = canonicalJson(value);
  return hex(fnv1a(text, 0x811c9dc5)) + hex(fnv1a(text, 0x01000193 ^ text.length));
}

/** The same of a row of 32-bit numbers, word by word: rows of hundreds of millions have no text. */
export function fingerprintNumbers(numbers: Int32Array): string {
  let left = 0x811c9dc5 | 0;
  let right = 0x01000193 ^ numbers.length;
  for (const word of numbers) {
    left = Math.imul(left ^ word, 0x01000193);
    left ^= left >>> 15;
    right = Math.imul(right ^ word, 0x01000193);
    right ^= right >>> 13;
  }
  return hex(left >>> 0) + hex(right >>> 0);
}

/** JSON text with object keys in sorted order, so that equal values give equal text. */
export function canonicalJson(value: unknown): string {
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'null';
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  const entries = Object.entries(value)
    .filter(([, each]) => each !== undefined)
    .sort(([left], [right]) => (left < right ? -1 : left > right ? 1 : 0));
  return `{${entries.map(([key, each]) => `${JSON.stringify(key)}:${canonicalJson(each)}`).join(',')}}`;
}

function fnv1a(text: string, basis: number): number {
  let hash = basis | 0;
  for (let index = 0; index < text.length; index += 1) {
    hash ^= text.charCodeAt(index);
    hash = Math.imul(hash, 0x01000193);
  }
  return hash >>> 0;
}

function hex(word: number): string {
  return word.toString(16).padStart(8, '0');
}
