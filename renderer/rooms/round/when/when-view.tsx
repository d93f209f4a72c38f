import { useMemo, useState } from 'react';
import {
  type LawnTiming,
  type SiteGroup,
  siteOffsetWords,
  type TimingResult,
  timingWords,
} from '../../../../core/round/timing/index.ts';
import { addDays } from '../../../../core/units/index.ts';
import { NotYet } from '../../../next/index.ts';
import { useChecks, useFormat } from '../../../stores/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { whenWords } from '../../../texts/round/index.ts';
import { Button, Choice, Empty, IssueList, Section } from '../../../ui/index.ts';
import { MissedLawns, SitesTable } from './site-lawns.tsx';
import { SiteOffsets } from './site-offsets.tsx';
import { Temperatures } from './temperatures.tsx';
import { isOpen, momentWords, TimingChart } from './timing-chart.tsx';
import { NewTiming, TimingChoice, TimingFigures } from './timing-choice.tsx';
import { useWhen, type When } from './use-when.ts';
import { figureWords, footingWords, todayWords } from './when-words.ts';

/** When a round is of use: its window by calendar, soil or degree days, and the lawns that will miss it. */
export function WhenView() {
  const when = useWhen();
  const [isNew, setNew] = useState(false);
  if (when === null)
    return (
      <NotYet title={commonWords.noRound} needs="round">
        {whenWords.view.noRoundAdvice}
      </NotYet>
    );
  const { book, round, timing, today } = when;
  return (
    <div className="ledger when">
      <section className="plan-bar" aria-label={whenWords.view.timing}>
        <div className="plan-bar-title">
          <h2>{whenWords.view.title(round.name)}</h2>
        </div>
        <TimingChoice book={book} round={round} onNew={() => setNew(true)} />
      </section>
      {isNew && <NewTiming book={book} round={round} onDone={() => setNew(false)} />}
      {timing === null && !isNew && (
        <Empty
          title={whenWords.view.noTimingChosen}
          actions={
            <Button look="main" onPress={() => setNew(true)}>
              {whenWords.view.makeTiming}
            </Button>
          }
        >
          {whenWords.view.noTimingAdvice}
        </Empty>
      )}
      {timing !== null && !isNew && <Season when={when} />}
      {timing !== null && !isNew && <TimingFigures book={book} round={round} />}
      <SiteOffsets book={book} />
      <Temperatures book={book} today={today} />
    </div>
  );
}

function Season({ when }: { readonly when: When }) {
  const words = useFormat();
  const [site, setSite] = useState<string | null>(null);
  const { groups, season } = when;
  if (season === null) return null;
  const keyOf = (group: SiteGroup) => group.sites.join(' ');
  const group =
    groups.find((each) => keyOf(each) === site) ?? groups.find((each) => each.sites.length === 0) ?? groups[0];
  const result = group?.result ?? season.at(0);
  const siteWords = siteOffsetWords(group?.sites ?? [], result, words.system);
  return (
    <>
      <Section
        title={whenWords.view.window}
        aside={
          groups.length > 1 && (
            <Choice
              label={whenWords.view.siteShown}
              value={group === undefined ? '' : keyOf(group)}
              options={groups.map((each) => ({
                value: keyOf(each),
                words: siteOffsetWords(each.sites, each.result, words.system),
              }))}
              onChoose={setSite}
            />
          )
        }
      >
        <p className="when-today-words">{todayWords(result, when.today, words)}</p>
        {timingWords(season.timing, { units: words.system, dates: words.dates }).map((line) => (
          <p key={line} className="small">
            {line}
          </p>
        ))}
        <Picture result={result} siteWords={siteWords} lawns={group?.lawns ?? []} when={when} />
        {footingWords(result, when.today, words).map((line) => (
          <p key={line} className="quiet small">
            {line}
          </p>
        ))}
        <DepthNote when={when} />
      </Section>
      <TimingIssues when={when} />
      <SitesTable groups={groups} />
      <MissedLawns groups={groups} />
    </>
  );
}

/** What the checks find in the timing and in the temperatures. */
function TimingIssues({ when: { timing } }: { readonly when: When }) {
  const all = useChecks((state) => state.issues);
  const issues = useMemo(
    () =>
      all.filter(
        ({ code, where }) =>
          code === 'timing-senseless' && (where === `timing ${timing?.name}` || where.startsWith('temperatures ')),
      ),
    [all, timing],
  );
  if (issues.length === 0) return null;
  return (
    <Section title={commonWords.toCheck}>
      <IssueList issues={issues} />
    </Section>
  );
}

/** Says so where the thermometer lies at another depth than the timing asks for. */
function DepthNote({ when: { book, timing, groups } }: { readonly when: When }) {
  const words = useFormat();
  if (timing?.kind !== 'soil-temperature') return null;
  const station = groups[0]?.result.footing?.station;
  const depthIn = book.temperatures.find(
    (each) => each.station === station && each.soilDepthIn !== undefined,
  )?.soilDepthIn;
  if (station === undefined || depthIn === timing.depthIn) return null;
  const text =
    depthIn === undefined
      ? whenWords.view.depthUnknown(station, words.width(timing.depthIn))
      : whenWords.view.depthDiffers(station, words.width(depthIn), words.width(timing.depthIn));
  return <p className="caution small">{text}</p>;
}

/** How many lawns are planned, and not done yet, on each day. */
function lawnsByDay(lawns: readonly LawnTiming[]): ReadonlyMap<string, number> {
  const days = new Map<string, number>();
  for (const { plannedOn, doneOn } of lawns) {
    if (plannedOn !== null && doneOn === null) days.set(plannedOn, (days.get(plannedOn) ?? 0) + 1);
  }
  return days;
}

type PictureProps = {
  readonly result: TimingResult;
  readonly siteWords: string;
  readonly lawns: readonly LawnTiming[];
  readonly when: When;
};

function Picture({ result, siteWords, lawns, when: { today, round } }: PictureProps) {
  const words = useFormat();
  const planned = useMemo(() => lawnsByDay(lawns), [lawns]);
  const days = { workdays: round.dates, planned };
  const [cursor, setCursor] = useState<string | null>(null);
  const [asTable, setAsTable] = useState(false);
  const hasLine = result.timing.kind !== 'calendar';
  if (hasLine && result.line.length === 0) return null;
  return (
    <>
      <div className="when-chart-head">
        <p className="small">
          {cursor === null ? whenWords.view.legend(hasLine) : momentWords(result, cursor, days, words)}
        </p>
        {hasLine && (
          <Button look="quiet" pressed={asTable} onPress={() => setAsTable(!asTable)}>
            {asTable ? whenWords.view.asPicture : whenWords.view.asTable}
          </Button>
        )}
      </div>
      {asTable ? (
        <DaysTable result={result} {...days} />
      ) : (
        <TimingChart
          result={result}
          siteWords={siteWords}
          words={words}
          today={today}
          {...days}
          cursor={cursor}
          onCursor={setCursor}
        />
      )}
    </>
  );
}

type DaysTableProps = {
  readonly result: TimingResult;
  readonly workdays: readonly string[];
  readonly planned: ReadonlyMap<string, number>;
};

/** The picture as a table: one row for every day of the season. */
function DaysTable({ result, workdays, planned }: DaysTableProps) {
  const words = useFormat();
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard.
    <section className="when-days" aria-label={whenWords.view.tableLabel} tabIndex={0}>
      <table className="table table-narrow">
        <thead>
          <tr>
            <th scope="col">{commonWords.day}</th>
            <th scope="col">
              {result.timing.kind === 'degree-days' ? whenWords.view.degreeDaysSoFar : whenWords.view.soil}
            </th>
            <th scope="col">{whenWords.view.windowHead}</th>
            <th scope="col">{commonWords.round}</th>
          </tr>
        </thead>
        <tbody>
          {result.line.map((figure, index) => {
            const date = addDays(result.starts, index);
            const lawns = planned.get(date) ?? 0;
            return (
              <tr key={date}>
                <th scope="row">{words.date(date)}</th>
                <td>{figureWords(result, figure, words)}</td>
                <td>{isOpen(result, date) ? whenWords.view.open : ''}</td>
                <td>
                  {lawns > 0 ? whenWords.view.planned(lawns) : workdays.includes(date) ? whenWords.view.workingDay : ''}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
