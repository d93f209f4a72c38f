type CountProps = { readonly value: number; readonly words: string; readonly stop?: boolean };

/** One figure of a row of counts. */
export function Count({ value, words, stop = false }: CountProps) {
  return (
    <div className={stop ? 'stop' : undefined}>
      <dd>{value.toLocaleString('en-US')}</dd>
      <dt>{words}</dt>
    </div>
  );
}
