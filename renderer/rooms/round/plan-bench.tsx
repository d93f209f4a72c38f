import { useState } from 'react';
import type { Book, Round } from '../../../core/book/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import {
  cancelPlanning,
  goTo,
  selectDay,
  startPlanning,
  useCurrentPlan,
  useFormat,
  usePlanStale,
  usePlans,
} from '../../stores/index.ts';
import { Button } from '../../ui/index.ts';

type BenchProps = { readonly book: Book; readonly round: Round };

/** Planning a round, and what came of it. */
export function PlanBench({ book, round }: BenchProps) {
  const known = useCurrentPlan();
  const stale = usePlanStale();
  const failure = usePlans((state) => state.failures[round.id]);
  return (
    <div className="room-sheet">
      <section aria-label="Plan this round">
        <h2>{round.name}</h2>
        <PlanControls round={round} lawns={book.properties.length} />
        {failure !== undefined && (
          <p className="issue issue-error">
            {failure.detail} {failure.hint} <span className="quiet">({failure.where})</span>
          </p>
        )}
      </section>
      {known !== null && (
        <>
          {stale && (
            <p className="stale">The book was changed after this plan was made. Plan again to bring it up to date.</p>
          )}
          <Outcome book={book} plan={known.plan} />
          <Buying book={book} plan={known.plan} />
          {known.plan.unplaced.length > 0 && <Unplaced plan={known.plan} />}
          <PlanNotes plan={known.plan} />
        </>
      )}
    </div>
  );
}

function PlanControls({ round, lawns }: { readonly round: Round; readonly lawns: number }) {
  const job = usePlans((state) => state.job);
  const [seconds, setSeconds] = useState(lawns > 60 ? 20 : 5);
  const [seed, setSeed] = useState(1);
  if (job !== null && job.roundId === round.id) {
    const share = job.total > 0 ? job.done / job.total : 0;
    return (
      <div className="plan-running">
        <div
          className="progress"
          role="progressbar"
          aria-label="Planning"
          aria-valuemin={0}
          aria-valuemax={100}
          aria-valuenow={Math.round(share * 100)}
        >
          <span style={{ width: `${(share * 100).toFixed(1)}%` }} />
        </div>
        <div className="plan-running-foot">
          <span>
            {Math.round(share * 100)} % {job.bestSoFar === '' ? '' : `· best so far: ${job.bestSoFar}`}
          </span>
          <Button
            onPress={() => cancelPlanning().catch(() => undefined)}
            whyNot={job.cancelling ? 'It is being stopped' : null}
          >
            Stop and keep the best
          </Button>
        </div>
      </div>
    );
  }
  return (
    <div className="plan-start">
      <label>
        seconds to search
        <input
          className="input"
          type="number"
          min={1}
          max={3600}
          value={seconds}
          onChange={(event) => setSeconds(Math.max(1, Math.min(3600, Number(event.target.value) || 1)))}
        />
      </label>
      <label>
        seed
        <input
          className="input"
          type="number"
          value={seed}
          onChange={(event) => setSeed(Math.trunc(Number(event.target.value) || 0))}
        />
      </label>
      <Button
        look="main"
        whyNot={job === null ? null : 'Another round is being planned'}
        onPress={() => startPlanning({ roundId: round.id, seconds, seed }).catch(() => undefined)}
      >
        Plan this round
      </Button>
    </div>
  );
}

function Outcome({ book, plan }: { readonly book: Book; readonly plan: Plan }) {
  const words = useFormat();
  const { totals } = plan;
  const open = (date: string, rigId: string): void => {
    selectDay(date, rigId);
    goTo('day');
  };
  return (
    <section aria-label="Days of the plan">
      <h2>Days</h2>
      <dl className="totals">
        <Total label="stops" value={String(totals.stops)} />
        <Total label="turf" value={words.largeArea(totals.treatedSqFt)} />
        <Total label="paid time" value={words.duration(totals.paidSec)} />
        <Total label="driving" value={words.distance(totals.distanceM)} />
        <Total label="refills" value={`${totals.refills}, ${totals.fillPointVisits} at fill points`} />
        <Total label="wage, miles, rigs" value={words.money(totals.costUsd)} />
      </dl>
      <div className="table-scroll">
        <table className="table">
          <thead>
            <tr>
              <th scope="col">Day</th>
              <th scope="col">Rig</th>
              <th scope="col" className="number">
                Stops
              </th>
              <th scope="col" className="number">
                Turf
              </th>
              <th scope="col" className="number">
                Refills
              </th>
              <th scope="col" className="number">
                Length
              </th>
              <th scope="col" className="number">
                Home
              </th>
              <th scope="col" className="number">
                Cost
              </th>
            </tr>
          </thead>
          <tbody>
            {plan.days.map((day) => (
              <tr key={`${day.date} ${day.rigId}`}>
                <td>
                  <button type="button" className="row-button" onClick={() => open(day.date, day.rigId)}>
                    {words.date(day.date)}
                  </button>
                </td>
                <td>{day.rigName}</td>
                <td className="number">{day.stops.length}</td>
                <td className="number">{words.area(day.treatedSqFt)}</td>
                <td className="number">{day.activities.filter((each) => each.kind === 'refill').length}</td>
                <td className="number">
                  {words.duration(day.paidSec)}
                  {day.overtimeSec > 0 && <span className="caution"> ({words.duration(day.overtimeSec)} over)</span>}
                </td>
                <td className="number strong">{words.clock(day.endSec)}</td>
                <td className="number">{words.money(day.costUsd)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="why">
        {plan.travel === 'matrix'
          ? 'Drive times come from the imported table.'
          : 'Drive times are an estimate from straight lines.'}
        {book.invented ? ' Invented book: figures are not for use.' : ''}
      </p>
    </section>
  );
}

function Total({ label, value }: { readonly label: string; readonly value: string }) {
  return (
    <div>
      <dt>{label}</dt>
      <dd>{value}</dd>
    </div>
  );
}

function Buying({ book, plan }: { readonly book: Book; readonly plan: Plan }) {
  const words = useFormat();
  return (
    <section aria-label="What to buy">
      <h2>What it takes</h2>
      <table className="table">
        <thead>
          <tr>
            <th scope="col">Product</th>
            <th scope="col" className="number">
              Amount
            </th>
            <th scope="col" className="number">
              Bags
            </th>
            <th scope="col" className="number">
              Price
            </th>
          </tr>
        </thead>
        <tbody>
          {plan.totals.products.map(({ productId, amount, unit }) => {
            const product = book.products.find((each) => each.id === productId);
            return (
              <tr key={productId}>
                <td>{product?.name ?? productId}</td>
                <td className="number">{words.product(amount, unit)}</td>
                <td className="number">
                  {unit === 'lb' && product?.bagLb !== undefined ? Math.ceil(amount / product.bagLb) : ''}
                </td>
                <td className="number">{words.money(amount * (product?.pricePerUnit ?? 0))}</td>
              </tr>
            );
          })}
          <tr>
            <td>Spray mix, water with everything in it</td>
            <td className="number">{words.volume(plan.totals.waterGal)}</td>
            <td />
            <td />
          </tr>
        </tbody>
      </table>
      <p className="why">Rates are those you entered; the label of each product stands above them.</p>
    </section>
  );
}

function Unplaced({ plan }: { readonly plan: Plan }) {
  const rigName = (rigId: string): string => plan.days.find((day) => day.rigId === rigId)?.rigName ?? rigId;
  return (
    <section aria-label="Left undone">
      <h2 className="stop">Left undone: {plan.unplaced.length}</h2>
      <table className="table">
        <thead>
          <tr>
            <th scope="col">Lawn</th>
            <th scope="col">Zone</th>
            <th scope="col">Why</th>
          </tr>
        </thead>
        <tbody>
          {plan.unplaced.map((each) => (
            <tr key={`${each.propertyId} ${each.zoneId} ${each.treatmentId} ${each.step}`}>
              <td>{each.propertyName}</td>
              <td>{each.zoneName}</td>
              <td>
                {each.reasons.map((reason) => (
                  <p key={reason.rigId}>
                    {rigName(reason.rigId)}: {reason.words}
                  </p>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function PlanNotes({ plan }: { readonly plan: Plan }) {
  if (plan.issues.length === 0) return null;
  return (
    <section aria-label="Notes of the plan">
      <h2>Notes</h2>
      <ul className="issue-list">
        {plan.issues.map((each) => (
          <li key={`${each.code} ${each.where} ${each.message}`} className={`issue issue-${each.severity}`}>
            {each.where}: {each.message}
          </li>
        ))}
      </ul>
    </section>
  );
}
