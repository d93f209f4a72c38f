import { useMemo } from 'react';
import { fleetPlanName } from '../../../core/compare/index.ts';
import type { RoundInput } from '../../../core/reports/index.ts';
import type { SeasonLedger } from '../../../core/round/ledger/index.ts';
import { todayHere } from '../../format/index.ts';
import { seasonYears, useBook, useCurrentRound, usePlans, useSeasonLedger } from '../../stores/index.ts';

type SheetYear = {
  /** Null while it is reckoned, and while no sheet asks for it. */
  readonly ledger: SeasonLedger | null;
  /** Years that may be chosen, the shown one among them. */
  readonly years: readonly string[];
  readonly shownYear: string;
};

/** The year of a sheet about one, with its ledger. */
export function useSheetYear(isWanted: boolean, chosen: string | null): SheetYear {
  const book = useBook((state) => state.open?.book ?? null);
  const known = useMemo(() => (book === null || !isWanted ? [] : seasonYears(book)), [book, isWanted]);
  const now = todayHere().slice(0, 4);
  const shownYear = chosen ?? (known.includes(now) ? now : (known[0] ?? now));
  const { ledger } = useSeasonLedger(isWanted ? shownYear : null);
  return {
    ledger: ledger?.year === shownYear ? ledger : null,
    years: known.includes(shownYear) ? known : [shownYear, ...known],
    shownYear,
  };
}

/** Plans of the current round by the fleets of the book, those that were made. */
export function useFleetPlans(): RoundInput['fleetPlans'] {
  const book = useBook((state) => state.open?.book ?? null);
  const round = useCurrentRound();
  const plans = usePlans((state) => state.plans);
  return useMemo(
    () =>
      (book?.fleets ?? []).flatMap(({ id: fleetId }) => {
        const plan = round === null ? undefined : plans[fleetPlanName(round.id, fleetId)]?.plan;
        return plan === undefined ? [] : [{ fleetId, plan }];
      }),
    [book, round, plans],
  );
}
