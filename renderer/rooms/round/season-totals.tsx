import type { Book } from '../../../core/book/index.ts';
import { NUTRIENTS, type SeasonLedger } from '../../../core/round/ledger/index.ts';
import { useFormat } from '../../stores/index.ts';
import { commonWords } from '../../texts/index.ts';
import { seasonWords } from '../../texts/round/index.ts';
import { Section } from '../../ui/index.ts';

type TotalsProps = { readonly book: Book; readonly ledger: SeasonLedger };

/** Everything that goes down in the year on all lawns, and what could not be counted. */
export function SeasonTotals({ book, ledger }: TotalsProps) {
  const words = useFormat();
  const { products, actives, nutrients } = ledger.total;
  const rows: readonly (readonly [kind: string, name: string, amount: string])[] = [
    ...[...products].map(([id, amount]) => {
      const product = book.products.find((each) => each.id === id);
      return ['product', product?.name ?? id, words.product(amount, product?.unit ?? 'lb')] as const;
    }),
    ...[...actives].map(([name, pounds]) => [commonWords.activeIngredient, name, words.weight(pounds)] as const),
    ...NUTRIENTS.filter((name) => nutrients[name] > 0).map(
      (name) =>
        [
          'nutrient',
          name === 'nitrogen' ? name : seasonWords.totals.asPrinted(name),
          words.weight(nutrients[name]),
        ] as const,
    ),
  ];
  return (
    <>
      <Section title={seasonWords.totals.title(ledger.year)}>
        {rows.length === 0 ? (
          <p className="quiet">{seasonWords.totals.nothing}</p>
        ) : (
          <table className="table table-narrow">
            <thead>
              <tr>
                <th scope="col">{seasonWords.totals.what}</th>
                <th scope="col">{commonWords.kind}</th>
                <th scope="col" className="number">
                  {commonWords.inAll}
                </th>
              </tr>
            </thead>
            <tbody>
              {rows.map(([kind, name, amount]) => (
                <tr key={`${kind} ${name}`}>
                  <th scope="row">{name}</th>
                  <td>{kind}</td>
                  <td className="number">{amount}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
        {book.invented && <p className="invented">{commonWords.invented}</p>}
      </Section>
      {ledger.gaps.length > 0 && (
        <Section title={seasonWords.totals.notCounted}>
          <ul className="season-gaps">
            {ledger.gaps.map((gap) => (
              <li key={gap}>{gap}</li>
            ))}
          </ul>
        </Section>
      )}
    </>
  );
}
