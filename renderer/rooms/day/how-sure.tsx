import { GraduationCap } from 'lucide-react';
import { useMemo } from 'react';
import type { Book, Spread } from '../../../core/book/index.ts';
import { type DayChance, learnSpread, type Range } from '../../../core/plan/chance/index.ts';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import { counted, type Formatter } from '../../format/index.ts';
import { edit, showError, useBook, useFormat } from '../../stores/index.ts';
import { Button, QuantityInput, Section, TableHead } from '../../ui/index.ts';
import { shiftEndSec, USUAL_SPREAD, useDayChance } from './use-day-chance.ts';

/** How sure a day is, in plain words and figures, and what that rests on. */
export function HowSure({ day }: { readonly day: PlanDay }) {
  const book = useBook((state) => state.open?.book ?? null);
  const chance = useDayChance(day);
  const words = useFormat();
  const rig = book?.rigs.find((each) => each.id === day.rigId);
  if (book === null || rig === undefined) return null;
  if (chance === null) return <p className="quiet how-sure-wait">Playing the day …</p>;
  return (
    <div className="how-sure">
      <div className="how-sure-words">
        <p className="how-sure-home">9 days in 10 home by {words.clock(upToMinute(chance.home.sec90))}</p>
        <p>
          Planned {words.clock(homePlanned(day))}; half of all days home by {words.clock(upToMinute(chance.home.sec50))}
          , 1 in 10 by {words.clock(upToMinute(chance.home.sec10))}.
        </p>
        <p>
          All done by the end of the shift, {words.clock(shiftEndSec(rig))}: {daysInHundred(chance.inShiftShare)}.
        </p>
        <p>
          Something runs out at a stop before its planned refill: {daysInHundred(chance.earlyShare)}; a refill more than
          planned: {daysInHundred(chance.runsOutShare)}.
        </p>
        {chance.missedShare > 0 && (
          <p>A lawn has closed before the rig is there: {daysInHundred(chance.missedShare)}.</p>
        )}
        <p className="quiet small">
          {counted(chance.played, 'day')} played with times and amounts that go from the plan as set beside. Who runs
          out fills again at once. Morning and evening work and breaks last as planned.
        </p>
      </div>
      <StopRanges day={day} chance={chance} words={words} />
      <SpreadPart book={book} />
    </div>
  );
}

/** "97 days in 100"; never all or none of them where it is only nearly so. */
export function daysInHundred(share: number): string {
  if (share <= 0) return 'never';
  if (share >= 1) return 'always';
  const days = Math.round(share * 100);
  if (days === 0) return 'less than 1 day in 100';
  return days === 100 ? 'more than 99 days in 100' : `${days} ${days === 1 ? 'day' : 'days'} in 100`;
}

/** A time that is promised is rounded to the later minute. */
function upToMinute(sec: number): number {
  return Math.ceil(sec / 60) * 60;
}

function homePlanned(day: PlanDay): number {
  return day.activities.findLast((each) => each.kind === 'drive')?.endSec ?? day.endSec;
}

type RangesProps = { readonly day: PlanDay; readonly chance: DayChance; readonly words: Formatter };

function StopRanges({ day, chance, words }: RangesProps) {
  const range = ({ sec10, sec90 }: Range) => `${words.clock(sec10)} to ${words.clock(sec90)}`;
  // A load that runs out does so where it is used last.
  const loadsAt = (propertyId: string) =>
    chance.loads.filter(
      (each) =>
        each.earlyShare + each.runsOutShare > 0 &&
        day.loads.find((load) => load.number === each.number)?.covers.at(-1)?.propertyId === propertyId,
    );
  const rows = chance.stops.flatMap((each, index) => {
    const stop = day.stops[index];
    if (stop === undefined) return [];
    const runsOut = loadsAt(each.propertyId).map(
      (load) => `load ${load.number}: ${daysInHundred(Math.min(1, load.earlyShare + load.runsOutShare))}`,
    );
    const closed = each.missedShare > 0 ? daysInHundred(each.missedShare) : '';
    return [{ each, stop, runsOut: runsOut.join(', '), closed }];
  });
  // Columns in which nothing stands would only take room from the names.
  const mayRunOut = rows.some((row) => row.runsOut !== '');
  const mayBeClosed = rows.some((row) => row.closed !== '');
  const heads = ['stop', 'planned', '8 days in 10'];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard.
    <section className="how-sure-stops" aria-label="When the rig is where" tabIndex={0}>
      <table className="table">
        <caption className="only-spoken">When the rig arrives, 8 days in 10, and what may go wrong there</caption>
        <TableHead
          columns={[...heads, ...(mayRunOut ? ['may run out'] : []), ...(mayBeClosed ? ['may be closed'] : [])]}
        />
        <tbody>
          {rows.map(({ each, stop, runsOut, closed }) => (
            <tr key={each.number}>
              <th scope="row">
                <span className="how-sure-number">{each.number}</span> {stop.name}
              </th>
              <td className="how-sure-time">{words.clock(stop.arriveSec)}</td>
              <td className="how-sure-time">{range(each.arrive)}</td>
              {mayRunOut && <td>{runsOut}</td>}
              {mayBeClosed && <td>{closed}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

const KINDS = [
  { what: 'driving', spread: 'drive', mean: 'driveMean' },
  { what: 'set-up, refills', spread: 'setUp', mean: 'setUpMean' },
  { what: 'treating', spread: 'treat', mean: 'treatMean' },
  { what: 'amounts used', spread: 'used', mean: 'usedMean' },
] as const satisfies readonly { what: string; spread: keyof Spread; mean: keyof Spread }[];

/** What the chances rest on; to be set by hand or learned from what was written down. */
function SpreadPart({ book }: { readonly book: Book }) {
  const spread = book.spread ?? USUAL_SPREAD;
  const found = useMemo(() => learnSpread(book.visits, book.spread ?? USUAL_SPREAD), [book.visits, book.spread]);
  const change = (next: Spread, label: string) => {
    const done = edit({ kind: 'set', changes: { spread: next }, label });
    if (!done.ok) showError(done.error);
    return done;
  };
  const enough = found.learned.filter((each) => each.visits >= found.least);
  return (
    <Section title="How far days go from the plan">
      <table className="table table-narrow">
        <TableHead columns={['what', { figures: 'times the plan' }, { figures: 'give or take' }]} />
        <tbody>
          {KINDS.map(({ what, spread: key, mean }) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td>
                <QuantityInput
                  label={`${what}: on average, times the plan`}
                  kind="number"
                  value={spread[mean]}
                  positive
                  onCommit={(value) => change({ ...spread, [mean]: value ?? 1 }, `Change spread of ${what}`)}
                />
              </td>
              <td>
                <QuantityInput
                  label={`${what}: give or take`}
                  kind="share"
                  value={spread[key]}
                  onCommit={(value) => change({ ...spread, [key]: value ?? 0 }, `Change spread of ${what}`)}
                />
              </td>
            </tr>
          ))}
          <tr>
            <th scope="row">the same all day</th>
            <td />
            <td>
              <QuantityInput
                label="part of it that a whole day has in common"
                kind="share"
                value={spread.inCommon}
                onCommit={(inCommon) =>
                  change({ ...spread, inCommon: inCommon ?? 0 }, 'Change what a day has in common')
                }
              />
            </td>
          </tr>
        </tbody>
      </table>
      <p className="small">
        <Button
          whyNot={
            enough.length === 0
              ? `${counted(found.least, 'visit')} with times or amounts written down are needed; there are ${Math.max(0, ...found.learned.map((each) => each.visits))}`
              : null
          }
          onPress={() => change(found.spread, 'Learn the spread from recorded visits')}
        >
          <GraduationCap size={14} aria-hidden="true" /> Learn from what was recorded
        </Button>
      </p>
      {enough.map((each) => (
        <p key={each.what} className="quiet small">
          {each.what}: {counted(each.visits, 'figure')}, on average {each.mean.toFixed(2)} times the plan, give or take{' '}
          {Math.round(each.deviation * 100)} %
        </p>
      ))}
      {book.spread === undefined && (
        <p className="quiet small">These figures are a guess to start with: set your own, or learn them.</p>
      )}
    </Section>
  );
}
