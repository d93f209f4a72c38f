import { TriangleAlert } from 'lucide-react';
import type { Book } from '../../../core/book/index.ts';
import type { BuyLine, Order, WaterAt } from '../../../core/round/buying/index.ts';
import { useFormat } from '../../stores/index.ts';
import { commonWords } from '../../texts/index.ts';
import { buyWords } from '../../texts/round/index.ts';
import { TableHead } from '../../ui/index.ts';

type BookProps = { readonly book: Book };

function productIn(book: Book, id: string) {
  const product = book.products.find((each) => each.id === id);
  return { name: product?.name ?? id, unit: product?.unit ?? ('lb' as const) };
}

/** What has to be ordered by when. */
export function OrdersTable({ book, orders }: BookProps & { readonly orders: readonly Order[] }) {
  const words = useFormat();
  if (orders.length === 0) return <p className="quiet">{buyWords.tables.nothingToOrder}</p>;
  return (
    <div className="table-scroll">
      <table className="table">
        <TableHead
          columns={[
            buyWords.tables.orderBy,
            commonWords.product,
            { figures: buyWords.tables.amount },
            { figures: buyWords.tables.bags },
            { figures: buyWords.tables.atYourPrice },
            buyWords.tables.firstUsed,
          ]}
        />
        <tbody>
          {orders.map((each) => {
            const { name, unit } = productIn(book, each.productId);
            return (
              <tr key={`${each.orderBy} ${each.productId} ${each.firstUse}`}>
                <th scope="row">
                  <span className="whole-line">{words.dateInYear(each.orderBy)}</span>
                  {each.late && (
                    <span className="caution block small">
                      <TriangleAlert size={12} aria-hidden="true" /> {buyWords.tables.dayPast}
                    </span>
                  )}
                </th>
                <td>{name}</td>
                <td className="number">{words.product(each.amount, unit)}</td>
                <td className="number">{each.bags ?? '–'}</td>
                <td className="number">{words.money(each.costUsd)}</td>
                <td className="whole-line">{words.dateInYear(each.firstUse)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

/** Product by round and week. */
export function LinesTable({ book, lines }: BookProps & { readonly lines: readonly BuyLine[] }) {
  const words = useFormat();
  if (lines.length === 0) return <p className="quiet">{buyWords.tables.nothingNeeded}</p>;
  return (
    <div className="table-scroll">
      <table className="table">
        <TableHead
          columns={[
            buyWords.tables.weekFrom,
            commonWords.round,
            commonWords.product,
            { figures: buyWords.tables.needed },
            { figures: buyWords.tables.inStore },
            { figures: buyWords.tables.toBuy },
            { figures: buyWords.tables.bags },
            { figures: buyWords.tables.atYourPrice },
          ]}
        />
        <tbody>
          {lines.map((each) => {
            const { name, unit } = productIn(book, each.productId);
            return (
              <tr key={`${each.week.label} ${each.roundId} ${each.productId}`}>
                <th scope="row">
                  <span className="whole-line">{words.dateInYear(each.week.monday)}</span>
                </th>
                <td>
                  {each.roundName}
                  {each.from === 'rates' && <span className="quiet block small">{commonWords.notPlannedYet}</span>}
                </td>
                <td>{name}</td>
                <td className="number">{words.product(each.need, unit)}</td>
                <td className="number">{each.fromStock === 0 ? '–' : words.product(each.fromStock, unit)}</td>
                <td className="number strong">{each.buy === 0 ? '–' : words.product(each.buy, unit)}</td>
                <td className="number">{each.bags ?? '–'}</td>
                <td className="number">{words.money(each.costUsd)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

/** Gallons by fill point. */
export function WaterTable({ book, water }: BookProps & { readonly water: readonly WaterAt[] }) {
  const words = useFormat();
  if (water.length === 0) return <p className="quiet">{buyWords.tables.noWater}</p>;
  const nameOf = (id: string) => book.fillPoints.find((each) => each.id === id)?.name ?? id;
  return (
    <div className="table-scroll">
      <table className="table table-narrow">
        <TableHead
          columns={[
            commonWords.fillPoint,
            { figures: buyWords.tables.inTheMorning },
            { figures: buyWords.tables.duringTheDay },
            { figures: commonWords.inAll },
            { figures: buyWords.tables.mostOneDay },
          ]}
        />
        <tbody>
          {water.map((each) => (
            <tr key={each.fillPointId}>
              <th scope="row">{nameOf(each.fillPointId)}</th>
              <td className="number">{each.morningGal === 0 ? '–' : words.volume(each.morningGal)}</td>
              <td className="number">
                {each.visitsGal === 0 ? '–' : words.volume(each.visitsGal)}
                {each.visits > 0 && <span className="quiet block small">{buyWords.tables.visits(each.visits)}</span>}
              </td>
              <td className="number strong">{words.volume(each.morningGal + each.visitsGal)}</td>
              <td className="number">{words.volume(mostOnOneDay(each))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function mostOnOneDay({ byDay }: WaterAt): number {
  const days = new Map<string, number>();
  for (const { date, gal } of byDay) days.set(date, (days.get(date) ?? 0) + gal);
  return Math.max(0, ...days.values());
}
