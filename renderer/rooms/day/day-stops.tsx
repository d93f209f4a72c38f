import { RotateCw } from 'lucide-react';
import type { Book } from '../../../core/book/index.ts';
import type { PlanActivity, PlanDay, PlanStop } from '../../../core/plan/result/index.ts';
import { counted, type Formatter } from '../../format/index.ts';
import {
  moveCursor,
  selectDay,
  selectStop,
  useBook,
  useCurrentPlan,
  useFormat,
  useSelection,
} from '../../stores/index.ts';
import { Choice } from '../../ui/index.ts';

type Refill = Extract<PlanActivity, { readonly kind: 'refill' }>;
type Line = { readonly sec: number } & (
  | { readonly kind: 'stop'; readonly stop: PlanStop }
  | { readonly kind: 'refill'; readonly refill: Refill }
);

/** The stops of a day in order, with every refill where it falls. */
export function DayStops({ day }: { readonly day: PlanDay }) {
  const words = useFormat();
  const book = useBook((state) => state.open?.book ?? null);
  return (
    <div className="list-panel">
      <DayPicker day={day} />
      <div className="stop-list">
        <ol>
          {linesOf(day).map((line) => (
            <li key={`${line.kind} ${line.sec}`}>
              {line.kind === 'stop' ? (
                <StopLine stop={line.stop} book={book} words={words} />
              ) : (
                <RefillLine refill={line.refill} book={book} words={words} />
              )}
            </li>
          ))}
        </ol>
      </div>
    </div>
  );
}

/** Refills inside a stop stand below it, refills on the way to a stop above it. */
export function linesOf(day: PlanDay): readonly Line[] {
  const stops = day.stops.map((stop): Line => ({ kind: 'stop', sec: stop.arriveSec, stop }));
  const refills = day.activities.flatMap((each): Line[] =>
    each.kind === 'refill' ? [{ kind: 'refill', sec: each.startSec, refill: each }] : [],
  );
  return [...stops, ...refills].sort((left, right) => left.sec - right.sec || (left.kind === 'stop' ? -1 : 1));
}

function DayPicker({ day }: { readonly day: PlanDay }) {
  const known = useCurrentPlan();
  const words = useFormat();
  const days = known?.plan.days ?? [];
  const keyOf = (each: PlanDay): string => `${each.date} ${each.rigId}`;
  return (
    <div className="day-picker">
      <Choice
        label="Day and rig"
        value={keyOf(day)}
        options={days.map((each) => ({ value: keyOf(each), words: `${words.date(each.date)}, ${each.rigName}` }))}
        onChoose={(key) => {
          const chosen = days.find((each) => keyOf(each) === key);
          if (chosen !== undefined) selectDay(chosen.date, chosen.rigId);
        }}
      />
      <h2>
        {day.rigName}: {counted(day.stops.length, 'stop')}, {counted(day.loads.length, 'load')}
      </h2>
      <p className="quiet small">
        out {words.clock(day.activities.find((each) => each.kind === 'drive')?.startSec ?? day.startSec)} · home{' '}
        {words.clock(day.endSec)} · {words.duration(day.paidSec)} · {words.distance(day.distanceM)}
      </p>
    </div>
  );
}

type LineProps = { readonly book: Book | null; readonly words: Formatter };

function StopLine({ stop, book, words }: LineProps & { readonly stop: PlanStop }) {
  const selected = useSelection((state) => state.stopNumber);
  const area = stop.tasks.reduce((sum, task) => sum + task.areaSqFt, 0);
  return (
    <button type="button" className="stop-item" aria-current={selected === stop.number} onClick={() => choose(stop)}>
      <span className="stop-number">{stop.number}</span>
      <span className="row-title">{stop.name}</span>
      <span className="stop-time">{words.clock(stop.arriveSec)}</span>
      <span className="row-note">
        {words.area(area)} · {methodsOf(stop, book)}
      </span>
    </button>
  );
}

function choose(stop: PlanStop): void {
  selectStop(stop.number, stop.propertyId);
  moveCursor(stop.arriveSec);
}

function methodsOf(stop: PlanStop, book: Book | null): string {
  const names = stop.tasks.map(({ method }) =>
    method.kind === 'machine'
      ? book?.machines.find((each) => each.id === method.machineId)?.name
      : book?.handMethods.find((each) => each.id === method.handMethodId)?.name,
  );
  return [...new Set(names)].join(', ');
}

function RefillLine({ refill, book, words }: LineProps & { readonly refill: Refill }) {
  const place =
    refill.fillPointId === ''
      ? 'from the rig'
      : `at ${book?.fillPoints.find((each) => each.id === refill.fillPointId)?.name ?? refill.fillPointId}`;
  const fills = refill.fills.map((fill) =>
    fill.volumeGal > 0 ? words.volume(fill.volumeGal) : words.weight(fill.weightLb),
  );
  const stock = refill.stock.map((fill) =>
    fill.stock === 'water' ? `${words.volume(fill.volumeGal)} into the nurse tank` : `${fill.bags} bags aboard`,
  );
  const after = refill.afterSqFt > 0 ? ` after ${words.area(refill.afterSqFt)}` : '';
  return (
    <div className="refill-row">
      <RotateCw size={12} aria-hidden="true" /> <b>{words.clock(refill.startSec)}</b>
      {after}: {[...fills, ...stock].join(', ')} {place}
      <span className="refill-why">{refill.reason}</span>
    </div>
  );
}
