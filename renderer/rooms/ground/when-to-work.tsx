import { err, type Result } from '../../../core/base/index.ts';
import { type Property, WEEKDAYS } from '../../../core/book/index.ts';
import { changeProperty, showError } from '../../stores/index.ts';
import { estimateWords } from '../../texts/ground/index.ts';
import { Field, QuantityInput, Tick } from '../../ui/index.ts';
import { END_OF_DAY_MIN, withHours, withWeekday } from './zone-edits.ts';

/** The hours and days of the week on which the customer lets a crew work. */
export function WhenToWork({ property }: { readonly property: Property }) {
  const { openMin, closeMin } = property.hours ?? { openMin: 0, closeMin: END_OF_DAY_MIN };
  const setHours = (from: number, until: number): Result<unknown> => {
    const next = withHours(property, from, until);
    if (next !== null) return changeProperty(next, {}, estimateWords.whenToWork.changeHours);
    return err(
      'quantity-out-of-range',
      'hours',
      estimateWords.whenToWork.endsBeforeStart,
      estimateWords.whenToWork.endsBeforeStartAdvice,
    );
  };
  const setDay = (day: (typeof WEEKDAYS)[number], on: boolean): void => {
    const next = withWeekday(property, day, on);
    const done =
      next === null
        ? err(
            'quantity-out-of-range',
            estimateWords.whenToWork.weekdaysPlace,
            estimateWords.whenToWork.noDayLeft,
            estimateWords.whenToWork.noDayLeftAdvice,
          )
        : changeProperty(next, {}, estimateWords.whenToWork.changeWeekdays);
    if (!done.ok) showError(done.error);
  };
  return (
    <>
      <Field label={estimateWords.whenToWork.from} note={estimateWords.whenToWork.fromNote}>
        <QuantityInput
          kind="clock"
          label={estimateWords.whenToWork.fromLabel}
          value={openMin === 0 ? null : openMin}
          optional
          onCommit={(from) => setHours(from ?? 0, closeMin)}
        />
      </Field>
      <Field label={estimateWords.whenToWork.until}>
        <QuantityInput
          kind="clock"
          label={estimateWords.whenToWork.untilLabel}
          value={closeMin === END_OF_DAY_MIN ? null : closeMin}
          optional
          onCommit={(until) => setHours(openMin, until ?? END_OF_DAY_MIN)}
        />
      </Field>
      <fieldset className="ticks">
        <legend className="quiet small">{estimateWords.whenToWork.weekdays}</legend>
        {WEEKDAYS.map((day) => (
          <Tick
            key={day}
            label={day.charAt(0).toUpperCase() + day.slice(1)}
            checked={property.weekdays?.includes(day) ?? true}
            onChange={(on) => setDay(day, on)}
          />
        ))}
      </fieldset>
    </>
  );
}
