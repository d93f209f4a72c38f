import { err, type Result } from '../../../core/base/index.ts';
import type { Book, Round } from '../../../core/book/index.ts';
import { putRecord, showError, useFormat } from '../../stores/index.ts';
import { Button, DraftInput, Field, Section, Tick } from '../../ui/index.ts';

type FormProps = { readonly book: Book; readonly round: Round };

function change(round: Round, label: string): void {
  const done = putRecord('rounds', round, label);
  if (!done.ok) showError(done.error);
}

/** What a round applies, on which days, with which rigs. */
export function RoundForm({ book, round }: FormProps) {
  return (
    <div className="inspector">
      <Section title="Round">
        <Field label="Name">
          <DraftInput label="Name of the round" text={round.name} onCommit={(name) => commitName(round, name)} />
        </Field>
        <Field label="Due">
          <input
            className="input"
            type="date"
            aria-label="Last useful day"
            value={round.dueDate ?? ''}
            onChange={(event) => change(withDue(round, event.target.value), 'Change due date')}
          />
        </Field>
        <Tick
          label="Ground is wet: weight limits apply"
          checked={round.wetGround}
          onChange={(wetGround) => change({ ...round, wetGround }, 'Change wet ground')}
        />
      </Section>
      <Section title="Treatments">
        <Ticks
          all={book.treatments}
          chosen={round.treatmentIds}
          onChange={(treatmentIds) => change({ ...round, treatmentIds }, 'Change treatments')}
        />
      </Section>
      <Section title="Rigs">
        <Ticks
          all={book.rigs}
          chosen={round.rigIds}
          onChange={(rigIds) => change({ ...round, rigIds }, 'Change rigs')}
        />
      </Section>
      <Days round={round} />
      <Section title="Lawns">
        <p className="small">
          {round.propertyIds === 'all'
            ? `All ${book.properties.length} of the book`
            : `${round.propertyIds.length} chosen`}
          {round.skipped.length > 0 && `, ${round.skipped.length} left out`}
        </p>
        {round.skipped.map((each) => (
          <p key={each.propertyId} className="quiet small">
            {book.properties.find((property) => property.id === each.propertyId)?.name ?? each.propertyId}:{' '}
            {each.reason}
          </p>
        ))}
      </Section>
    </div>
  );
}

function commitName(round: Round, name: string): Result<unknown> {
  if (name.trim() === '') return err('request-invalid', 'name', 'A round needs a name.', 'Type a name.');
  return putRecord('rounds', { ...round, name: name.trim() }, 'Change name of the round');
}

function withDue(round: Round, dueDate: string): Round {
  const { dueDate: _, ...rest } = round;
  return dueDate === '' ? rest : { ...rest, dueDate };
}

type TicksProps = {
  readonly all: readonly { readonly id: string; readonly name: string }[];
  readonly chosen: readonly string[];
  readonly onChange: (chosen: readonly string[]) => void;
};

/** Some of several; the last one stays. */
function Ticks({ all, chosen, onChange }: TicksProps) {
  return (
    <div className="fields">
      {all.map(({ id, name }) => (
        <Tick
          key={id}
          label={name}
          checked={chosen.includes(id)}
          onChange={(checked) => {
            const next = checked
              ? all.map((each) => each.id).filter((each) => each === id || chosen.includes(each))
              : chosen.filter((each) => each !== id);
            if (next.length > 0) onChange(next);
          }}
        />
      ))}
    </div>
  );
}

function Days({ round }: { readonly round: Round }) {
  const words = useFormat();
  const setDates = (dates: readonly string[]): void =>
    change({ ...round, dates: [...new Set(dates)].sort() }, 'Change working days');
  return (
    <Section title="Working days">
      <ul className="fields">
        {round.dates.map((date) => (
          <li key={date} className="shelf-row">
            <span>{words.longDate(date)}</span>
            <Button
              look="quiet"
              label={`Take ${words.date(date)} out`}
              whyNot={round.dates.length === 1 ? 'A round needs at least one day' : null}
              onPress={() => setDates(round.dates.filter((each) => each !== date))}
            >
              Remove
            </Button>
          </li>
        ))}
      </ul>
      <input
        className="input"
        type="date"
        aria-label="Add a working day"
        onChange={(event) => event.target.value !== '' && setDates([...round.dates, event.target.value])}
      />
    </Section>
  );
}
