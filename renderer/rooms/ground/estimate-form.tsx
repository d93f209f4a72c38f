import { Trash2 } from 'lucide-react';
import { err, type Result } from '../../../core/base/index.ts';
import type { Book, Estimate } from '../../../core/book/index.ts';
import { NO_ESTIMATE } from '../../../core/quote/index.ts';
import { edit } from '../../stores/index.ts';
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
      <StepsTable estimate={estimate} onChange={(steps) => change({ ...estimate, steps }, 'Change price steps')} />
      {FIGURES.map(({ member, words, kind, note }) => (
        <Field key={member} label={words} {...(note === undefined ? {} : { note })}>
          <QuantityInput
            kind={kind}
            label={words}
            value={estimate[member]}
            positive={member === 'roundsPerSeason'}
            onCommit={(value) => change({ ...estimate, [member]: value ?? 0 }, `Change ${words.toLowerCase()}`)}
          />
        </Field>
      ))}
      <SeasonTicks
        book={book}
        onChange={(treatmentIds) =>
          change(
            withOptional<Estimate, 'treatmentIds'>(estimate, 'treatmentIds', treatmentIds),
            'Change usual treatments',
          )
        }
      />
      <p className="quiet small">
        Wage and mileage are in the Shed under "Money and driving", product prices with the products.
      </p>
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
  { member: 'leastPerVisit', words: 'Least price of a visit', kind: 'money' },
  { member: 'roundsPerSeason', words: 'Visits per season', kind: 'whole' },
  { member: 'overheadShare', words: 'Overhead', kind: 'share', note: 'of work, miles and product' },
  { member: 'milesPerVisit', words: 'Miles per visit', kind: 'number', note: "its share of a day's driving" },
  { member: 'drivingMinPerVisit', words: 'Driving per visit', kind: 'minutes' },
  { member: 'carrierDollarsPerGal', words: 'Carrier, per gallon', kind: 'money', note: 'water and its fetching' },
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
            <th scope="col">ground up to</th>
            <th scope="col" className="number">
              per 1,000 ft²
            </th>
            <th scope="col">
              <span className="only-spoken">remove</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {steps.map((step, index) => (
            <tr key={`step ${String(index)}`}>
              <td>
                <QuantityInput
                  kind="area"
                  label={`End of step ${index + 1}; empty for no end`}
                  value={step.upToSqFt}
                  optional
                  positive
                  onCommit={(upToSqFt) => onChange(inOrder(steps.with(index, { ...step, upToSqFt })))}
                />
              </td>
              <td className="number">
                <QuantityInput
                  kind="money"
                  label={`Price per 1,000 ft² in step ${index + 1}`}
                  value={step.dollarsPer1000SqFt}
                  onCommit={(value) =>
                    value === null
                      ? err('quantity-out-of-range', 'price', 'There is no price here.', 'Write a price, such as 9.50.')
                      : onChange(steps.with(index, { ...step, dollarsPer1000SqFt: value }))
                  }
                />
              </td>
              <td className="row-tools">
                <Button
                  look="quiet"
                  label={`Remove step ${index + 1}`}
                  tip="Remove this step"
                  onPress={() => onChange(steps.toSpliced(index, 1))}
                >
                  <Trash2 size={14} aria-hidden="true" />
                </Button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Field label="Add a step at" note="price per 1,000 ft²; then say up to which size it holds">
        <QuantityInput
          kind="money"
          label="Price per 1,000 ft² of a new step"
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
      <legend className="quiet small">Usual treatments</legend>
      {book.treatments.map(({ id, name }) => (
        <Tick key={id} label={name} checked={named.includes(id)} onChange={(on) => toggle(id, on)} />
      ))}
    </fieldset>
  );
}
