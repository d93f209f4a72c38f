import { useEffect, useMemo, useState } from 'react';
import type { GoCell, GoRow, GoTable } from '../../../core/plan/board/index.ts';
import {
  askHost,
  selectProperty,
  useBook,
  useCurrentRound,
  useFormat,
  usePlans,
  useSelection,
} from '../../stores/index.ts';
import { dayWords } from '../../texts/day/index.ts';
import { commonWords } from '../../texts/index.ts';
import { Choice, VirtualTable } from '../../ui/index.ts';

const ROW_PX = 42;

/** The fit table: lawns of the round by machines and hand methods, with minutes or the reason. */
export function WhoCanGo() {
  const round = useCurrentRound();
  const treatments = useBook((state) => state.open?.book.treatments);
  const offered = (treatments ?? []).filter((each) => round?.treatmentIds.includes(each.id));
  const [wanted, setWanted] = useState('');
  const [street, setStreet] = useState('');
  const treatmentId = offered.find((each) => each.id === wanted)?.id ?? offered[0]?.id ?? '';
  const table = useGoTable(round?.id ?? '', treatmentId);
  const rows = useMemo(() => matching(table?.rows ?? [], street), [table, street]);
  return (
    <div className="who">
      <div className="who-head">
        {offered.length > 1 && (
          <Choice
            label={dayWords.whoCanGo.treatment}
            value={treatmentId}
            options={offered.map(({ id, name }) => ({ value: id, words: name }))}
            onChoose={setWanted}
          />
        )}
        <input
          className="input"
          aria-label={dayWords.whoCanGo.streetLabel}
          placeholder={dayWords.whoCanGo.street}
          value={street}
          onChange={(event) => setStreet(event.target.value)}
        />
        <span className="small quiet" role="status">
          {table === null ? dayWords.whoCanGo.beingReckoned : summary(rows)}
        </span>
      </div>
      {table !== null && <FitRows table={table} rows={rows} />}
    </div>
  );
}

/** The table from the host's thread; null until it is there. */
function useGoTable(roundId: string, treatmentId: string): GoTable | null {
  const session = usePlans((state) => state.session);
  const revision = useBook((state) => state.open?.revision);
  const [table, setTable] = useState<GoTable | null>(null);
  useEffect(() => {
    let isWanted = revision !== undefined;
    setTable(null);
    if (session === null || roundId === '' || treatmentId === '') return;
    void askHost('fit.read', { session, roundId, treatmentId }).then((found) => {
      if (isWanted) setTable(found);
    });
    return () => {
      isWanted = false;
    };
  }, [session, roundId, treatmentId, revision]);
  return table;
}

function matching(rows: readonly GoRow[], street: string): readonly GoRow[] {
  const wanted = street.trim().toLowerCase();
  if (wanted === '') return rows;
  return rows.filter(({ name, address }) => `${name} ${address}`.toLowerCase().includes(wanted));
}

function summary(rows: readonly GoRow[]): string {
  const nobody = rows.filter((row) => row.cells.every((cell) => cell.minutes === null)).length;
  return `${commonWords.lawns(rows.length)}${nobody > 0 ? dayWords.whoCanGo.nobody(nobody) : ''}`;
}

type FitRowsProps = { readonly table: GoTable; readonly rows: readonly GoRow[] };

function FitRows({ table, rows }: FitRowsProps) {
  const words = useFormat();
  const selectedId = useSelection((state) => state.propertyId);
  const named = useMemo(() => rows.map((row) => ({ ...row, id: row.propertyId })), [rows]);
  const columns = table.columns.map(({ id, name }) => ({ id, title: name }));
  return (
    <VirtualTable
      label={dayWords.whoCanGo.tableLabel}
      columns={[{ id: 'lawn', title: dayWords.whoCanGo.lawn }, ...columns]}
      rows={named}
      rowPx={ROW_PX}
      selectedId={selectedId}
    >
      {(row) => (
        <>
          <th scope="row">
            <button type="button" className="row-button" onClick={() => selectProperty(row.propertyId)}>
              {row.name}
            </button>
            <span className="small quiet"> {words.area(row.treatedSqFt)}</span>
          </th>
          {table.columns.map((column, at) => (
            <Cell key={column.id} cell={row.cells[at]} />
          ))}
        </>
      )}
    </VirtualTable>
  );
}

function Cell({ cell }: { readonly cell: GoCell | undefined }) {
  const words = useFormat();
  if (cell === undefined) return <td />;
  const { minutes, tight } = cell;
  const said = words.said(cell.words);
  return (
    <td title={said}>
      <div className={minutes === null ? 'who-cell quiet' : 'who-cell'}>
        {minutes === null ? dayWords.whoCanGo.no : <b>{words.duration(minutes * 60)} </b>}
        {tight && <span className="caution">{dayWords.whoCanGo.tightGate} </span>}
        {said}
      </div>
    </td>
  );
}
