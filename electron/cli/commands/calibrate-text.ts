import { formatNumber } from '../../../core/units/index.ts';
import type { CalibrateOutput } from '../output/index.ts';
import { type Column, tableLines } from '../text/index.ts';

type Amount = CalibrateOutput['answers'][number];
type Combination = NonNullable<CalibrateOutput['combinations']>[number];

/** About five figures: enough to type on, not more than the bench can read. */
export function bareFigure(value: number): string {
  const size = Math.abs(value);
  return formatNumber(value, size >= 10_000 ? 0 : size >= 100 ? 1 : size >= 10 ? 2 : size >= 1 ? 3 : 4)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');
}

export const AMOUNTS: readonly Column<Amount>[] = [
  { title: 'answer', cell: (row) => row.name },
  { title: 'value', cell: (row) => bareFigure(row.value), right: true },
  { title: 'unit', cell: (row) => row.unit },
];

const COMBINATIONS: readonly Column<Combination>[] = [
  { title: 'size', cell: (row) => row.size },
  { title: 'colour', cell: (row) => row.colour },
  { title: 'psi', cell: (row) => formatNumber(row.psi), right: true },
  { title: 'mph', cell: (row) => bareFigure(row.mph), right: true },
  { title: 'gpm', cell: (row) => formatNumber(row.gpm, 3), right: true },
  { title: 'gal/1000 ft²', cell: (row) => formatNumber(row.galPer1000SqFt, 3), right: true },
  { title: 'gal/acre', cell: (row) => formatNumber(row.gpa, 2), right: true },
  { title: 'off', cell: (row) => `${formatNumber(100 * row.difference, 1)} %`, right: true },
];

/** Answers, working and source for people. */
export function calibrateText({ answers, combinations, working, source, droplets }: CalibrateOutput): string {
  return [
    ...(combinations === undefined ? tableLines(AMOUNTS, answers) : tableLines(COMBINATIONS, combinations)),
    '',
    ...working,
    ...(droplets === undefined ? [] : [`droplets, as the maker states: ${droplets}`]),
    '',
    `Source: ${source}`,
  ].join('\n');
}
