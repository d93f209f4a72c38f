import { ListBox, ListBoxItem } from 'react-aria-components';
import type { Book, Round } from '../../../core/book/index.ts';
import { counted } from '../../format/index.ts';
import { MapPanel } from '../../map/index.ts';
import { useScene } from '../../scene/index.ts';
import {
  freshId,
  putRecord,
  selectRound,
  selectZone,
  showError,
  useBook,
  useCurrentPlan,
  useCurrentRound,
  useFormat,
  useSelection,
  useView,
} from '../../stores/index.ts';
import { Button, Empty, Workbench } from '../../ui/index.ts';
import { PlanBench } from './plan-bench.tsx';
import { RoundForm } from './round-form.tsx';

/** The owner's room: what is to be applied by when, the plan of it, and what to buy. */
export function RoundRoom() {
  const book = useBook((state) => state.open?.book ?? null);
  const round = useCurrentRound();
  if (book === null) return null;
  return (
    <Workbench
      room="round"
      left={<RoundList book={book} round={round} />}
      leftLabel="Rounds"
      right={<RoundMap />}
      rightLabel="Map by day"
    >
      {round === null ? <NoRounds book={book} /> : <PlanBench key={round.id} book={book} round={round} />}
    </Workbench>
  );
}

function RoundList({ book, round }: { readonly book: Book; readonly round: Round | null }) {
  return (
    <div className="list-panel">
      <div className="list-head">
        <h2>{counted(book.rounds.length, 'round')}</h2>
        <span className="list-tools">
          <Button look="quiet" onPress={() => addRound(book)} whyNot={whyNoRound(book)}>
            Add
          </Button>
        </span>
      </div>
      {book.rounds.length > 1 && (
        <ListBox
          className="list"
          aria-label="Rounds"
          selectionMode="single"
          selectionBehavior="replace"
          disallowEmptySelection
          selectedKeys={round === null ? [] : [round.id]}
          onSelectionChange={(keys) => {
            const [key] = keys === 'all' ? [] : [...keys];
            if (key !== undefined) selectRound(String(key));
          }}
        >
          {book.rounds.map((each) => (
            <ListBoxItem key={each.id} id={each.id} className="list-item" textValue={each.name}>
              <div className="shelf-row">
                <span className="row-title">{each.name}</span>
                <span className="row-figure">{counted(each.dates.length, 'day')}</span>
              </div>
            </ListBoxItem>
          ))}
        </ListBox>
      )}
      {round !== null && <RoundForm key={round.id} book={book} round={round} />}
    </div>
  );
}

/** The plan on the map: each lawn with the number of its day. */
function RoundMap() {
  const known = useCurrentPlan();
  const date = useSelection((state) => state.date);
  const rigId = useSelection((state) => state.rigId);
  const scene = useScene({ kind: 'round', plan: known?.plan ?? null, date, rigId });
  const words = useFormat();
  const zoomToAll = useView((state) => state.zoomToAll);
  return (
    <div className="map-beside">
      <MapPanel
        label="Lawns by day"
        scene={scene}
        system={words.system}
        caption="numbers are days"
        showAll={`${zoomToAll}`}
        showSelection={0}
        onSelect={selectZone}
      />
    </div>
  );
}

function whyNoRound(book: Book): string | null {
  if (book.treatments.length === 0) return 'Add a treatment in the Shed first';
  return book.rigs.length === 0 ? 'Add a rig in the Shed first' : null;
}

function addRound(book: Book): void {
  const [treatment] = book.treatments;
  const [rig] = book.rigs;
  if (treatment === undefined || rig === undefined) return;
  const record: Round = {
    id: freshId(book.rounds, 'round'),
    name: 'New round',
    treatmentIds: [treatment.id],
    propertyIds: 'all',
    skipped: [],
    dates: [new Date().toISOString().slice(0, 10)],
    rigIds: [rig.id],
    wetGround: false,
  };
  const done = putRecord('rounds', record, 'Add a round');
  if (done.ok) selectRound(record.id);
  else showError(done.error);
}

function NoRounds({ book }: { readonly book: Book }) {
  return (
    <Empty
      title="No round yet"
      actions={
        <Button look="main" onPress={() => addRound(book)} whyNot={whyNoRound(book)}>
          Add a round
        </Button>
      }
    >
      A round is one treatment of the customer list: what goes on, on which days, with which rigs. Its plan appears
      here.
    </Empty>
  );
}
