/** Columns of the table of `npm run bench:passes` by what they are called in the summary. */
const SHOWN: readonly (readonly [title: string, columns: readonly string[]])[] = [
  ['ground', ['ground']],
  ['head', ['head']],
  ['outlines', ['outlines']],
  ['missed = hand trim, median / 95th %', ['missed % median', 'missed % p95']],
  ['off target, worst %', ['off target % max']],
  ['way over ideal, median / 95th', ['way over ideal median', 'way over ideal p95']],
  ['runs into corners, median', ['runs into corners median']],
  ['minutes in all', ['minutes']],
  ['overlap, median %', ['overlap % median']],
  ['direction over scan, 95th %', ['over scan % p95']],
  ['raster off, worst points', ['raster off points max']],
  ['ms, 95th / worst', ['ms p95', 'ms max']],
];

/** The summary of a table of passes, in Markdown. */
export function passesSummary(csv: string): string {
  const [head = [], ...rows] = csv
    .trim()
    .split('\n')
    .map((line) => [...line.matchAll(/("([^"]*)"|[^,]*)(?:,|$)/g)].map((found) => found[2] ?? found[1] ?? ''));
  const cellsOf = (row: readonly string[]): readonly string[] =>
    SHOWN.map(([, columns]) =>
      columns
        .map((column) => {
          if (!head.includes(column)) throw new Error(`the table of passes lacks the column ${column}`);
          return row[head.indexOf(column)] ?? '';
        })
        .filter((cell) => cell !== '')
        .join(' / '),
    );
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    line(SHOWN.map(([title]) => title)),
    line(SHOWN.map(() => '---')),
    ...rows.map((row) => line(cellsOf(row))),
  ].join('\n');
}
