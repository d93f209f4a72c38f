import type { Property, Round } from '../../core/book/index.ts';
import { restName } from '../../core/plan/live/index.ts';
import type { PlanDay } from '../../core/plan/result/index.ts';
import { useBook } from './book.ts';
import { type KnownPlan, usePlans } from './plans.ts';
import { useSelection } from './selection.ts';

/** The round that is looked at: the chosen one, else the first that has a plan, else the first. */
export function currentRound(): Round | null {
  const rounds = useBook.getState().open?.book.rounds ?? [];
  return pickRound(rounds, useSelection.getState().roundId, usePlans.getState().plans);
}

export function pickRound(
  rounds: readonly Round[],
  roundId: string | null,
  plans: Readonly<Record<string, KnownPlan>>,
): Round | null {
  const chosen = rounds.find((round) => round.id === roundId);
  return chosen ?? rounds.find((round) => plans[round.id] !== undefined) ?? rounds[0] ?? null;
}

/** The day that is looked at: the chosen one, else the first of the plan. */
export function pickDay(known: KnownPlan | undefined, date: string | null, rigId: string | null): PlanDay | null {
  const days = known?.plan.days ?? [];
  return days.find((day) => day.date === date && day.rigId === rigId) ?? days[0] ?? null;
}

export function useCurrentRound(): Round | null {
  const rounds = useBook((state) => state.open?.book.rounds);
  const roundId = useSelection((state) => state.roundId);
  const plans = usePlans((state) => state.plans);
  return pickRound(rounds ?? [], roundId, plans);
}

export function useCurrentPlan(): KnownPlan | null {
  const round = useCurrentRound();
  const plans = usePlans((state) => state.plans);
  return round === null ? null : (plans[round.id] ?? null);
}

/** The day that is shown: the rest of it, where that was planned anew and is wanted. */
export function useCurrentDay(): PlanDay | null {
  const whole = useWholeDay();
  const rest = useRestOfDay();
  const showsRest = useSelection((state) => state.showsRest);
  return showsRest && rest !== null ? rest : whole;
}

/** The plan whose day is shown, with the name by which it is kept and the dates and rigs that it is about. */
export type ShownPlan = {
  readonly name: string;
  readonly known: KnownPlan;
  readonly dates: readonly string[];
  readonly rigIds: readonly string[];
};

/** The plan of the round, or that of the rest of the day where that is shown. */
export function useShownPlan(): ShownPlan | null {
  const round = useCurrentRound();
  const rest = useRestOfDay();
  const showsRest = useSelection((state) => state.showsRest);
  const plans = usePlans((state) => state.plans);
  return pickShownPlan(round, rest, showsRest, plans);
}

/** The same for a command, when it is asked for. */
export function shownPlan(): ShownPlan | null {
  const round = currentRound();
  const { showsRest } = useSelection.getState();
  return pickShownPlan(round, restOfDay(), showsRest, usePlans.getState().plans);
}

function pickShownPlan(
  round: Round | null,
  rest: PlanDay | null,
  showsRest: boolean,
  plans: Readonly<Record<string, KnownPlan>>,
): ShownPlan | null {
  const known = round === null ? undefined : plans[round.id];
  if (round === null || known === undefined) return null;
  const name = rest === null ? '' : restName(round.id, rest.date);
  const under = plans[name];
  if (!showsRest || under?.plan.rest === undefined)
    return { name: round.id, known, dates: round.dates, rigIds: round.rigIds };
  const { date, rigs } = under.plan.rest;
  return { name, known: under, dates: [date], rigIds: rigs.map((each) => each.rigId) };
}

/** The day as it was planned in the morning. */
export function useWholeDay(): PlanDay | null {
  const known = useCurrentPlan();
  const date = useSelection((state) => state.date);
  const rigId = useSelection((state) => state.rigId);
  return pickDay(known ?? undefined, date, rigId);
}

/** What was planned of the day once it was under way, or null. */
export function useRestOfDay(): PlanDay | null {
  const round = useCurrentRound();
  const whole = useWholeDay();
  const plans = usePlans((state) => state.plans);
  return whole === null || round === null ? null : restOf(plans, round.id, whole);
}

function restOf(plans: Readonly<Record<string, KnownPlan>>, roundId: string, whole: PlanDay): PlanDay | null {
  const days = plans[restName(roundId, whole.date)]?.plan.days ?? [];
  return days.find((day) => day.rigId === whole.rigId) ?? null;
}

export function currentDay(): PlanDay | null {
  return (useSelection.getState().showsRest ? restOfDay() : null) ?? wholeDay();
}

/** The day as it was planned in the morning, and what was planned of it since, for a command. */
export function wholeDay(): PlanDay | null {
  const round = currentRound();
  const { date, rigId } = useSelection.getState();
  return round === null ? null : pickDay(usePlans.getState().plans[round.id], date, rigId);
}

export function restOfDay(): PlanDay | null {
  const round = currentRound();
  const whole = wholeDay();
  return whole === null || round === null ? null : restOf(usePlans.getState().plans, round.id, whole);
}

/** A property of the open book by its id, or null. */
export function useProperty(propertyId: string | null): Property | null {
  return useBook((state) => state.open?.book.properties.find((each) => each.id === propertyId) ?? null);
}
