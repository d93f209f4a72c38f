import { CalendarPlus, Plus, Trash2 } from 'lucide-react';
import { useState } from 'react';
import { type Book, emptyBook, type Programme } from '../../../../core/book/index.ts';
import { seasonRounds } from '../../../../core/round/programme/index.ts';
import { todayHere } from '../../../format/index.ts';
import { NotYet } from '../../../next/index.ts';
import {
  edit,
  freshId,
  putRecord,
  removeRecord,
  selectRound,
  showError,
  showNews,
  useBook,
  whyNoRound,
} from '../../../stores/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { programmesWords } from '../../../texts/round/index.ts';
import { Button, Choice, DraftInput, Field, QuantityInput } from '../../../ui/index.ts';
import { newProgramme, newStep } from './programme-edits.ts';
import { StepCard } from './step-card.tsx';

const NO_BOOK = emptyBook('none', '');

/** Programmes: several rounds a season that are used again every year. */
export function ProgrammesView() {
  const book = useBook((state) => state.open?.book ?? NO_BOOK);
  const [chosen, setChosen] = useState('');
  const programme = book.programmes.find((each) => each.id === chosen) ?? book.programmes[0];
  const add = () => {
    const record = newProgramme(book);
    const done = putRecord('programmes', record, programmesWords.view.addProgramme);
    if (done.ok) setChosen(record.id);
    else showError(done.error);
  };
  const whyNot = whyNoRound(book);
  if (programme === undefined) {
    return (
      <NotYet
        title={programmesWords.view.noProgrammeYet}
        needs="treatments"
        action={
          whyNot === null && (
            <Button look="main" onPress={add}>
              <Plus size={15} aria-hidden="true" /> {programmesWords.view.addAProgramme}
            </Button>
          )
        }
      >
        {programmesWords.view.about}
      </NotYet>
    );
  }
  return (
    <div className="ledger">
      <section className="plan-bar" aria-label={programmesWords.view.programme}>
        <div className="plan-bar-title">
          <h2>{programmesWords.view.programmes}</h2>
        </div>
        <div className="plan-bar-wishes">
          <Choice
            label={programmesWords.view.shown}
            value={programme.id}
            options={book.programmes.map((each) => ({ value: each.id, words: each.name }))}
            onChoose={setChosen}
          />
          <Button whyNot={whyNot} onPress={add}>
            <Plus size={14} aria-hidden="true" /> {programmesWords.view.addAProgramme}
          </Button>
        </div>
      </section>
      <Steps key={programme.id} book={book} programme={programme} />
    </div>
  );
}

type StepsProps = { readonly book: Book; readonly programme: Programme };

function Steps({ book, programme }: StepsProps) {
  const put = (next: Programme, label: string) => putRecord('programmes', next, label);
  return (
    <div className="steps section">
      <Field label={commonWords.name}>
        <DraftInput
          label={programmesWords.view.nameOf}
          text={programme.name}
          onCommit={(name) => put({ ...programme, name }, commonWords.changeName)}
        />
      </Field>
      {programme.steps.map((step) => (
        <StepCard key={step.id} book={book} programme={programme} step={step} />
      ))}
      <div className="day-actions">
        <Button
          onPress={() =>
            put(
              { ...programme, steps: [...programme.steps, newStep(book, programme.steps)] },
              programmesWords.view.stepAdded,
            )
          }
        >
          <Plus size={14} aria-hidden="true" /> {programmesWords.view.addStep}
        </Button>
        <Button look="danger" onPress={() => removeRecord('programmes', programme.id, programme.name)}>
          <Trash2 size={14} aria-hidden="true" /> {programmesWords.view.removeThis}
        </Button>
      </div>
      <MakeRounds book={book} programme={programme} />
    </div>
  );
}

/** The rounds of one year, made as one step that undo takes back. */
function MakeRounds({ book, programme }: StepsProps) {
  const [year, setYear] = useState(() => latestYear(book));
  const [notes, setNotes] = useState<readonly string[]>([]);
  const rigIds = book.rigs.map((each) => each.id);
  const make = () => {
    const made = seasonRounds(book, programme, year, rigIds, (taken) => freshId(taken, 'round'));
    setNotes(made.notes);
    const [first] = made.rounds;
    if (first === undefined) return;
    const label = programmesWords.view.make(made.rounds.length, programme.name);
    const actions = made.rounds.map((record) => ({ kind: 'put', table: 'rounds', record }) as const);
    const done = edit({ kind: 'several', actions, label });
    if (!done.ok) {
      showError(done.error);
      return;
    }
    selectRound(first.id);
    showNews(programmesWords.view.made(made.rounds.length, programme.name, year), true);
  };
  return (
    <section className="make-rounds" aria-label={programmesWords.view.yearForm}>
      <div className="plan-bar-wishes">
        <span className="inline-field">
          <span aria-hidden="true">{programmesWords.view.season}</span>
          <QuantityInput
            kind="whole"
            label={programmesWords.view.yearOfSeason}
            value={year}
            most={2199}
            onCommit={(value) => {
              setYear(value ?? year);
              return { ok: true, value: null };
            }}
          />
        </span>
        <Button look="main" whyNot={whyNotMake(book, year)} onPress={make}>
          <CalendarPlus size={14} aria-hidden="true" /> {programmesWords.view.makeRounds}
        </Button>
      </div>
      {notes.length > 0 && (
        <ul className="small" aria-live="polite">
          {notes.map((each) => (
            <li key={each}>{each}.</li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** This year, or that of the latest round where it is later. */
function latestYear(book: Book): number {
  const days = book.rounds.flatMap((each) => each.dates);
  return Number([todayHere(), ...days].toSorted().at(-1)?.slice(0, 4));
}

function whyNotMake(book: Book, year: number): string | null {
  if (year < 1970) return programmesWords.view.writeYear;
  return whyNoRound(book);
}
