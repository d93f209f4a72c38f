import type { Exclusion } from '../book/index.ts';

/** Words by which files call what is not turf. */
const WORDS: readonly { readonly what: Exclusion['what']; readonly pattern: RegExp }[] = [
  { what: 'building', pattern: /build|house|garage|shed|roof|structure|dwelling/i },
  { what: 'water', pattern: /pool|pond|water|lake|stream|creek|ditch/i },
  { what: 'play', pattern: /play|swing|sandbox/i },
  { what: 'garden', pattern: /garden|vegetable/i },
  { what: 'bed', pattern: /\bbeds?\b|plant|shrub|flower|mulch/i },
  { what: 'paving', pattern: /pav|drive|walk|patio|road|street|deck|parking|concrete|asphalt|court/i },
];

/** The kind of exclusion that a word of a file means; 'other' where none is known. */
export function exclusionKind(text: string): Exclusion['what'] {
  return WORDS.find(({ what, pattern }) => what === text.trim().toLowerCase() || pattern.test(text))?.what ?? 'other';
}
