import { RotateCw } from 'lucide-react';
import { useEffect, useRef } from 'react';
import type { Book } from '../../../core/book/index.ts';
import {
  groundWords as groundSumWords,
  type PlanActivity,
  type PlanDay,
  type PlanStop,
} from '../../../core/plan/result/index.ts';
import type { Formatter } from '../../format/index.ts';
import { homeSec, refillAmounts, stopNumberOf } from '../../ribbon/index.ts';
import {
  moveCursor,
  selectDay,
  selectStop,
  useBook,
  useCurrentPlan,
  useFormat,
  useRestOfDay,
  useSelection,
} from '../../stores/index.ts';
import { stopsWords } from '../../texts/day/index.ts';
import { commonWords } from '../../texts/index.ts';
import { Choice } from '../../ui/index.ts';
import { groundWords } from './ground.ts';

type Refill = Extract<PlanActivity, { readonly kind: 'refill' }>;
type Pour = Extract<PlanActivity, { readonly kind: 'pour' }>;
type Line = { readonly sec: number } & (
  | { readonly kind: 'stop'; readonly stop: PlanStop }
  | { readonly kind: 'refill'; readonly refill: Refill }
  | { readonly kind: 'pour'; readonly pour: Pour }
);

/** The stops of a day in order, with every refill where it falls. */
export function DayStops({ day }: { readonly day: PlanDay }) {
  const words = useFormat();
  const book = useBook((state) => state.open?.book ?? null);
  return (
    <div className="list-panel">
      <DayPicker day={day} />
      <ol className="stop-list" aria-label={stopsWords.stops.listLabel(day.rigName)}>
        {linesOf(day).map((line) => (
          <li key={`${line.kind} ${line.sec}`}>
            {line.kind === 'stop' && <StopLine stop={line.stop} book={book} words={words} />}
            {line.kind === 'refill' && <RefillLine day={day} refill={line.refill} book={book} words={words} />}
            {line.kind === 'pour' && <PourLine day={day} pour={line.pour} words={words} />}
          </li>
        ))}
      </ol>
      <WhatIf day={day} />
    </div>
  );
}

/** What a little more of something would change; nothing where nothing does. */
function WhatIf({ day }: { readonly day: PlanDay }) {
  const words = useFormat();
  if (day.whatIf.length === 0) return null;
  return (
    <section className="what-if" aria-label={stopsWords.stops.withMore}>
      <h3>{stopsWords.stops.withMore}</h3>
      {day.whatIf.map((each) => (
        <p key={each.words}>{words.said(each.words)}.</p>
      ))}
    </section>
  );
}

/** Refills inside a stop stand below it, refills on the way to a stop above it. */
export function linesOf(day: PlanDay): readonly Line[] {
  const stops = day.stops.map((stop): Line => ({ kind: 'stop', sec: stop.arriveSec, stop }));
  const refills = day.activities.flatMap((each): Line[] => {
    if (each.kind === 'refill') return [{ kind: 'refill', sec: each.startSec, refill: each }];
    return each.kind === 'pour' ? [{ kind: 'pour', sec: each.startSec, pour: each }] : [];
  });
  return [...stops, ...refills].sort((left, right) => left.sec - right.sec || (left.kind === 'stop' ? -1 : 1));
}

function DayPicker({ day }: { readonly day: PlanDay }) {
  const known = useCurrentPlan();
  const isRest = useRestOfDay() === day;
  const words = useFormat();
  const days = known?.plan.days ?? [];
  const dates = [...new Set(days.map((each) => each.date))];
  const rigs = days.filter((each) => each.date === day.date);
  const choose = (date: string, rigId: string) => {
    const found =
      days.find((each) => each.date === date && each.rigId === rigId) ?? days.find((each) => each.date === date);
    if (found !== undefined) selectDay(found.date, found.rigId);
  };
  return (
    <div className="day-picker" data-subject="rig">
      <div className="day-choices">
        <Choice
          label={stopsWords.stops.date}
          value={day.date}
          options={dates.map((value) => ({ value, words: words.date(value) }))}
          onChoose={(date) => choose(date, day.rigId)}
        />
        <Choice
          label={stopsWords.stops.rig}
          value={day.rigId}
          options={rigs.map((each) => ({ value: each.rigId, words: each.rigName }))}
          onChoose={(rigId) => choose(day.date, rigId)}
        />
      </div>
      <h2>
        {commonWords.stops(day.stops.length)}, {stopsWords.stops.loads(day.loads.length)}
      </h2>
      {isRest && <p className="caution small">{stopsWords.stops.restOfDay(words.clock(day.startSec))}</p>}
      <p className="quiet small">
        {stopsWords.stops.homeAndDone(
          words.clock(homeSec(day)),
          words.clock(day.endSec),
          words.distance(day.distanceM),
        )}
      </p>
      <p className="quiet small">
        {[
          groundWords(
            day.stops.flatMap((stop) => stop.tasks),
            words.area,
          ),
          groundSumWords(day, words.area),
        ]
          .filter((each) => each !== '')
          .join(' · ')}
      </p>
      {day.overtimeSec > 0 && (
        <p className="caution small">{stopsWords.stops.ofOvertime(words.duration(day.overtimeSec))}</p>
      )}
    </div>
  );
}

type LineProps = { readonly book: Book | null; readonly words: Formatter };

function StopLine({ stop, book, words }: LineProps & { readonly stop: PlanStop }) {
  const selected = useSelection((state) => state.stopNumber === stop.number);
  const line = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (selected) line.current?.scrollIntoView({ block: 'nearest' });
  }, [selected]);
  const choose = () => {
    selectStop(stop.number, stop.propertyId);
    moveCursor(stop.arriveSec);
  };
  return (
    <button
      ref={line}
      type="button"
      className="stop-item"
      aria-current={selected || undefined}
      data-subject="stop"
      onClick={choose}
      onContextMenu={choose}
    >
      <span className="stop-number">{stop.number}</span>
      <span className="row-title" title={stop.name}>
        {stop.name}
      </span>
      <span className="stop-time">{words.clock(stop.arriveSec)}</span>
      <span className="row-note">
        {groundWords(stop.tasks, words.area)} · {methodsOf(stop, book)}
      </span>
    </button>
  );
}

function methodsOf(stop: PlanStop, book: Book | null): string {
  const names = stop.tasks.map(({ method }) =>
    method.kind === 'machine'
      ? book?.machines.find((each) => each.id === method.machineId)?.name
      : book?.handMethods.find((each) => each.id === method.handMethodId)?.name,
  );
  return [...new Set(names)].join(', ');
}

type RefillLineProps = LineProps & { readonly refill: Refill; readonly day: PlanDay };

function RefillLine({ day, refill, book, words }: RefillLineProps) {
  const place = book?.fillPoints.find((each) => each.id === refill.fillPointId)?.name ?? refill.fillPointId;
  const choose = () => {
    const number = stopNumberOf(day, refill);
    if (number > 0) selectStop(number, refill.propertyId);
    moveCursor(refill.startSec);
  };
  return (
    <button type="button" className="refill-row" data-subject="loads" onClick={choose} onContextMenu={choose}>
      <RotateCw size={12} aria-hidden="true" />
      <span>
        {refill.afterSqFt > 0 && stopsWords.stops.afterArea(words.area(refill.afterSqFt))}
        {refillAmounts(refill, words).join(', ')}
        {refill.fillPointId !== '' && stopsWords.stops.atPlace(place)}
      </span>
      <b>{words.clock(refill.startSec)}</b>
      <span className="refill-why">{words.said(refill.reason)}</span>
    </button>
  );
}

type PourLineProps = { readonly words: Formatter; readonly pour: Pour; readonly day: PlanDay };

/** Bags on the machine that are poured where it stands. */
function PourLine({ day, pour, words }: PourLineProps) {
  const choose = () => {
    const number = stopNumberOf(day, pour);
    if (number > 0) selectStop(number, pour.propertyId);
    moveCursor(pour.startSec);
  };
  return (
    <button type="button" className="refill-row" data-subject="loads" onClick={choose} onContextMenu={choose}>
      <RotateCw size={12} aria-hidden="true" />
      <span>
        {pour.afterSqFt > 0 && stopsWords.stops.afterArea(words.area(pour.afterSqFt))}
        {stopsWords.stops.fromBags(pour.fills.map((fill) => words.weight(fill.weightLb)).join(', '))}
      </span>
      <b>{words.clock(pour.startSec)}</b>
    </button>
  );
}
