import { useCallback, useDeferredValue } from 'react';
import type { Book, Property } from '../../../core/book/index.ts';
import type { PassesOf } from '../../../core/passes/index.ts';
import { type LawnQuote, lawnQuote, type SeasonQuote, type VisitQuote } from '../../../core/quote/index.ts';
import { Reckoning } from '../../passes/index.ts';
import { measureOf, useBook, useFormat, useWithPasses } from '../../stores/index.ts';
import { estimateWords } from '../../texts/ground/index.ts';
import { commonWords } from '../../texts/index.ts';
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
  const find = useCallback((passes: PassesOf) => lawnQuote(book, shown, measureOf(shown), passes), [book, shown]);
  const { found: quote, isReckoning, fault } = useWithPasses(shown, shown.id, find);
  return (
    <Section title={estimateWords.estimatePanel.costAndPrice}>
      {quote === null ? <Reckoning fault={fault} /> : <Quoted quote={quote} isReckoning={isReckoning} />}
      <details className="more">
        <summary>{estimateWords.estimatePanel.ownFigures}</summary>
        <EstimateForm book={book} />
      </details>
    </Section>
  );
}

/** Figures of a moment ago stay while those of now are reckoned. */
function Quoted({ quote, isReckoning }: { readonly quote: LawnQuote; readonly isReckoning: boolean }) {
  return (
    <div aria-busy={isReckoning}>
      {quote.visits.length === 0 ? (
        <p className="quiet small">{estimateWords.estimatePanel.noTreatments}</p>
      ) : (
        <VisitsTable quote={quote} />
      )}
      <PriceLines quote={quote} />
    </div>
  );
}

function VisitsTable({ quote }: { readonly quote: LawnQuote }) {
  return (
    <table className="table estimate-table">
      <thead>
        <tr>
          <th scope="col">{estimateWords.estimatePanel.min}</th>
          <th scope="col" className="number">
            {commonWords.cost}
          </th>
          <th scope="col" className="number">
            {estimateWords.estimatePanel.price}
          </th>
          <th scope="col" className="number">
            {estimateWords.estimatePanel.margin}
          </th>
        </tr>
      </thead>
      {quote.visits.map((visit) => (
        <Visit key={visit.work.treatmentId} visit={visit} />
      ))}
      {quote.season !== null && <Season season={quote.season} />}
    </table>
  );
}

function Visit({ visit }: { readonly visit: VisitQuote }) {
  const words = useFormat();
  return (
    <tbody>
      <tr className="estimate-name">
        <th scope="rowgroup" colSpan={4}>
          {visit.work.name}
        </th>
      </tr>
      <Figures
        first={words.number(visit.minutes)}
        cost={visit.costDollars}
        price={visit.priceDollars}
        margin={visit.marginDollars}
        share={visit.marginShare}
      />
      <tr>
        <td colSpan={4}>
          <VisitLines visit={visit} />
        </td>
      </tr>
    </tbody>
  );
}

function Season({ season }: { readonly season: SeasonQuote }) {
  return (
    <tbody>
      <tr className="estimate-name">
        <th scope="rowgroup" colSpan={4}>
          {estimateWords.estimatePanel.seasonOf(season.visits)}
        </th>
      </tr>
      <Figures
        first=""
        cost={season.cost.dollars}
        price={season.price?.dollars ?? null}
        margin={season.marginDollars}
        share={season.marginShare}
      />
    </tbody>
  );
}

type FiguresProps = {
  readonly first: string;
  readonly cost: number;
  readonly price: number | null;
  readonly margin: number | null;
  readonly share: number | null;
};

function Figures({ first, cost, price, margin, share }: FiguresProps) {
  const words = useFormat();
  return (
    <tr className="estimate-figures">
      <td>{first}</td>
      <td className="number">{words.money(cost)}</td>
      <td className="number">{price === null ? '' : words.money(price)}</td>
      <td className="number">
        <Margin dollars={margin} share={share} />
      </td>
    </tr>
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
      <summary>{estimateWords.estimatePanel.howReckoned}</summary>
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
    return <p className="quiet small">{estimateWords.estimatePanel.noPrice}</p>;
  }
  return <p className="small">{estimateWords.estimatePanel.priceOfVisit(quote.price.lines.join('; '))}</p>;
}
