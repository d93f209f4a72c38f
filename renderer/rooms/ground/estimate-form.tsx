import { Trash2 } from 'lucide-react';
import { err, type Result } from '../../../core/base/index.ts';
import type { Book, Estimate } from '../../../core/book/index.ts';
import { NO_ESTIMATE } from '../../../core/quote/index.ts';
import { edit } from '../../stores/index.ts';
import { estimateWords } from '../../texts/ground/index.ts';
import { Button, Field, QuantityInput, type QuantityKind, Tick } from '../../ui/index.ts';
import { withOptional } from './zone-edits.ts';

type Step = Estimate['steps'][number];

/** The owner's own figures: price steps, least price, visits, overhead, driving, and which treatments make a season. */
export function EstimateForm({ book }: { readonly book: Book }) {
  const estimate = book.estimate ?? NO_ESTIMATE;
  const change = (next: Estimate, label: string): Result<unknown> =>
    edit({ kind: 'set', changes: { estimate: next }, label });
  return (
    <>
      <StepsTable
        estimate={estimate}
        onChange={(steps) => change({ ...estimate, steps }, estimateWords.estimateForm.changePriceSteps)}
      />
      {FIGURES.map(({ member, words, kind, note }) => (
        <Field key={member} label={words} {...(note === undefined ? {} : { note })}>
          <QuantityInput
            kind={kind}
            label={words}
            value={estimate[member]}
            positive={member === 'roundsPerSeason'}
            onCommit={(value) =>
              change({ ...estimate, [member]: value ?? 0 }, estimateWords.estimateForm.change(words.toLowerCase()))
            }
          />
        </Field>
      ))}
      <SeasonTicks
        book={book}
        onChange={(treatmentIds) =>
          change(
            withOptional<Estimate, 'treatmentIds'>(estimate, 'treatmentIds', treatmentIds),
            estimateWords.estimateForm.changeTreatments,
          )
        }
      />
      <p className="quiet small">{estimateWords.estimateForm.wageNote}</p>
    </>
  );
}

type Figure = {
  readonly member: Exclude<keyof Estimate, 'steps' | 'treatmentIds'>;
  readonly words: string;
  readonly kind: QuantityKind;
  readonly note?: string;
};

const FIGURES: readonly Figure[] = [
  { member: 'leastPerVisit', words: estimateWords.estimateForm.leastPrice, kind: 'money' },
  { member: 'roundsPerSeason', words: estimateWords.estimateForm.visits, kind: 'whole' },
  {
    member: 'overheadShare',
    words: estimateWords.estimateForm.overhead,
    kind: 'share',
    note: estimateWords.estimateForm.overheadNote,
  },
  {
    member: 'milesPerVisit',
    words: estimateWords.estimateForm.miles,
    kind: 'number',
    note: estimateWords.estimateForm.milesNote,
  },
  { member: 'drivingMinPerVisit', words: estimateWords.estimateForm.driving, kind: 'minutes' },
  {
    member: 'carrierDollarsPerGal',
    words: estimateWords.estimateForm.carrier,
    kind: 'money',
    note: estimateWords.estimateForm.carrierNote,
  },
];

type StepsProps = {
  readonly estimate: Estimate;
  readonly onChange: (steps: readonly Step[]) => Result<unknown>;
};

/** Price per 1,000 ft² by the size of the lawn. */
function StepsTable({ estimate, onChange }: StepsProps) {
  const { steps } = estimate;
  return (
    <>
      <table className="table">
        <thead>
          <tr>
            <th scope="col">{estimateWords.estimateForm.groundUpTo}</th>
            <th scope="col" className="number">
              {estimateWords.estimateForm.per1000Ft}
            </th>
            <th scope="col">
              <span className="only-spoken">{estimateWords.estimateForm.remove}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {steps.map((step, index) => (
            <tr key={`step ${String(index)}`}>
              <td>
                <QuantityInput
                  kind="area"
                  label={estimateWords.estimateForm.endOfStep(index + 1)}
                  value={step.upToSqFt}
                  optional
                  positive
                  onCommit={(upToSqFt) => onChange(inOrder(steps.with(index, { ...step, upToSqFt })))}
                />
              </td>
              <td className="number">
                <QuantityInput
                  kind="money"
                  label={estimateWords.estimateForm.priceOfStep(index + 1)}
                  value={step.dollarsPer1000SqFt}
                  onCommit={(value) =>
                    value === null
                      ? err(
                          'quantity-out-of-range',
                          'price',
                          estimateWords.estimateForm.noPrice,
                          estimateWords.estimateForm.noPriceAdvice,
                        )
                      : onChange(steps.with(index, { ...step, dollarsPer1000SqFt: value }))
                  }
                />
              </td>
              <td className="row-tools">
                <Button
                  look="quiet"
                  label={estimateWords.estimateForm.removeStep(index + 1)}
                  tip={estimateWords.estimateForm.removeThis}
                  onPress={() => onChange(steps.toSpliced(index, 1))}
                >
                  <Trash2 size={14} aria-hidden="true" />
                </Button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Field label={estimateWords.estimateForm.addStep} note={estimateWords.estimateForm.priceNote}>
        <QuantityInput
          kind="money"
          label={estimateWords.estimateForm.priceOfNewStep}
          value={null}
          optional
          onCommit={(value) =>
            value === null ? onChange(steps) : onChange([...steps, { upToSqFt: null, dollarsPer1000SqFt: value }])
          }
        />
      </Field>
    </>
  );
}

/** Smaller ends first, the one without an end last. */
function inOrder(steps: readonly Step[]): readonly Step[] {
  const end = (step: Step): number => step.upToSqFt ?? Number.POSITIVE_INFINITY;
  return steps.toSorted((left, right) => end(left) - end(right));
}

type TicksProps = { readonly book: Book; readonly onChange: (treatmentIds: readonly string[] | null) => void };

function SeasonTicks({ book, onChange }: TicksProps) {
  const all = book.treatments.map((each) => each.id);
  const named = book.estimate?.treatmentIds ?? all;
  if (all.length < 2) return null;
  const toggle = (id: string, on: boolean) => {
    const next = all.filter((each) => (each === id ? on : named.includes(each)));
    onChange(next.length === all.length ? null : next);
  };
  return (
    <fieldset className="ticks ticks-one">
      <legend className="quiet small">{estimateWords.estimateForm.usualTreatments}</legend>
      {book.treatments.map(({ id, name }) => (
        <Tick key={id} label={name} checked={named.includes(id)} onChange={(on) => toggle(id, on)} />
      ))}
    </fieldset>
  );
}
