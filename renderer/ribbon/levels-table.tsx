import { useMemo } from 'react';
import type { PlanDay } from '../../core/plan/result/index.ts';
import type { Formatter } from '../format/index.ts';
import { ribbonWords } from '../texts/index.ts';
import { dayEvents } from './day-events.ts';
import { levelAt } from './level-line.ts';
import { eventWords } from './readout.ts';

type LevelsTableProps = { readonly day: PlanDay; readonly words: Formatter };

/** The ribbon as a table: one row for every event, one column for every tank, hopper and stock. */
export function LevelsTable({ day, words }: LevelsTableProps) {
  const events = useMemo(() => dayEvents(day), [day]);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard.
    <section className="levels-table" aria-label={ribbonWords.table.label} tabIndex={0}>
      <table className="table">
        <thead>
          <tr>
            <th scope="col">{ribbonWords.table.whatHappens}</th>
            {day.levels.map((line) => (
              <th key={line.id} scope="col" className="number">
                {ribbonWords.table.levelHead(line.label, words.level(line.capacity, line.unit))}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {events.map((event, index) => (
            <tr key={`${event.kind}-${event.sec}-${String(index)}`}>
              <th scope="row">{eventWords(event, words)}</th>
              {day.levels.map((line) => (
                <td key={line.id} className="number">
                  {words.level(levelAt(line, event.sec), line.unit)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
