/** A heading of a column: words, what stands over figures, or what is only spoken. */
export type ColumnHead = string | { readonly figures: string } | { readonly spoken: string };

/** The row of headings of a plain table; headings over figures stand on the right like them. */
export function TableHead({ columns }: { readonly columns: readonly ColumnHead[] }) {
  return (
    <thead>
      <tr>
        {columns.map((column, at) => {
          // Two columns may have one name; their places do not change.
          const key = `${at}`;
          if (typeof column === 'string') {
            return (
              <th key={key} scope="col">
                {column}
              </th>
            );
          }
          return (
            <th key={key} scope="col" className={'figures' in column ? 'number' : undefined}>
              {'figures' in column ? column.figures : <span className="only-spoken">{column.spoken}</span>}
            </th>
          );
        })}
      </tr>
    </thead>
  );
}
