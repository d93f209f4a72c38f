import { Check } from 'lucide-react';
import { useDeferredValue, useMemo, useState } from 'react';
import type { Book } from '../../../core/book/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import { goTo, selectProperty, useBook, useFormat } from '../../stores/index.ts';
import { commonWords } from '../../texts/index.ts';
import { planWords } from '../../texts/round/index.ts';
import { MoreRows, Section, TableHead, useFirstRows } from '../../ui/index.ts';
import { foundRows, unplacedRows } from './unplaced-rows.ts';

/** From so many on, a field to find one among them is offered. */
const WORTH_SEARCHING = 10;

const NONE: Book['rigs'] = [];

/** Work that found no place, with the reason of every rig. */
export function UnplacedTable({ plan }: { readonly plan: Plan }) {
  const rigs = useBook((state) => state.open?.book.rigs ?? NONE);
  const rows = useMemo(() => unplacedRows(plan, rigs), [plan, rigs]);
  const words = useFormat();
  const [query, setQuery] = useState('');
  const sought = useDeferredValue(query);
  const found = useMemo(() => foundRows(rows, sought), [rows, sought]);
  const { shown, hidden, showMore } = useFirstRows(found);
  if (rows.length === 0) {
    return (
      <p className="placed">
        <Check size={15} aria-hidden="true" /> {planWords.unplaced.allPlaced}
      </p>
    );
  }
  const search =
    rows.length < WORTH_SEARCHING ? undefined : (
      <span className="season-tools">
        <input
          className="input unplaced-search"
          type="search"
          aria-label={planWords.unplaced.find}
          placeholder={planWords.unplaced.find}
          value={query}
          onChange={(event) => setQuery(event.target.value)}
        />
      </span>
    );
  return (
    <Section title={planWords.unplaced.title(plan.unplaced.length)} aside={search}>
      <div className="table-scroll">
        <table className="table">
          <TableHead columns={[commonWords.lawn, commonWords.zone, planWords.unplaced.why]} />
          <tbody>
            {shown.map((row) => (
              <tr key={row.key}>
                <th scope="row">
                  <button
                    type="button"
                    className="row-button"
                    onClick={() => {
                      selectProperty(row.propertyId);
                      goTo('ground');
                    }}
                  >
                    {row.name}
                  </button>
                </th>
                <td>{row.zones.join(', ')}</td>
                <td className="stop">
                  {row.why.map((line) => (
                    <p key={line}>{words.said(line)}</p>
                  ))}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {found.length === 0 && <p className="quiet">{planWords.unplaced.noneFound}</p>}
      <MoreRows hidden={hidden} what={planWords.unplaced.row} onMore={showMore} />
    </Section>
  );
}
