import { Trash2 } from 'lucide-react';
import { err } from '../../../../core/base/index.ts';
import type { Book, Programme, ProgrammeStep } from '../../../../core/book/index.ts';
import { putRecord } from '../../../stores/index.ts';
import { Button, Choice, DraftInput, Field, MonthDayInput, QuantityInput } from '../../../ui/index.ts';
import { ChoiceFields } from '../set-up/choice-fields.tsx';
import { Members } from '../set-up/members.tsx';
import { withoutStep, withStep } from './programme-edits.ts';

type StepCardProps = { readonly book: Book; readonly programme: Programme; readonly step: ProgrammeStep };
type Changes = Parameters<typeof withStep>[2];
type PartProps = StepCardProps & { readonly change: (changes: Changes, label: string) => ReturnType<typeof putRecord> };

/** One round of a programme. */
export function StepCard(props: StepCardProps) {
  const { book, programme, step } = props;
  const change: PartProps['change'] = (changes, label) =>
    putRecord('programmes', withStep(programme, step.id, changes), label);
  return (
    <section className="step-card" aria-label={step.name}>
      <div className="step-head">
        <DraftInput
          label={`Name of ${step.name}`}
          text={step.name}
          onCommit={(name) => change({ name }, 'Change name of step')}
        />
        <Button
          look="quiet"
          label={`Remove ${step.name}`}
          tip="Remove this step"
          whyNot={programme.steps.length === 1 ? 'A programme needs at least one step' : null}
          onPress={() => putRecord('programmes', withoutStep(programme, step.id), 'Remove step')}
        >
          <Trash2 size={15} aria-hidden="true" />
        </Button>
      </div>
      <div className="step-fields">
        <div>
          <Members
            all={book.treatments}
            chosen={step.treatmentIds}
            onChange={(treatmentIds) => change({ treatmentIds }, 'Change treatments')}
          />
        </div>
        <Span {...props} change={change} />
        <After {...props} change={change} />
      </div>
      <details className="left-out" open={step.choice !== undefined}>
        <summary>{step.choice === undefined ? 'For every lawn' : 'For some lawns'}</summary>
        <ChoiceFields
          of={`Lawns of ${step.name}`}
          choice={step.choice}
          tagged="lawns"
          onChange={(choice) => change({ choice }, 'Change the choice of lawns')}
        />
      </details>
    </section>
  );
}

function Span({ book, step, change }: PartProps) {
  const spoken = step.name;
  return (
    <div>
      <Field label="From">
        <MonthDayInput
          label={`${spoken}: from`}
          value={step.from}
          onCommit={(from) => change({ from: from ?? step.from }, 'Change first day')}
        />
      </Field>
      <Field label="to" note={step.to < step.from ? 'in the year after' : 'last useful day'}>
        <MonthDayInput
          label={`${spoken}: to`}
          value={step.to}
          onCommit={(to) => change({ to: to ?? step.to }, 'Change last day')}
        />
      </Field>
      <Field label="Timing">
        <Choice
          label={`${spoken}: timing`}
          value={step.timingId ?? ''}
          options={[
            { value: '', words: 'none' },
            ...book.timings.map((each) => ({ value: each.id, words: each.name })),
          ]}
          onChoose={(id) => {
            change({ timingId: id === '' ? undefined : id }, 'Change timing');
          }}
        />
      </Field>
    </div>
  );
}

/** The step before in a split application, and the days in between on one lawn. */
function After({ programme, step, change }: PartProps) {
  const others = programme.steps.filter((each) => each.id !== step.id);
  const { after } = step;
  const days = (leastDays: number, mostDays: number | null) => {
    if (after === undefined)
      return err('nothing-to-do', 'days', 'It follows no step.', 'Choose the step before first.');
    if (mostDays !== null && mostDays < leastDays)
      return err('quantity-out-of-range', 'days', 'The most is less than the least.', 'Write a larger figure.');
    const next = { stepId: after.stepId, leastDays, ...(mostDays === null ? {} : { mostDays }) };
    return change({ after: next }, 'Change days in between');
  };
  return (
    <div>
      <Field label="Follows">
        <Choice
          label={`${step.name}: follows`}
          value={after?.stepId ?? ''}
          options={[{ value: '', words: 'no step' }, ...others.map((each) => ({ value: each.id, words: each.name }))]}
          onChoose={(stepId) => {
            const next = stepId === '' ? undefined : { leastDays: after?.leastDays ?? 0, stepId };
            change({ after: next }, 'Change the step before');
          }}
        />
      </Field>
      {after !== undefined && (
        <>
          <Field label="after at least" note="days on one lawn">
            <QuantityInput
              kind="whole"
              label={`${step.name}: least days after`}
              value={after.leastDays}
              onCommit={(value) => days(value ?? 0, after.mostDays ?? null)}
            />
          </Field>
          <Field label="and at most" note="days; empty: no end">
            <QuantityInput
              kind="whole"
              label={`${step.name}: most days after`}
              value={after.mostDays ?? null}
              optional
              onCommit={(value) => days(after.leastDays, value)}
            />
          </Field>
        </>
      )}
    </div>
  );
}
