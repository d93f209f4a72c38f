import { err, ok, type Result } from '../base/index.ts';
import { PAPER } from './texts/index.ts';

/** Sizes of paper: 8 1/2 by 11 in, or A4. */
export const PAPERS = ['letter', 'a4'] as const;
/** Paper that sheets are made for. */
export type Paper = (typeof PAPERS)[number];

/** Sizes of print. */
export const PRINTS = ['normal', 'large'] as const;
/** How large the letters are: 12 pt and up, or 16 pt and up. */
export type Print = (typeof PRINTS)[number];

/** What a printed page is like. Absent: letter paper, normal print. */
export type PageOptions = { readonly paper?: Paper; readonly print?: Print };

/** Paper as somebody wrote it, in either case. Fails with 'request-invalid'. */
export function paperOf(text: string): Result<Paper> {
  const found = PAPERS.find((each) => each === text.trim().toLowerCase());
  if (found !== undefined) return ok(found);
  return err('request-invalid', PAPER.place, PAPER.unknown(text), PAPER.choose(PAPERS));
}
