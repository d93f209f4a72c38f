import type { Book, Round } from '../../../../core/book/index.ts';
import { calendarOf, roundWeather, shiftOnClock } from '../../../../core/round/calendar/index.ts';
import { useFormat } from '../../../stores/index.ts';
import { calendarWords } from '../../../texts/round/index.ts';
import { QuantityInput } from '../../../ui/index.ts';
import { putWeather, weatherOn, withHour } from './calendar-edits.ts';

type WeatherHoursProps = { readonly book: Book; readonly round: Round; readonly date: string };

const MEMBERS = [
  { member: 'windMph', kind: 'speed', words: calendarWords.hours.wind },
  { member: 'airF', kind: 'temperature', words: calendarWords.hours.air },
  { member: 'rainIn', kind: 'width', words: calendarWords.hours.rain },
] as const;

/** Weather of the hours of the rigs' shifts, typed or read in, with what the labels make of each hour. */
export function WeatherHours({ book, round, date }: WeatherHoursProps) {
  const words = useFormat();
  const rigs = round.rigIds.flatMap((id) => book.rigs.filter((each) => each.id === id));
  const { clockChange } = calendarOf(book);
  const spans = rigs.flatMap((rig) => shiftOnClock(date, rig.shiftStartMin, rig.shiftMin, clockChange));
  const own = spans.filter((each) => each.date === date);
  const from = Math.floor(Math.min(...own.map((each) => each.fromMin)) / 60);
  const to = Math.ceil(Math.max(...own.map((each) => each.toMin)) / 60);
  const day = weatherOn(book, date);
  const shifts = roundWeather(book, round, [date], rigs)?.[0] ?? [];
  const whyOf = (hour: number): string =>
    words.said(
      shifts.flatMap((each) => each.hours).find((each) => each.date === date && each.hour === hour && each.why !== '')
        ?.why ?? '',
    );
  if (!Number.isFinite(from)) return null;
  return (
    <details className="weather-hours" open={day.hours.length > 0}>
      <summary>{calendarWords.hours.title}</summary>
      <table className="table table-edit">
        <thead>
          <tr>
            <th scope="col">{calendarWords.hours.from}</th>
            {MEMBERS.map((each) => (
              <th key={each.member} scope="col" className="number">
                {each.words.toLowerCase()}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: to - from }, (_, index) => from + index).map((hour) => {
            const read = day.hours.find((each) => each.hour === hour);
            const clock = words.clock(hour * 3600);
            return (
              <tr key={hour}>
                <th scope="row">
                  {clock}
                  {whyOf(hour) !== '' && (
                    <span className="block small caution" title={whyOf(hour)}>
                      {calendarWords.hours.closed(whyOf(hour).split(' ')[0] ?? '')}
                    </span>
                  )}
                </th>
                {MEMBERS.map(({ member, kind, words: what }) => (
                  <td key={member} className="number">
                    <QuantityInput
                      kind={kind}
                      label={calendarWords.hours.hourOf(what, clock)}
                      value={read?.[member] ?? null}
                      optional
                      onCommit={(value) =>
                        putWeather(book, withHour(day, hour, member, value), calendarWords.hours.change)
                      }
                    />
                  </td>
                ))}
              </tr>
            );
          })}
        </tbody>
      </table>
      {day.hours.length > 0 && day.source !== '' && (
        <p className="quiet small">{calendarWords.hours.source(day.source)}</p>
      )}
    </details>
  );
}
