import { Check } from 'lucide-react';
import { useDeferredValue, useMemo, useState } from 'react';
import type { Book } from '../../../core/book/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import { goTo, selectProperty, useBook, useFormat } from '../../stores/index.ts';
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
        <Check size={15} aria-hidden="true" /> Every zone of the round has a place.
      </p>
    );
  }
  const search =
    rows.length < WORTH_SEARCHING ? undefined : (
      <span className="season-tools">
        <input
          className="input unplaced-search"
          type="search"
          aria-label="Find a lawn or a reason"
          placeholder="Find a lawn or a reason"
          value={query}
          onChange={(event) => setQuery(event.target.value)}
        />
      </span>
    );
  return (
    <Section title={`Without a place (${plan.unplaced.length})`} aside={search}>
      <div className="table-scroll">
        <table className="table">
          <TableHead columns={['lawn', 'zone', 'why']} />
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
      {found.length === 0 && <p className="quiet">None of them.</p>}
      <MoreRows hidden={hidden} what="row" onMore={showMore} />
    </Section>
  );
}
