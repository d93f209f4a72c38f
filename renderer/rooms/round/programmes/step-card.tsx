import { Trash2 } from 'lucide-react';
import { err } from '../../../../core/base/index.ts';
import type { Book, Programme, ProgrammeStep } from '../../../../core/book/index.ts';
import { putRecord } from '../../../stores/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { programmesWords } from '../../../texts/round/index.ts';
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
          label={programmesWords.step.nameOf(step.name)}
          text={step.name}
          onCommit={(name) => change({ name }, programmesWords.step.changeNameStep)}
        />
        <Button
          look="quiet"
          label={programmesWords.step.removeStep(step.name)}
          tip={programmesWords.step.removeThis}
          whyNot={programme.steps.length === 1 ? programmesWords.step.oneNeeded : null}
          onPress={() => putRecord('programmes', withoutStep(programme, step.id), programmesWords.step.remove)}
        >
          <Trash2 size={15} aria-hidden="true" />
        </Button>
      </div>
      <div className="step-fields">
        <div>
          <Members
            all={book.treatments}
            chosen={step.treatmentIds}
            onChange={(treatmentIds) => change({ treatmentIds }, programmesWords.step.changeTreatments)}
          />
        </div>
        <Span {...props} change={change} />
        <After {...props} change={change} />
      </div>
      <details className="left-out" open={step.choice !== undefined}>
        <summary>
          {step.choice === undefined ? programmesWords.step.forEveryLawn : programmesWords.step.forSomeLawns}
        </summary>
        <ChoiceFields
          of={programmesWords.step.lawnsOf(step.name)}
          choice={step.choice}
          tagged={programmesWords.step.what}
          onChange={(choice) => change({ choice }, programmesWords.step.changeLawns)}
        />
      </details>
    </section>
  );
}

function Span({ book, step, change }: PartProps) {
  const spoken = step.name;
  return (
    <div>
      <Field label={programmesWords.step.from}>
        <MonthDayInput
          label={programmesWords.step.fromOf(spoken)}
          value={step.from}
          onCommit={(from) => change({ from: from ?? step.from }, programmesWords.step.changeFrom)}
        />
      </Field>
      <Field
        label={programmesWords.step.until}
        note={step.to < step.from ? programmesWords.step.yearAfter : commonWords.lastUsefulDay}
      >
        <MonthDayInput
          label={programmesWords.step.untilOf(spoken)}
          value={step.to}
          onCommit={(to) => change({ to: to ?? step.to }, programmesWords.step.changeUntil)}
        />
      </Field>
      <Field label={programmesWords.step.timing}>
        <Choice
          label={programmesWords.step.timingOf(spoken)}
          value={step.timingId ?? ''}
          options={[
            { value: '', words: commonWords.none },
            ...book.timings.map((each) => ({ value: each.id, words: each.name })),
          ]}
          onChoose={(id) => {
            change({ timingId: id === '' ? undefined : id }, programmesWords.step.changeTiming);
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
      return err('nothing-to-do', 'days', programmesWords.step.followsNone, programmesWords.step.followsNoneAdvice);
    if (mostDays !== null && mostDays < leastDays)
      return err(
        'quantity-out-of-range',
        'days',
        programmesWords.step.daysCrossed,
        programmesWords.step.daysCrossedAdvice,
      );
    const next = { stepId: after.stepId, leastDays, ...(mostDays === null ? {} : { mostDays }) };
    return change({ after: next }, programmesWords.step.changeDaysBetween);
  };
  return (
    <div>
      <Field label={programmesWords.step.follows}>
        <Choice
          label={programmesWords.step.followsOf(step.name)}
          value={after?.stepId ?? ''}
          options={[
            { value: '', words: programmesWords.step.noStep },
            ...others.map((each) => ({ value: each.id, words: each.name })),
          ]}
          onChoose={(stepId) => {
            const next = stepId === '' ? undefined : { leastDays: after?.leastDays ?? 0, stepId };
            change({ after: next }, programmesWords.step.changeStepBefore);
          }}
        />
      </Field>
      {after !== undefined && (
        <>
          <Field label={programmesWords.step.afterAtLeast} note={programmesWords.step.daysOnLawn}>
            <QuantityInput
              kind="whole"
              label={programmesWords.step.leastDaysOf(step.name)}
              value={after.leastDays}
              onCommit={(value) => days(value ?? 0, after.mostDays ?? null)}
            />
          </Field>
          <Field label={programmesWords.step.andAtMost} note={programmesWords.step.daysNoEnd}>
            <QuantityInput
              kind="whole"
              label={programmesWords.step.mostDaysOf(step.name)}
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
