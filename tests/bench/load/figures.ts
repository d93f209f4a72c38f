import { middle, share } from '../spread.ts';

/** One line of the table: what was measured, its aim, and every figure in the order in which it was taken. */
export type Line = {
  readonly what: string;
  readonly unit: 'ms' | 'MiB' | 'kB';
  /** What it has to stay below; null where nothing was aimed at. */
  readonly aim: number | null;
  readonly figures: readonly number[];
};

/** The lines as a table in Markdown: on a machine with other work the best of several is nearest to what the program itself takes. */
export function tableOf(lines: readonly Line[]): string {
  return [
    '| | times | best | median | 95th | longest | aim |',
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...lines.map(({ what, unit, aim, figures }) => {
      const words = [Math.min(...figures), middle(figures), share(figures, 0.95), Math.max(...figures)].map(
        (each) => `${each < 10 ? each.toFixed(1) : each.toFixed(0)}`,
      );
      return `| ${what}, ${unit} | ${figures.length} | ${words.join(' | ')} | ${aim ?? ''} |`;
    }),
  ].join('\n');
}
