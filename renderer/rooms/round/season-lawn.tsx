import type { Book } from '../../../core/book/index.ts';
import {
  type Application,
  arithmeticOf,
  type LawnYear,
  type Limit,
  type SeasonLedger,
  type ZoneYear,
} from '../../../core/round/ledger/index.ts';
import { useFormat } from '../../stores/index.ts';
import { commonWords } from '../../texts/index.ts';
import { seasonWords } from '../../texts/round/index.ts';
import { Section, TableHead } from '../../ui/index.ts';
import { limitSource, limitTitle } from './season-words.ts';
import { Share } from './share.tsx';

type LawnProps = { readonly book: Book; readonly ledger: SeasonLedger; readonly lawn: LawnYear };

/** One lawn of the ledger: what went and will go down on each of its zones, and the arithmetic of every limit. */
export function LawnSeason({ book, ledger, lawn }: LawnProps) {
  const words = useFormat();
  return (
    <Section title={seasonWords.lawn.title(lawn.name, ledger.year)}>
      {lawn.zones.map((zone) => (
        <div key={zone.zoneId} className="season-zone">
          <h4>
            {zone.name}
            {zone.areaSqFt !== null && <span className="quiet"> · {words.area(zone.areaSqFt)}</span>}
          </h4>
          {zone.applications.length === 0 ? (
            <p className="quiet small">{seasonWords.lawn.nothing}</p>
          ) : (
            <>
              <Applications book={book} zone={zone} />
              <Limits ledger={ledger} zone={zone} />
            </>
          )}
        </div>
      ))}
    </Section>
  );
}

function Applications({ book, zone }: { readonly book: Book; readonly zone: ZoneYear }) {
  const words = useFormat();
  const treatmentOf = (id: string) => book.treatments.find((each) => each.id === id)?.name ?? id;
  const putDown = ({ rates }: Application) =>
    [...rates].map(([id, rate]) => {
      const product = book.products.find((each) => each.id === id);
      return `${product?.name ?? id} ${words.productRate(rate, product?.unit ?? 'lb')}`;
    });
  return (
    <div className="table-scroll">
      <table className="table">
        <TableHead
          columns={[
            seasonWords.lawn.when,
            commonWords.round,
            commonWords.treatment,
            { figures: commonWords.ground },
            seasonWords.lawn.putDown,
          ]}
        />
        <tbody>
          {zone.applications.map((each) => (
            <tr key={`${each.roundId} ${each.treatmentId} ${each.zoneId} ${each.status} ${each.first}`}>
              <th scope="row" className="season-when">
                {each.first === each.last
                  ? words.date(each.first)
                  : commonWords.span(words.date(each.first), words.date(each.last))}
                <span className="quiet block small">{each.status}</span>
              </th>
              <td>{each.roundName.replace(/^round /, '')}</td>
              <td>{treatmentOf(each.treatmentId)}</td>
              <td className="number">{each.treatedSqFt === 0 ? '–' : words.area(each.treatedSqFt)}</td>
              <td>
                {putDown(each).map((line) => (
                  <span key={line} className="block">
                    {line}
                  </span>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Limits({ ledger, zone }: { readonly ledger: SeasonLedger; readonly zone: ZoneYear }) {
  const words = useFormat();
  const limitOf = (id: string): Limit | undefined => ledger.limits.find((each) => each.id === id);
  if (zone.uses.length === 0) return <p className="quiet small">{seasonWords.lawn.noLimit}</p>;
  return (
    <div className="table-scroll">
      <table className="table">
        <TableHead
          columns={[
            seasonWords.lawn.limit,
            { figures: seasonWords.lawn.used },
            { figures: seasonWords.lawn.allowed },
            { figures: seasonWords.lawn.share },
            seasonWords.lawn.arithmetic,
          ]}
        />
        <tbody>
          {zone.uses.map((use) => {
            const limit = limitOf(use.limitId);
            if (limit === undefined) return null;
            return (
              <tr key={use.limitId}>
                <th scope="row">
                  {limitTitle(limit)}
                  <span className="quiet block small">{limitSource(limit)}</span>
                </th>
                <td className="number">{words.productRate(use.used, limit.unit)}</td>
                <td className="number">{words.productRate(limit.most, limit.unit)}</td>
                <td className="number">
                  <Share share={use.share} />
                </td>
                <td className="small">{words.said(arithmeticOf(limit, zone, ledger.year, words.system))}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
