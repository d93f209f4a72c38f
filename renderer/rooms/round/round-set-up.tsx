import { Plus, Trash2, X } from 'lucide-react';
import type { Book, Round } from '../../../core/book/index.ts';
import { counted } from '../../format/index.ts';
import {
  addRound,
  freshId,
  putRecord,
  removeRecord,
  selectRound,
  showError,
  useBook,
  useCurrentRound,
  useFormat,
  usePlans,
} from '../../stores/index.ts';
import { Button, DraftInput, Empty, Field, Section, Tick } from '../../ui/index.ts';
import { newRound, nextDate, whyNoRound, withMember } from './round-edits.ts';

/** The rounds of the book, and what the chosen one is made of. */
export function RoundSetUp() {
  const book = useBook((state) => state.open?.book ?? null);
  const round = useCurrentRound();
  if (book === null) return null;
  const add = () => addRound(newRound(book, freshId(book.rounds, 'round'), today()));
  if (round === null) {
    return (
      <Empty
        title="No round yet"
        actions={
          <Button look="main" whyNot={whyNoRound(book)} onPress={add}>
            <Plus size={15} aria-hidden="true" /> Add a round
          </Button>
        }
      >
        A round is one treatment of the customer list, with the days on which it has to happen.
        {whyNoRound(book) !== null && ` ${whyNoRound(book)}.`}
      </Empty>
    );
  }
  return (
    <div className="list-panel">
      <div className="list-head">
        <h2>{counted(book.rounds.length, 'round')}</h2>
        <span className="list-tools">
          <Button look="quiet" label="Add a round" tip="Add a round" whyNot={whyNoRound(book)} onPress={add}>
            <Plus size={16} aria-hidden="true" />
          </Button>
        </span>
      </div>
      <RoundList rounds={book.rounds} chosen={round.id} />
      <SetUp key={round.id} book={book} round={round} />
    </div>
  );
}

/** The date on this machine's calendar. */
function today(): string {
  const now = new Date();
  return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-${String(now.getDate()).padStart(2, '0')}`;
}

function RoundList({ rounds, chosen }: { readonly rounds: readonly Round[]; readonly chosen: string }) {
  const plans = usePlans((state) => state.plans);
  return (
    <ul className="round-list">
      {rounds.map((round) => {
        const days = plans[round.id]?.plan.days.length;
        return (
          <li key={round.id}>
            <button
              type="button"
              className={`list-button${round.id === chosen ? ' list-button-chosen' : ''}`}
              aria-pressed={round.id === chosen}
              onClick={() => selectRound(round.id)}
            >
              <span className="row-title">{round.name}</span>
              <span className="row-figure">{days === undefined ? 'not planned' : counted(days, 'rig day')}</span>
            </button>
          </li>
        );
      })}
    </ul>
  );
}

function SetUp({ book, round }: { readonly book: Book; readonly round: Round }) {
  const words = useFormat();
  const change = (changes: Partial<Round>, label: string) => {
    const done = putRecord('rounds', { ...round, ...changes }, label);
    if (!done.ok) showError(done.error);
    return done;
  };
  return (
    <div className="inspector">
      <Field label="Name">
        <DraftInput label="Name of the round" text={round.name} onCommit={(name) => change({ name }, 'Change name')} />
      </Field>
      <Section title="Treatments">
        <Members
          all={book.treatments}
          chosen={round.treatmentIds}
          onChange={(treatmentIds) => change({ treatmentIds }, 'Change treatments')}
        />
      </Section>
      <Section title="Rigs">
        <Members all={book.rigs} chosen={round.rigIds} onChange={(rigIds) => change({ rigIds }, 'Change rigs')} />
      </Section>
      <Section
        title="Working days"
        aside={
          <Button
            look="quiet"
            label="Add the next working day"
            tip="Add the next working day"
            onPress={() => change({ dates: [...round.dates, nextDate(round.dates)] }, 'Add day')}
          >
            <Plus size={15} aria-hidden="true" />
          </Button>
        }
      >
        <Dates round={round} change={change} />
        <Field label="Due by">
          <input
            type="date"
            className="input"
            aria-label="Due by"
            value={round.dueDate ?? ''}
            onChange={(event) => {
              const { dueDate: _, ...rest } = round;
              const { value } = event.target;
              putRecord('rounds', value === '' ? rest : { ...rest, dueDate: value }, 'Change due date');
            }}
          />
        </Field>
      </Section>
      <Section title="Ground">
        <p className="small">
          {round.propertyIds === 'all'
            ? `Every lawn of the book (${book.properties.length})`
            : counted(round.propertyIds.length, 'lawn')}
          {round.skipped.length > 0 && `, ${round.skipped.length} left out`}
        </p>
        <Tick
          label="the ground counts as wet"
          checked={round.wetGround}
          onChange={(wetGround) => {
            change({ wetGround }, 'Change wet ground');
          }}
        />
        <Tick
          label="spray before granules on the same ground"
          checked={spraysFirst(round)}
          onChange={(first) => {
            const { workOrder: _, ...rest } = round;
            const workOrder = ['aerate', 'seed', 'spray', 'spread'] as const;
            putRecord('rounds', first ? { ...rest, workOrder } : rest, 'Change order of work');
          }}
        />
      </Section>
      <Button look="danger" onPress={() => removeRecord('rounds', round.id, round.name)}>
        <Trash2 size={14} aria-hidden="true" /> Remove this round
      </Button>
      <p className="only-spoken">{words.longDate(round.dates[0] ?? '')}</p>
    </div>
  );
}

/** Whether the round turns the usual order of dry before wet round. */
function spraysFirst({ workOrder = [] }: Round): boolean {
  const [spray, spread] = [workOrder.indexOf('spray'), workOrder.indexOf('spread')];
  return spray >= 0 && (spread < 0 || spray < spread);
}

type MembersProps = {
  readonly all: readonly { readonly id: string; readonly name: string }[];
  readonly chosen: readonly string[];
  readonly onChange: (chosen: readonly string[]) => void;
};

/** Ticks for what takes part; the last one cannot be taken out. */
function Members({ all, chosen, onChange }: MembersProps) {
  return (
    <div className="ticks ticks-one">
      {all.map(({ id, name }) => (
        <Tick
          key={id}
          label={name}
          checked={chosen.includes(id)}
          onChange={(on) => {
            const next = withMember(chosen, id, on);
            if (next.length === 0) {
              showError({
                code: 'nothing-to-do',
                where: 'round',
                detail: 'A round needs at least one of these.',
                hint: 'Tick another one first.',
              });
            } else onChange(next);
          }}
        />
      ))}
    </div>
  );
}

type DatesProps = {
  readonly round: Round;
  readonly change: (changes: Partial<Round>, label: string) => unknown;
};

function Dates({ round, change }: DatesProps) {
  const words = useFormat();
  return (
    <ol className="dates">
      {round.dates.map((date, index) => (
        <li key={date}>
          <span className="date-words">{words.date(date).slice(0, 3)}</span>
          <input
            type="date"
            className="input"
            aria-label={`Day ${index + 1}`}
            value={date}
            onChange={(event) => {
              const { value } = event.target;
              if (value !== '' && !round.dates.includes(value)) {
                change({ dates: round.dates.with(index, value).toSorted() }, 'Change day');
              }
            }}
          />
          <Button
            look="quiet"
            label={`Remove ${words.longDate(date)}`}
            tip="Remove this day"
            whyNot={round.dates.length === 1 ? 'A round needs at least one day' : null}
            onPress={() => change({ dates: round.dates.toSpliced(index, 1) }, 'Remove day')}
          >
            <X size={14} aria-hidden="true" />
          </Button>
        </li>
      ))}
    </ol>
  );
}
