import { formatNumber } from '../../format/index.ts';

type CountProps = { readonly value: number; readonly words: string; readonly stop?: boolean };

/** One figure of a row of counts. */
export function Count({ value, words, stop = false }: CountProps) {
  return (
    <div className={stop ? 'stop' : undefined}>
      <dd>{formatNumber(value)}</dd>
      <dt>{words}</dt>
    </div>
  );
}
