import { Play, TriangleAlert } from 'lucide-react';
import { useMemo } from 'react';
import type { Round } from '../../../core/book/index.ts';
import { CommandButton } from '../../commands/index.ts';
import { NotYet, PlanProgress } from '../../next/index.ts';
import {
  changeSettings,
  type KnownPlan,
  roomOfIssue,
  useBook,
  useChecks,
  useCurrentPlan,
  useCurrentRound,
  useFormat,
  useHost,
  usePlanStale,
  usePlans,
  usePlanWish,
} from '../../stores/index.ts';
import { commonWords, KEPT } from '../../texts/index.ts';
import { planWords } from '../../texts/round/index.ts';
import { ChecksList, QuantityInput, Section, Tick } from '../../ui/index.ts';
import { DaysTable, PlanNotes } from './ledger-tables.tsx';
import { UnplacedTable } from './unplaced-table.tsx';
import { MissedNote } from './when/index.ts';

/** Planning and what came of it. */
export function RoundLedger() {
  const book = useBook((state) => state.open?.book ?? null);
  const round = useCurrentRound();
  const known = useCurrentPlan();
  if (book === null) return null;
  if (round === null)
    return (
      <NotYet title={planWords.ledger.nothingYet} needs="round">
        {planWords.ledger.nothingYetAdvice}
      </NotYet>
    );
  return (
    <div className="ledger">
      <PlanBar round={round} known={known} />
      <MissedNote />
      <RoundIssues />
      <Outcome round={round} known={known} />
    </div>
  );
}

type PlanBarProps = { readonly round: Round; readonly known: KnownPlan | null };

function PlanBar({ round, known }: PlanBarProps) {
  const { planSeconds, planSeed, planEvenUsd } = useHost((state) => state.settings);
  const job = usePlans((state) => state.job);
  const stale = usePlanStale();
  const keepsPromises = usePlanWish((state) => state.keepsPromises);
  return (
    <section className="plan-bar" aria-label={planWords.ledger.planning}>
      <div className="plan-bar-title">
        <h2>{round.name}</h2>
        {known !== null && stale && (
          <p className="caution small">
            <TriangleAlert size={13} aria-hidden="true" /> {commonWords.bookChanged}
          </p>
        )}
      </div>
      <div className="plan-bar-wishes">
        <span className="inline-field">
          <span aria-hidden="true">{planWords.ledger.searchFor}</span>
          <QuantityInput
            kind="number"
            label={planWords.ledger.secondsOfSearch}
            value={planSeconds}
            positive
            most={3600}
            onCommit={(value) => saveSetting({ planSeconds: Math.max(1, value ?? planSeconds) })}
          />
          <span aria-hidden="true">{planWords.ledger.secondsUnit}</span>
        </span>
        <span className="inline-field" title={planWords.ledger.seedNote}>
          <span aria-hidden="true">{planWords.ledger.seed}</span>
          <QuantityInput
            kind="whole"
            label={planWords.ledger.seedOfSearch}
            value={planSeed}
            onCommit={(value) => saveSetting({ planSeed: value ?? planSeed })}
          />
        </span>
        <span className="inline-field" title={planWords.ledger.evenDaysNote}>
          <span aria-hidden="true">{planWords.ledger.evenDays}</span>
          <QuantityInput
            kind="number"
            label={planWords.ledger.evenDaysPrice}
            value={planEvenUsd}
            most={1000}
            onCommit={(value) => saveSetting({ planEvenUsd: Math.max(0, value ?? planEvenUsd) })}
          />
          <span aria-hidden="true">{planWords.ledger.perHour}</span>
        </span>
        {known !== null && (
          <span title={planWords.ledger.beginFromPlanNote}>
            <Tick
              label={planWords.ledger.beginFromPlan}
              checked={keepsPromises}
              onChange={(wanted) => usePlanWish.setState({ keepsPromises: wanted })}
            />
          </span>
        )}
        <CommandButton id="plan.start" look="main">
          <Play size={14} aria-hidden="true" />{' '}
          {known === null ? planWords.ledger.planThisRound : planWords.ledger.planAgain}
        </CommandButton>
      </div>
      {job !== null && <PlanProgress />}
    </section>
  );
}

function saveSetting(changes: Parameters<typeof changeSettings>[0]) {
  changeSettings(changes).catch(() => undefined);
  return { ok: true as const, value: null };
}

type OutcomeProps = { readonly round: Round; readonly known: KnownPlan | null };

function Outcome({ round, known }: OutcomeProps) {
  const failure = usePlans((state) => state.failures[round.id]);
  const busy = usePlans((state) => state.job !== null);
  if (failure !== undefined) {
    return (
      <div className="failure" role="alert">
        <p className="strong stop">{failure.detail}</p>
        <p>{KEPT[failure.code]}</p>
        <p>{failure.hint}</p>
        <p className="quiet small">{failure.where}</p>
      </div>
    );
  }
  if (known === null) {
    // The button for it stands in the bar above.
    return busy ? null : (
      <section>
        <h2>{planWords.ledger.noPlan}</h2>
        <p className="quiet">{planWords.ledger.noPlanAdvice}</p>
      </section>
    );
  }
  return (
    <>
      <TotalsLine known={known} />
      {known.plan.evenDays !== undefined && <p className="quiet">{known.plan.evenDays.words}</p>}
      <DaysTable plan={known.plan} />
      <UnplacedTable plan={known.plan} />
      <PlanNotes plan={known.plan} />
    </>
  );
}

function TotalsLine({ known }: { readonly known: KnownPlan }) {
  const words = useFormat();
  const { totals } = known.plan;
  const dates = new Set(known.plan.days.map((day) => day.date)).size;
  const figures: readonly (readonly [string, string])[] = [
    [String(dates), dates === 1 ? planWords.ledger.day : planWords.ledger.days],
    [String(totals.stops), planWords.ledger.stops],
    [words.largeArea(totals.treatedSqFt), planWords.ledger.treated],
    [String(totals.refills), planWords.ledger.refills],
    [words.duration(totals.paidSec), planWords.ledger.paid],
    [words.distance(totals.distanceM), planWords.ledger.driven],
    [words.money(totals.costUsd), commonWords.cost],
  ];
  return (
    <dl className="figures figures-wide">
      {figures.map(([value, name]) => (
        <div key={name}>
          <dd>{value}</dd>
          <dt>{name}</dt>
        </div>
      ))}
    </dl>
  );
}

/** What the checks find in the rounds of the book. */
function RoundIssues() {
  const all = useChecks((state) => state.issues);
  const issues = useMemo(() => all.filter((each) => roomOfIssue(each) === 'round' && each.severity !== 'note'), [all]);
  if (issues.length === 0) return null;
  return (
    <Section title={commonWords.toCheck}>
      <ChecksList findings={issues} />
    </Section>
  );
}
