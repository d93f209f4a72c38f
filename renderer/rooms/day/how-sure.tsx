import { GraduationCap } from 'lucide-react';
import { useMemo } from 'react';
import type { Book, Spread } from '../../../core/book/index.ts';
import { type DayChance, learnSpread, type Range } from '../../../core/plan/chance/index.ts';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import type { Formatter } from '../../format/index.ts';
import { formatNumber } from '../../format/index.ts';
import { edit, showError, useBook, useFormat } from '../../stores/index.ts';
import { howSureWords } from '../../texts/day/index.ts';
import { commonWords } from '../../texts/index.ts';
import { Button, QuantityInput, Section, TableHead } from '../../ui/index.ts';
import { shiftEndSec, USUAL_SPREAD, useDayChance } from './use-day-chance.ts';

/** How sure a day is, in plain words and figures, and what that rests on. */
export function HowSure({ day }: { readonly day: PlanDay }) {
  const book = useBook((state) => state.open?.book ?? null);
  const chance = useDayChance(day);
  const words = useFormat();
  const rig = book?.rigs.find((each) => each.id === day.rigId);
  if (book === null || rig === undefined) return null;
  if (chance === null) return <p className="quiet how-sure-wait">{howSureWords.view.playing}</p>;
  return (
    <div className="how-sure">
      <div className="how-sure-words">
        <p className="how-sure-home">{howSureWords.view.homeBy(words.clock(upToMinute(chance.home.sec90)))}</p>
        <p>
          {howSureWords.view.homeSpread(
            words.clock(homePlanned(day)),
            words.clock(upToMinute(chance.home.sec50)),
            words.clock(upToMinute(chance.home.sec10)),
          )}
        </p>
        <p>{howSureWords.view.doneByShiftEnd(words.clock(shiftEndSec(rig)), daysInHundred(chance.inShiftShare))}</p>
        <p>{howSureWords.view.runsOut(daysInHundred(chance.earlyShare), daysInHundred(chance.runsOutShare))}</p>
        {chance.missedShare > 0 && <p>{howSureWords.view.closedBefore(daysInHundred(chance.missedShare))}</p>}
        <p className="quiet small">{howSureWords.view.about(chance.played)}</p>
      </div>
      <StopRanges day={day} chance={chance} words={words} />
      <SpreadPart book={book} />
    </div>
  );
}

/** "97 days in 100"; never all or none of them where it is only nearly so. */
export function daysInHundred(share: number): string {
  if (share <= 0) return howSureWords.view.never;
  if (share >= 1) return howSureWords.view.always;
  const days = Math.round(share * 100);
  if (days === 0) return howSureWords.view.rarely;
  return days === 100 ? howSureWords.view.nearlyAlways : howSureWords.view.daysInHundred(days);
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
  const range = ({ sec10, sec90 }: Range) => commonWords.span(words.clock(sec10), words.clock(sec90));
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
    const runsOut = loadsAt(each.propertyId).map((load) =>
      howSureWords.view.loadRisk(load.number, daysInHundred(Math.min(1, load.earlyShare + load.runsOutShare))),
    );
    const closed = each.missedShare > 0 ? daysInHundred(each.missedShare) : '';
    return [{ each, stop, runsOut: runsOut.join(', '), closed }];
  });
  // Columns in which nothing stands would only take room from the names.
  const mayRunOut = rows.some((row) => row.runsOut !== '');
  const mayBeClosed = rows.some((row) => row.closed !== '');
  const heads = [howSureWords.view.stop, howSureWords.view.planned, howSureWords.view.mostDays];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard.
    <section className="how-sure-stops" aria-label={howSureWords.view.timesLabel} tabIndex={0}>
      <table className="table">
        <caption className="only-spoken">{howSureWords.view.timesTitle}</caption>
        <TableHead
          columns={[
            ...heads,
            ...(mayRunOut ? [howSureWords.view.mayRunOut] : []),
            ...(mayBeClosed ? [howSureWords.view.mayBeClosed] : []),
          ]}
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
  { what: howSureWords.view.driving, spread: 'drive', mean: 'driveMean' },
  { what: howSureWords.view.setUp, spread: 'setUp', mean: 'setUpMean' },
  { what: howSureWords.view.treating, spread: 'treat', mean: 'treatMean' },
  { what: howSureWords.view.amountsUsed, spread: 'used', mean: 'usedMean' },
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
    <Section title={howSureWords.view.title}>
      <table className="table table-narrow">
        <TableHead
          columns={[
            howSureWords.view.what,
            { figures: howSureWords.view.timesThePlan },
            { figures: howSureWords.view.giveOrTake },
          ]}
        />
        <tbody>
          {KINDS.map(({ what, spread: key, mean }) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td>
                <QuantityInput
                  label={howSureWords.view.meanOf(what)}
                  kind="number"
                  value={spread[mean]}
                  positive
                  onCommit={(value) => change({ ...spread, [mean]: value ?? 1 }, howSureWords.view.change(what))}
                />
              </td>
              <td>
                <QuantityInput
                  label={howSureWords.view.deviationOf(what)}
                  kind="share"
                  value={spread[key]}
                  onCommit={(value) => change({ ...spread, [key]: value ?? 0 }, howSureWords.view.change(what))}
                />
              </td>
            </tr>
          ))}
          <tr>
            <th scope="row">{howSureWords.view.sameAllDay}</th>
            <td />
            <td>
              <QuantityInput
                label={howSureWords.view.shared}
                kind="share"
                value={spread.inCommon}
                onCommit={(inCommon) => change({ ...spread, inCommon: inCommon ?? 0 }, howSureWords.view.changeShared)}
              />
            </td>
          </tr>
        </tbody>
      </table>
      <p className="small">
        <Button
          whyNot={
            enough.length === 0
              ? howSureWords.view.needsVisits(found.least, Math.max(0, ...found.learned.map((each) => each.visits)))
              : null
          }
          onPress={() => change(found.spread, howSureWords.view.learned)}
        >
          <GraduationCap size={14} aria-hidden="true" /> {howSureWords.view.learn}
        </Button>
      </p>
      {enough.map((each) => (
        <p key={each.what} className="quiet small">
          {howSureWords.view.learnedFigure(
            each.what,
            each.visits,
            formatNumber(each.mean, 2),
            Math.round(each.deviation * 100),
          )}
        </p>
      ))}
      {book.spread === undefined && <p className="quiet small">{howSureWords.view.guessNote}</p>}
    </Section>
  );
}
