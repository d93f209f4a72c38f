import { useDeferredValue, useMemo } from 'react';
import type { Book, Property } from '../../../core/book/index.ts';
import { type LawnQuote, lawnQuote, type VisitQuote } from '../../../core/quote/index.ts';
import { measureOf, useBook, useFormat } from '../../stores/index.ts';
import { Section } from '../../ui/index.ts';
import { EstimateForm } from './estimate-form.tsx';

/** What the lawn costs and brings, and the figures of the owner that it is reckoned from. */
export function EstimatePanel({ property }: { readonly property: Property }) {
  const book = useBook((state) => state.open?.book ?? null);
  return book === null ? null : <Estimates book={book} property={property} />;
}

function Estimates({ book, property }: { readonly book: Book; readonly property: Property }) {
  // The figures may come a moment after the drawing, so that dragging a corner stays quick.
  const shown = useDeferredValue(property);
  const quote = useMemo(() => lawnQuote(book, shown, measureOf(shown)), [book, shown]);
  return (
    <Section title="Cost and price">
      {quote.visits.length === 0 ? (
        <p className="quiet small">Add treatments in the Shed to see what this lawn takes and costs.</p>
      ) : (
        <VisitsTable quote={quote} />
      )}
      <PriceLines quote={quote} />
      <details className="more">
        <summary>Your figures (for every lawn)</summary>
        <EstimateForm book={book} />
      </details>
    </Section>
  );
}

function VisitsTable({ quote }: { readonly quote: LawnQuote }) {
  const words = useFormat();
  const money = (dollars: number | null): string => (dollars === null ? '' : words.money(dollars));
  return (
    <table className="table estimate-table">
      <thead>
        <tr>
          <th scope="col">visit</th>
          <th scope="col" className="number">
            min
          </th>
          <th scope="col" className="number">
            cost
          </th>
          <th scope="col" className="number">
            price
          </th>
          <th scope="col" className="number">
            margin
          </th>
        </tr>
      </thead>
      <tbody>
        {quote.visits.map((visit) => (
          <tr key={visit.work.treatmentId}>
            <th scope="row">
              {visit.work.name}
              <VisitLines visit={visit} />
            </th>
            <td className="number">{words.number(visit.minutes)}</td>
            <td className="number">{money(visit.costDollars)}</td>
            <td className="number">{money(visit.priceDollars)}</td>
            <td className="number">
              <Margin dollars={visit.marginDollars} share={visit.marginShare} />
            </td>
          </tr>
        ))}
        {quote.season !== null && (
          <tr className="row-sum">
            <th scope="row">season, {quote.season.visits} ×</th>
            <td />
            <td className="number">{money(quote.season.cost.dollars)}</td>
            <td className="number">{money(quote.season.price?.dollars ?? null)}</td>
            <td className="number">
              <Margin dollars={quote.season.marginDollars} share={quote.season.marginShare} />
            </td>
          </tr>
        )}
      </tbody>
    </table>
  );
}

function Margin({ dollars, share }: { readonly dollars: number | null; readonly share: number | null }) {
  const words = useFormat();
  if (dollars === null) return null;
  return (
    <>
      {words.money(dollars)}
      {share !== null && <span className="quiet small block">{words.number(share * 100)} %</span>}
    </>
  );
}

/** The arithmetic of a visit, folded. */
function VisitLines({ visit }: { readonly visit: VisitQuote }) {
  const words = useFormat();
  return (
    <details className="more">
      <summary>how</summary>
      <ul className="money-lines">
        {visit.lines.map((line) => (
          <li key={line.what}>
            {line.what}: {line.arithmetic} = {words.money(line.dollars)}
          </li>
        ))}
        {visit.work.remarks.map((remark) => (
          <li key={remark} className="caution">
            {remark}
          </li>
        ))}
      </ul>
    </details>
  );
}

function PriceLines({ quote }: { readonly quote: LawnQuote }) {
  if (quote.price === null) {
    return <p className="quiet small">No price: enter your own steps below. The program has none.</p>;
  }
  return <p className="small">Price per visit: {quote.price.lines.join('; ')}.</p>;
}
