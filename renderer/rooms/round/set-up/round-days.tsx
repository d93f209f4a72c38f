import { Plus, X } from 'lucide-react';
import type { Book, Round } from '../../../../core/book/index.ts';
import { calendarOf, nextWorkday, roundDays } from '../../../../core/round/calendar/index.ts';
import { changeRound, putRecord, useFormat } from '../../../stores/index.ts';
import { Button, Field, Section } from '../../../ui/index.ts';
import { withDate } from '../round-edits.ts';

type RoundDaysProps = { readonly book: Book; readonly round: Round };

/** The days of the round in a list; the view Calendar shows them in months. */
export function RoundDaysList({ book, round }: RoundDaysProps) {
  const words = useFormat();
  const calendar = calendarOf(book);
  const { days } = roundDays(calendar, round);
  const whyOf = (date: string): string => days.find((each) => each.date === date)?.why ?? '';
  const add = () => {
    const dates = withDate(round, nextWorkday(calendar, round.dates.toSorted().at(-1) ?? ''), true);
    if (dates !== null) changeRound(round, { dates }, 'Add day');
  };
  return (
    <Section
      title="Working days"
      aside={
        <Button look="quiet" label="Add the next working day" tip="Add the next working day" onPress={add}>
          <Plus size={15} aria-hidden="true" />
        </Button>
      }
    >
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
                  changeRound(round, { dates: round.dates.with(index, value).toSorted() }, 'Change day');
                }
              }}
            />
            <Button
              look="quiet"
              label={`Remove ${words.longDate(date)}`}
              tip="Remove this day"
              whyNot={round.dates.length === 1 ? 'A round needs at least one day' : null}
              onPress={() => changeRound(round, { dates: round.dates.toSpliced(index, 1) }, 'Remove day')}
            >
              <X size={14} aria-hidden="true" />
            </Button>
            {whyOf(date) !== '' && <span className="date-why small quiet">{whyOf(date)}</span>}
          </li>
        ))}
      </ol>
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
  );
}
