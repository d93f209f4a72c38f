import { COMMANDS, referenceOf } from '../cli/index.ts';

const BEGIN =
  '<!-- The part from here to the next mark is written by `npm run schemas` from the table of commands. -->';
const END = '<!-- Here it ends. -->';

/** docs/cli.md with its reference part made anew; everything outside the two marks stays. Throws where a mark is missing. */
export function withReference(page: string): string {
  const begin = page.indexOf(BEGIN);
  const end = page.indexOf(END);
  if (begin < 0 || end < begin) throw new Error('docs/cli.md has lost the marks around its reference part.');
  return `${page.slice(0, begin)}${BEGIN}\n\n${referenceOf(COMMANDS)}\n${page.slice(end)}`;
}
