import type { Property, Round } from '../../core/book/index.ts';
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

export function useCurrentDay(): PlanDay | null {
  const known = useCurrentPlan();
  const date = useSelection((state) => state.date);
  const rigId = useSelection((state) => state.rigId);
  return pickDay(known ?? undefined, date, rigId);
}

export function currentDay(): PlanDay | null {
  const round = currentRound();
  const { date, rigId } = useSelection.getState();
  return round === null ? null : pickDay(usePlans.getState().plans[round.id], date, rigId);
}

/** A property of the open book by its id, or null. */
export function useProperty(propertyId: string | null): Property | null {
  return useBook((state) => state.open?.book.properties.find((each) => each.id === propertyId) ?? null);
}
