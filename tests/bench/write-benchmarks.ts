import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { growthFigure } from './growth-figure.ts';
import { passesSummary } from './passes/summary.ts';

/**
 * Writes the summaries of docs/benchmarks.md, each between its two marks, from the tables beside it, and the figure of growth:
 * npm run docs:benchmarks
 */
const FOLDER = 'docs/benchmarks';
const PAGE = 'docs/benchmarks.md';
const BEGIN = '<!-- summary: written from the tables -->';
const END = '<!-- end of summary -->';
const PASSES_BEGIN = '<!-- passes: written from their table -->';
const PASSES_END = '<!-- end of passes -->';
const MET_PER_CENT = 1e-4;

type Row = { readonly instance: string; readonly gap: number | null; readonly faults: number };

/** A table of `npm run bench:routing`: SET-SECONDSs.csv. */
function readTable(file: string): readonly Row[] {
  const [head = '', ...lines] = readFileSync(path.join(FOLDER, file), 'utf8').trim().split('\n');
  const column = (name: string): number => head.split(',').indexOf(name);
  const [instance, gap, faults] = [column('instance'), column('gap %'), column('faults')];
  if ([instance, gap, faults].includes(-1)) throw new Error(`${file} lacks a column`);
  return lines.map((line) => {
    const cells = line.split(',');
    const told = cells[gap] ?? '';
    return { instance: cells[instance] ?? '', gap: told === '' ? null : Number(told), faults: Number(cells[faults]) };
  });
}

function summaryRow(file: string): string {
  const rows = readTable(file);
  const [, set = '', seconds = ''] = /^(.*)-([\d.]+)s\.csv$/.exec(file) ?? [];
  const gaps = rows.flatMap((row) => (row.gap === null ? [] : [row.gap]));
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
  const isKnown = gaps.length > 0;
  const cells = [
    `[${set}](benchmarks/${file})`,
    `${seconds} s`,
    rows.length,
    isKnown ? `${mean.toFixed(3)} %` : 'no stored values',
    isKnown ? `${Math.max(...gaps).toFixed(2)} %` : '',
    isKnown ? gaps.filter((gap) => gap < MET_PER_CENT).length : '',
    rows.filter((row) => row.faults > 0).length,
  ];
  return `| ${cells.join(' | ')} |`;
}

const bySet = new Intl.Collator('en', { numeric: true });
const tables = readdirSync(FOLDER)
  .filter((file) => /-[\d.]+s\.csv$/.test(file))
  .sort(bySet.compare);
const summary = [
  '| set | processor time each | answers | mean gap | worst gap | at or below the best known value | not feasible |',
  '| --- | --- | --- | --- | --- | --- | --- |',
  ...tables.map(summaryRow),
].join('\n');

/** Puts a text between the two marks of its part of the page. */
function putIn(page: string, begin: string, end: string, text: string): string {
  const [before, rest = ''] = page.split(begin);
  const [, after] = rest.split(end);
  if (before === undefined || after === undefined) throw new Error(`${PAGE} lacks its marks`);
  return `${before}${begin}\n\n${text}\n\n${end}${after}`;
}

const passes = passesSummary(readFileSync(path.join(FOLDER, 'passes-outlines.csv'), 'utf8'));
const page = putIn(readFileSync(PAGE, 'utf8'), BEGIN, END, summary);
writeFileSync(PAGE, putIn(page, PASSES_BEGIN, PASSES_END, passes));
writeFileSync(
  path.join(FOLDER, 'growth.svg'),
  growthFigure(
    readFileSync(path.join(FOLDER, 'growth.csv'), 'utf8'),
    'Processor seconds and memory against the number of lawns',
    { column: 'lawns', label: 'lawns' },
    [
      { title: 'processor seconds to a plan', isLog: true, lines: [{ column: 'seconds' }] },
      { title: 'memory, MiB', isLog: false, lines: [{ column: 'MiB' }] },
    ],
  ),
);
writeFileSync(
  path.join(FOLDER, 'roads.svg'),
  growthFigure(
    readFileSync(path.join(FOLDER, 'roads.csv'), 'utf8'),
    'Processor seconds and memory against the number of arcs of a road network',
    { column: 'arcs', label: 'arcs' },
    [
      {
        title: '200 x 200 drive times, processor seconds',
        isLog: true,
        lines: [
          { column: 'plain 200 x 200 s', label: 'plain searches' },
          { column: 'climbs 200 x 200 s', label: 'by a hierarchy that there is' },
        ],
      },
      {
        title: 'building, processor seconds',
        isLog: true,
        lines: [
          { column: 'hierarchy s', label: 'hierarchy' },
          { column: 'network s', label: 'network' },
        ],
      },
      { title: 'memory, MiB', isLog: false, lines: [{ column: 'MiB' }] },
    ],
  ),
);
