import { Plus, X } from 'lucide-react';
import type { Book, Round } from '../../../../core/book/index.ts';
import { calendarOf, roundDays } from '../../../../core/round/calendar/index.ts';
import { CommandButton } from '../../../commands/index.ts';
import { changeRound, putRecord, useFormat } from '../../../stores/index.ts';
import { setUpWords } from '../../../texts/round/index.ts';
import { Button, Field, Section } from '../../../ui/index.ts';

type RoundDaysProps = { readonly book: Book; readonly round: Round };

/** The days of the round in a list; the view Calendar shows them in months. */
export function RoundDaysList({ book, round }: RoundDaysProps) {
  const words = useFormat();
  const calendar = calendarOf(book);
  const { days } = roundDays(calendar, round);
  const whyOf = (date: string): string => days.find((each) => each.date === date)?.why ?? '';
  return (
    <Section
      title={setUpWords.days.workingDays}
      aside={
        <CommandButton id="round.add-day" look="quiet" bare>
          <Plus size={15} aria-hidden="true" />
        </CommandButton>
      }
    >
      <ol className="dates">
        {round.dates.map((date, index) => (
          <li key={date}>
            <span className="date-words">{words.date(date).slice(0, 3)}</span>
            <input
              type="date"
              className="input"
              aria-label={setUpWords.days.dayNumber(index + 1)}
              value={date}
              onChange={(event) => {
                const { value } = event.target;
                if (value !== '' && !round.dates.includes(value)) {
                  changeRound(round, { dates: round.dates.with(index, value).toSorted() }, setUpWords.days.changeDay);
                }
              }}
            />
            <Button
              look="quiet"
              label={setUpWords.days.removeDay(words.longDate(date))}
              tip={setUpWords.days.removeThis}
              whyNot={round.dates.length === 1 ? setUpWords.days.oneNeeded : null}
              onPress={() => changeRound(round, { dates: round.dates.toSpliced(index, 1) }, setUpWords.days.remove)}
            >
              <X size={14} aria-hidden="true" />
            </Button>
            {whyOf(date) !== '' && <span className="date-why small quiet">{whyOf(date)}</span>}
          </li>
        ))}
      </ol>
      <Field label={setUpWords.days.dueBy}>
        <input
          type="date"
          className="input"
          aria-label={setUpWords.days.dueBy}
          value={round.dueDate ?? ''}
          onChange={(event) => {
            const { dueDate: _, ...rest } = round;
            const { value } = event.target;
            putRecord('rounds', value === '' ? rest : { ...rest, dueDate: value }, setUpWords.days.changeDueDate);
          }}
        />
      </Field>
    </Section>
  );
}
