/** What the program was asked to do when it was started. */
export type StartWishes = {
  readonly open: StartOpen;
  readonly openBrowser: boolean;
  /** Whether to stay with the browser even where Electron is present. */
  readonly browserOnly: boolean;
  /** Port of the loopback host; 0 for any free one. */
  readonly port: number;
};

/** 'sample' without an id is the sample that is shown first. */
export type StartOpen =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'sample'; readonly sampleId: string | null }
  | { readonly kind: 'file'; readonly file: string };

export type StartReading =
  | { readonly kind: 'start'; readonly wishes: StartWishes }
  | { readonly kind: 'help' }
  | { readonly kind: 'wrong'; readonly words: string };

export const START_USAGE = `Usage: npm start -- [BOOK] [--sample [NAME]] [--browser] [--no-open] [--port N]

  BOOK             a book file (.swardway) or a book in its JSON form to open
  --sample [NAME]  open an invented sample book
  --browser        use the browser even where Electron is present
  --no-open        do not open the browser, only print the address
  --port N         port of the address on this machine (any free one by default)`;

const HIGHEST_PORT = 65_535;

/** Reads the words after the program's name. */
export function readStartArguments(words: readonly string[]): StartReading {
  let wishes: StartWishes = { open: { kind: 'nothing' }, openBrowser: true, browserOnly: false, port: 0 };
  for (let at = 0; at < words.length; at += 1) {
    const word = words[at] ?? '';
    const next = words[at + 1];
    if (word === '--help' || word === '-h') return { kind: 'help' };
    if (word === '--no-open') wishes = { ...wishes, openBrowser: false };
    else if (word === '--browser') wishes = { ...wishes, browserOnly: true };
    else if (word === '--sample') {
      const named = next !== undefined && !next.startsWith('-');
      wishes = { ...wishes, open: { kind: 'sample', sampleId: named ? next : null } };
      if (named) at += 1;
    } else if (word === '--port') {
      const port = Number(next);
      if (next === undefined || !/^\d+$/.test(next) || port > HIGHEST_PORT) {
        return { kind: 'wrong', words: `--port needs a number from 0 to ${HIGHEST_PORT}.` };
      }
      wishes = { ...wishes, port };
      at += 1;
    } else if (word.startsWith('-')) return { kind: 'wrong', words: `Unknown option ${word}.` };
    else if (wishes.open.kind === 'file') return { kind: 'wrong', words: 'Only one book can be opened at the start.' };
    else wishes = { ...wishes, open: { kind: 'file', file: word } };
  }
  return { kind: 'start', wishes };
}
