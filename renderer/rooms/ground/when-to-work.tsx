import { err, type Result } from '../../../core/base/index.ts';
import { type Property, WEEKDAYS } from '../../../core/book/index.ts';
import { changeProperty, showError } from '../../stores/index.ts';
import { Field, QuantityInput, Tick } from '../../ui/index.ts';
import { END_OF_DAY_MIN, withHours, withWeekday } from './zone-edits.ts';

/** The hours and days of the week on which the customer lets a crew work. */
export function WhenToWork({ property }: { readonly property: Property }) {
  const { openMin, closeMin } = property.hours ?? { openMin: 0, closeMin: END_OF_DAY_MIN };
  const setHours = (from: number, until: number): Result<unknown> => {
    const next = withHours(property, from, until);
    if (next !== null) return changeProperty(next, {}, 'Change working hours');
    return err('quantity-out-of-range', 'hours', 'Work would end before it starts.', 'Write a later end.');
  };
  const setDay = (day: (typeof WEEKDAYS)[number], on: boolean): void => {
    const next = withWeekday(property, day, on);
    const done =
      next === null
        ? err('quantity-out-of-range', 'days of the week', 'No day would be left.', 'Choose another day first.')
        : changeProperty(next, {}, 'Change working days');
    if (!done.ok) showError(done.error);
  };
  return (
    <>
      <Field label="Work may start" note="empty: at any time of the shift">
        <QuantityInput
          kind="clock"
          label="Work may start from"
          value={openMin === 0 ? null : openMin}
          optional
          onCommit={(from) => setHours(from ?? 0, closeMin)}
        />
      </Field>
      <Field label="and until">
        <QuantityInput
          kind="clock"
          label="Work may start until"
          value={closeMin === END_OF_DAY_MIN ? null : closeMin}
          optional
          onCommit={(until) => setHours(openMin, until ?? END_OF_DAY_MIN)}
        />
      </Field>
      <fieldset className="ticks">
        <legend className="quiet small">Days of the week</legend>
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
