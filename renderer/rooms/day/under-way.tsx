import { Check, Play, Undo2, X } from 'lucide-react';
import { useMemo, useState } from 'react';
import type { Book, Visit } from '../../../core/book/index.ts';
import { type DayNow, dayNow, underWayOf, usedAgainstPlan, withUsed } from '../../../core/plan/live/index.ts';
import type { PlanDay, PlanStop } from '../../../core/plan/result/index.ts';
import { CommandButton, useOffer } from '../../commands/index.ts';
import { type Formatter, formatNumber, todayHere } from '../../format/index.ts';
import { homeSec } from '../../ribbon/index.ts';
import {
  markStop,
  minuteHere,
  putRecord,
  showError,
  showRest,
  startPlanning,
  unmarkStop,
  useBook,
  useCurrentRound,
  useFormat,
  useHost,
  usePlans,
  useRestOfDay,
  useSelection,
  useWholeDay,
  visitsOf,
} from '../../stores/index.ts';
import { underWayWords } from '../../texts/day/index.ts';
import { commonWords } from '../../texts/index.ts';
import { Button, DraftInput, QuantityInput, Section, Tick } from '../../ui/index.ts';
import { Aboard } from './aboard.tsx';
import { OnSite } from './on-site.tsx';

/** A day under way: what was done and used, what is aboard, and the rest of the day planned from here. */
export function UnderWay() {
  const book = useBook((state) => state.open?.book ?? null);
  const day = useWholeDay();
  const round = useCurrentRound();
  const now = useMemo(
    () => (book === null || day === null ? null : dayNow(book, day, book.visits, book.gauges)),
    [book, day],
  );
  if (book === null || day === null || round === null || now === null) return null;
  return (
    <div className="under-way">
      <StopsDone book={book} day={day} />
      <div className="under-way-side">
        <FromHere book={book} day={day} now={now} roundId={round.id} />
        <Aboard book={book} day={day} now={now} />
        <Used book={book} day={day} />
        <OnSite book={book} day={day} />
      </div>
    </div>
  );
}

type DoneProps = { readonly book: Book; readonly day: PlanDay };

function StopsDone({ book, day }: DoneProps) {
  const words = useFormat();
  const visits = visitsOf(book, day);
  const put = (visit: Visit, label: string) => {
    const done = putRecord('visits', visit, label);
    if (!done.ok) showError(done.error);
    return done;
  };
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard.
    <section className="under-way-stops" aria-label={underWayWords.view.label} tabIndex={0}>
      <table className="table">
        <thead>
          <tr>
            <th scope="col">{underWayWords.view.stop}</th>
            <th scope="col">{underWayWords.view.planned}</th>
            <th scope="col">{underWayWords.view.drove}</th>
            <th scope="col">{underWayWords.view.came}</th>
            <th scope="col">{underWayWords.view.left}</th>
            <th scope="col">{underWayWords.view.used}</th>
            <th scope="col">
              <span className="only-spoken">{underWayWords.view.mark}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {day.stops.map((stop) => {
            const visit = visits.find((each) => each.propertyId === stop.propertyId);
            return (
              <tr key={stop.number}>
                <th scope="row">{commonWords.stop(stop.number, stop.name)}</th>
                <td>{commonWords.span(words.clock(stop.arriveSec), words.clock(stop.leaveSec))}</td>
                {visit === undefined ? (
                  <Open
                    stop={stop}
                    onDone={() => markStop(day, stop, 'done')}
                    onSkip={() => markStop(day, stop, 'left out')}
                  />
                ) : (
                  <Written book={book} visit={visit} stop={stop} put={put} words={words} />
                )}
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

type OpenProps = { readonly stop: PlanStop; readonly onDone: () => void; readonly onSkip: () => void };

function Open({ stop, onDone, onSkip }: OpenProps) {
  return (
    <>
      <td />
      <td />
      <td />
      <td />
      <td>
        <Button
          look="quiet"
          label={underWayWords.view.doneOf(stop.name)}
          tip={underWayWords.view.doneTip}
          onPress={onDone}
        >
          <Check size={14} aria-hidden="true" /> {underWayWords.view.doneHead}
        </Button>
        <Button
          look="quiet"
          label={underWayWords.view.leftOutOf(stop.name)}
          tip={underWayWords.view.leftOutTip}
          onPress={onSkip}
        >
          <X size={14} aria-hidden="true" /> {underWayWords.view.leftOutHead}
        </Button>
      </td>
    </>
  );
}

type WrittenProps = {
  readonly book: Book;
  readonly visit: Visit;
  readonly stop: PlanStop;
  readonly put: (visit: Visit, label: string) => ReturnType<typeof putRecord>;
  readonly words: Formatter;
};

function Written({ book, visit, stop, put, words }: WrittenProps) {
  const { outcome } = visit;
  const time = (key: 'arriveMin' | 'leaveMin', what: string) => (
    <QuantityInput
      label={`${stop.name}: ${what}`}
      kind="clock"
      value={visit[key] ?? null}
      optional
      onCommit={(value) => {
        const { [key]: _, ...rest } = visit;
        return put(value === null ? rest : { ...rest, [key]: value }, underWayWords.view.changeTime(what, stop.name));
      }}
    />
  );
  return (
    <>
      {outcome.kind === 'done' ? (
        <>
          <td>
            <DriveTime visit={visit} stop={stop} put={put} />
          </td>
          <td>{time('arriveMin', underWayWords.view.cameTo)}</td>
          <td>{time('leaveMin', 'left')}</td>
          <td>
            <UsedAt book={book} visit={visit} stop={stop} put={put} words={words} />
          </td>
        </>
      ) : (
        <td colSpan={4}>
          <DraftInput
            label={underWayWords.view.whyOf(stop.name)}
            text={outcome.reason}
            placeholder={underWayWords.view.whyPlaceholder}
            onCommit={(reason) =>
              put({ ...visit, outcome: { ...outcome, reason } }, underWayWords.view.changeWhy(stop.name))
            }
          />
          <Tick
            label={underWayWords.view.notAgain}
            checked={outcome.notAgain === true}
            onChange={(notAgain) => {
              const { notAgain: _, ...rest } = outcome;
              put(
                { ...visit, outcome: notAgain ? { ...rest, notAgain } : rest },
                underWayWords.view.changeDone(stop.name),
              );
            }}
          />
        </td>
      )}
      <td>
        <Button
          look="quiet"
          label={underWayWords.view.takeBackOf(stop.name)}
          tip={underWayWords.view.takeBack}
          onPress={() => unmarkStop(visit, stop)}
        >
          <Undo2 size={14} aria-hidden="true" />
        </Button>
      </td>
    </>
  );
}

/** Minutes of driving to the stop: road times are learned from them. */
function DriveTime({ visit, stop, put }: Pick<WrittenProps, 'visit' | 'stop' | 'put'>) {
  return (
    <QuantityInput
      label={underWayWords.view.driveOf(stop.name)}
      kind="minutes"
      value={visit.drivenMin ?? null}
      optional
      most={MOST_DRIVE_MIN}
      onCommit={(drivenMin) => {
        const { drivenMin: _, ...rest } = visit;
        return put(drivenMin === null ? rest : { ...rest, drivenMin }, underWayWords.view.changeDrive(stop.name));
      }}
    />
  );
}

const MOST_DRIVE_MIN = 600;

/** One figure for each kind of material of the stop; it is shared over the zones as they were planned. */
function UsedAt({ book, visit, stop, put, words }: WrittenProps) {
  const { outcome } = visit;
  if (outcome.kind !== 'done') return null;
  const treatments = [...new Set(outcome.tasks.map((task) => task.treatmentId))];
  return treatments.map((treatmentId) => {
    const tasks = outcome.tasks.filter((task) => task.treatmentId === treatmentId);
    const gal = tasks.reduce((sum, task) => sum + (task.expectedGal ?? 0), 0);
    const lb = tasks.reduce((sum, task) => sum + (task.expectedLb ?? 0), 0);
    const planned = gal > 0 ? gal : lb;
    if (planned <= 0) return null;
    const known = tasks.every((task) => (gal > 0 ? task.usedGal : task.usedLb) !== undefined);
    const used = tasks.reduce((sum, task) => sum + ((gal > 0 ? task.usedGal : task.usedLb) ?? 0), 0);
    const change = (value: number | null) => {
      const next = outcome.tasks.map((task) => {
        if (task.treatmentId !== treatmentId) return task;
        const share = ((gal > 0 ? task.expectedGal : task.expectedLb) ?? 0) / planned;
        return withUsed(book, task, value === null ? null : value * share);
      });
      return put({ ...visit, outcome: { kind: 'done', tasks: next } }, underWayWords.view.changeUse(stop.name));
    };
    return (
      <span key={treatmentId} className="under-way-used">
        <QuantityInput
          label={underWayWords.view.usedOf(stop.name, gal > 0 ? words.volume(gal) : words.weight(lb))}
          kind={gal > 0 ? 'volume' : 'weight'}
          value={known ? used : null}
          optional
          onCommit={change}
        />
        <span className="quiet small">
          {underWayWords.view.ofPlanned(gal > 0 ? words.volume(gal) : words.weight(lb))}
        </span>
      </span>
    );
  });
}

/** What was used in all against the plan, and when that calls for a calibration. */
function Used({ book, day }: { readonly book: Book; readonly day: PlanDay }) {
  const words = useFormat();
  const found = usedAgainstPlan(visitsOf(book, day));
  if (found.length === 0) return null;
  const nameOf = (id: string): string => book.treatments.find((each) => each.id === id)?.name ?? id;
  return (
    <Section title={underWayWords.view.usedTitle}>
      {found.map((each) => {
        const amount = (value: number) => words.level(value, each.unit);
        const percent = `${formatNumber(Math.abs(each.excess * 100), 1)} % ${each.excess < 0 ? underWayWords.view.less : underWayWords.view.more}`;
        return (
          <p key={`${each.treatmentId} ${each.unit}`} className={each.checkCalibration ? 'caution' : ''}>
            {underWayWords.view.usedOnZones(
              nameOf(each.treatmentId),
              amount(each.used),
              amount(each.planned),
              each.zones,
              percent,
            )}
            {each.checkCalibration && underWayWords.view.checkCalibration}
          </p>
        );
      })}
    </Section>
  );
}

type FromHereProps = {
  readonly book: Book;
  readonly day: PlanDay;
  readonly now: DayNow;
  readonly roundId: string;
};

/** Planning the rest of the day from here. */
function FromHere({ book, day, now, roundId }: FromHereProps) {
  const words = useFormat();
  const rest = useRestOfDay();
  const showsRest = useSelection((state) => state.showsRest);
  const job = usePlans((state) => state.job);
  const { planSeed } = useHost((state) => state.settings);
  const [typed, setTyped] = useState<number | null>(null);
  const earliest = day.date === todayHere() ? Math.max(now.sinceMin, minuteHere()) : now.sinceMin;
  const fromMin = Math.max(now.sinceMin, typed ?? earliest);
  const plan = () => {
    const underWay = underWayOf(book, day.rigId, now, fromMin);
    if (underWay === null) return;
    const at = { id: underWay.at.id, at: [...underWay.at.at] as [number, number] };
    const rigs = [
      {
        ...underWay,
        at,
        compartments: underWay.compartments.map((each) => ({ ...each })),
        bags: underWay.bags.map((each) => ({ ...each })),
      },
    ];
    showRest(true);
    startPlanning({
      roundId,
      seconds: SECONDS,
      seed: planSeed,
      evenUsdPerHour: 0,
      rest: { date: day.date, propertyIds: [...now.left], rigs },
    }).catch(() => undefined);
  };
  useOffer('day.plan-rest', { whyNot: whyNotPlan(now, job !== null), run: plan });
  return (
    <Section title={underWayWords.view.restDay}>
      <p>{underWayWords.view.progress(now.done.length, now.skipped.length, now.left.length)}</p>
      <p className="under-way-from">
        <span>{underWayWords.view.from}</span>
        <QuantityInput
          label={underWayWords.view.planFromLabel}
          kind="clock"
          value={fromMin}
          onCommit={(value) => {
            setTyped(value);
            return { ok: true, value: null };
          }}
        />
        <CommandButton id="day.plan-rest" look="main">
          <Play size={13} aria-hidden="true" /> {underWayWords.view.planFromHere}
        </CommandButton>
      </p>
      {rest !== null && (
        <>
          <p>
            {underWayWords.view.plannedFrom(
              words.clock(rest.startSec),
              rest.stops.length,
              words.clock(homeSec(rest)),
              words.clock(homeSec(day)),
            )}
          </p>
          <p>
            <CommandButton id="day.show-rest">
              {showsRest ? underWayWords.view.showWholeDay : underWayWords.view.showRest}
            </CommandButton>
          </p>
        </>
      )}
      {now.aboard.readAtMin === undefined && <p className="quiet small">{underWayWords.view.aboardNote}</p>}
    </Section>
  );
}

/** Long enough for one day, short enough for the side of a street. */
const SECONDS = 5;

function whyNotPlan(now: DayNow, busy: boolean): string | null {
  if (busy) return underWayWords.view.beingPlanned;
  return now.left.length === 0 ? underWayWords.view.nothingLeft : null;
}
