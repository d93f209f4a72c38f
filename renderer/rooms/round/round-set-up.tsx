import { CopyPlus, Plus, Trash2 } from 'lucide-react';
import type { Book, Round } from '../../../core/book/index.ts';
import { CommandButton } from '../../commands/index.ts';
import { NotYet } from '../../next/index.ts';
import { changeRound, putRecord, selectRound, useBook, useCurrentRound, usePlans } from '../../stores/index.ts';
import { commonWords } from '../../texts/index.ts';
import { setUpWords } from '../../texts/round/index.ts';
import { DraftInput, Field, Section, Tick } from '../../ui/index.ts';
import { Members } from './set-up/members.tsx';
import { RoundDaysList } from './set-up/round-days.tsx';
import { RoundLawns } from './set-up/round-lawns.tsx';
import { RoundZones } from './set-up/round-zones.tsx';

/** The rounds of the book, and what the chosen one is made of. */
export function RoundSetUp() {
  const book = useBook((state) => state.open?.book ?? null);
  const round = useCurrentRound();
  if (book === null) return null;
  if (round === null) {
    return (
      <NotYet title={commonWords.noRound} needs="round">
        {setUpWords.rounds.about}
      </NotYet>
    );
  }
  return (
    <div className="list-panel">
      <div className="list-head">
        <h2>{commonWords.rounds(book.rounds.length)}</h2>
        <span className="list-tools">
          <CommandButton id="round.copy" look="quiet" bare>
            <CopyPlus size={16} aria-hidden="true" />
          </CommandButton>
          <CommandButton id="round.add" look="quiet" bare>
            <Plus size={16} aria-hidden="true" />
          </CommandButton>
        </span>
      </div>
      <RoundList rounds={book.rounds} chosen={round.id} />
      <SetUp key={round.id} book={book} round={round} />
    </div>
  );
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
              <span className="row-figure">
                {days === undefined ? commonWords.notPlanned : setUpWords.rounds.rigDays(days)}
              </span>
            </button>
          </li>
        );
      })}
    </ul>
  );
}

type SetUpProps = { readonly book: Book; readonly round: Round };

function SetUp({ book, round }: SetUpProps) {
  return (
    <div className="inspector">
      <Field label={commonWords.name}>
        <DraftInput
          label={setUpWords.rounds.nameOf}
          text={round.name}
          onCommit={(name) => changeRound(round, { name }, commonWords.changeName)}
        />
      </Field>
      <Section title={setUpWords.rounds.treatments}>
        <Members
          all={book.treatments}
          chosen={round.treatmentIds}
          onChange={(treatmentIds) => changeRound(round, { treatmentIds }, setUpWords.rounds.changeTreatments)}
        />
      </Section>
      <RoundLawns book={book} round={round} />
      <RoundZones book={book} round={round} />
      <Section title={setUpWords.rounds.rigs}>
        <Members
          all={book.rigs}
          chosen={round.rigIds}
          onChange={(rigIds) => changeRound(round, { rigIds }, setUpWords.rounds.changeRigs)}
        />
      </Section>
      <RoundDaysList book={book} round={round} />
      <RoundGround round={round} />
      <CommandButton id="round.remove" look="danger">
        <Trash2 size={14} aria-hidden="true" /> {setUpWords.rounds.removeThisRound}
      </CommandButton>
    </div>
  );
}

function RoundGround({ round }: { readonly round: Round }) {
  return (
    <Section title={setUpWords.rounds.ground}>
      <Tick
        label={setUpWords.rounds.wetGround}
        checked={round.wetGround}
        onChange={(wetGround) => {
          changeRound(round, { wetGround }, setUpWords.rounds.changeWetGround);
        }}
      />
      <Tick
        label={setUpWords.rounds.spraysFirst}
        checked={spraysFirst(round)}
        onChange={(first) => {
          const { workOrder: _, ...rest } = round;
          const workOrder = ['aerate', 'seed', 'spray', 'spread'] as const;
          putRecord('rounds', first ? { ...rest, workOrder } : rest, setUpWords.rounds.changeWorkOrder);
        }}
      />
    </Section>
  );
}

/** Whether the round turns the usual order of dry before wet round. */
function spraysFirst({ workOrder = [] }: Round): boolean {
  const [spray, spread] = [workOrder.indexOf('spray'), workOrder.indexOf('spread')];
  return spray >= 0 && (spread < 0 || spray < spread);
}
